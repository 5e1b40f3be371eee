using System.Text.RegularExpressions;
using LabelForge.Web.Wording;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Every page, wide and light, narrow and dark: it looks as it did when somebody last looked at it, shows words and no keys, does not run
/// over the side, and axe (Deque) finds nothing on it, also where what was folded is open.
/// </summary>
public sealed partial class PictureTests(Chromium chromium)
{
    // A page that is longer is shown to here, as far as anyone looks at a picture in a text.
    private const int Tallest = 1600;

    private static readonly HashSet<string> Groups = [.. WordBook.Of("en").Keys.Select(k => k.Split('.')[0])];

    [GeneratedRegex(@"(?<![\w./-])[a-z][a-z-]*\.[A-Za-z][\w-]*")]
    private static partial Regex Key();

    [Fact]
    public Task Every_page_wide_and_light_is_as_approved() => Look("wide", 1280, ColorScheme.Light);

    [Fact]
    public Task Every_page_narrow_and_dark_is_as_approved() => Look("narrow", 390, ColorScheme.Dark);

    private async Task Look(string way, int width, ColorScheme scheme)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width, scheme, bypassPolicy: true);
        FilledBooks.Fill(window.Folder);
        var differ = new List<string>();
        foreach (var route in Routes.All)
        {
            await window.GoAsync(route);
            await window.SettleAsync();
            // Small pictures of labels are drawn beside the page, and loaded when they come into view.
            await window.Page.WaitForFunctionAsync("() => !document.querySelector('.no-thumb')");
            // The type of files as text is the system's own, which is another on each machine; and so is the folder.
            await window.Page
                .AddStyleTagAsync(new()
                {
                    Content =
                        ".as-text textarea, code, pre { font-family: 'Barlow Condensed' !important; } .rooms, .two .watch > :first-child "
                            + "{ position: static !important; }",
                });
            await window.Page
                .EvaluateAsync(
                    "async () => { for (const e of document.querySelectorAll('code.path')) e.textContent = 'my-workshop'; await "
                        + "document.fonts.ready; }");
            // When an entry was written is the machine's own time.
            await window.Page
                .EvaluateAsync(
                    @"() => { for (const e of document.querySelectorAll('td')) if (/^\d{4}-\d\d-\d\d "
                        + @"\d\d:\d\d:\d\d/.test(e.textContent.trim())) e.textContent = e.textContent.trim().replace(/^.{19}/, "
                        + @"'2026-11-25 12:00:00'); }");
            differ.AddRange(Key().Matches(await window.Page.Locator("body").InnerTextAsync()).Select(m => m.Value).Where(IsKey)
                .Select(k => $"{route} shows the key \"{k}\" and not its words"));
            var height = await window.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight");
            await window.Page.SetViewportSizeAsync(width, Math.Min(height, Tallest));
            await window.Page.WaitForFunctionAsync("() => Array.from(document.images).every(i => i.complete)");
            var picture = await window.Page.ScreenshotAsync(new() { Animations = ScreenshotAnimations.Disabled });
            await window.Page.SetViewportSizeAsync(width, 800);
            if (Approved.Differs($"{Name(route)}-{way}", picture) is { } wrong)
                differ.Add(wrong);
            foreach (var details in await window.Page.Locator("details").AllAsync())
                await details.EvaluateAsync("d => d.open = true");
            differ.AddRange(await Axe.Violations(window.Page, route));
            if (await window.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth > document.documentElement.clientWidth"))
                differ.Add($"{route} at {width} runs over the side");
        }
        Assert.Empty(differ);
        Assert.Empty(window.Complaints);
    }

    // A key without words is shown as it is; names of files look alike.
    private static bool IsKey(string text) =>
        Groups.Contains(text.Split('.')[0])
            && !text.EndsWith(".yaml", StringComparison.Ordinal)
            && !text.EndsWith(".pdf", StringComparison.Ordinal);

    private static string Name(string route) => route == "/" ? "workshop" : route.Trim('/').Replace('/', '-').ToLowerInvariant();
}
