using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Every page looks as it did when somebody last looked at it: wide and light, narrow and dark.</summary>
public sealed class PictureTests(Chromium chromium)
{
    // A page that is longer is shown to here, as far as anyone looks at a picture in a text.
    private const int Tallest = 1600;

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
            await window.Page.AddStyleTagAsync(new() { Content = ".as-text textarea, code, pre { font-family: 'Barlow Condensed' !important; } .rooms, .two .watch > :first-child { position: static !important; }" });
            await window.Page.EvaluateAsync("async () => { for (const e of document.querySelectorAll('code.path')) e.textContent = 'my-workshop'; await document.fonts.ready; }");
            var height = await window.Page.EvaluateAsync<int>("() => document.documentElement.scrollHeight");
            await window.Page.SetViewportSizeAsync(width, Math.Min(height, Tallest));
            await window.Page.WaitForFunctionAsync("() => Array.from(document.images).every(i => i.complete)");
            var picture = await window.Page.ScreenshotAsync(new() { Animations = ScreenshotAnimations.Disabled });
            await window.Page.SetViewportSizeAsync(width, 800);
            if (Approved.Differs($"{Name(route)}-{way}", picture) is { } wrong)
                differ.Add(wrong);
        }
        Assert.Empty(differ);
    }

    private static string Name(string route) => route == "/" ? "workshop" : route.Trim('/').Replace('/', '-').ToLowerInvariant();
}
