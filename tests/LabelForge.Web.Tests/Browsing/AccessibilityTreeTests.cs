using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// The main pages as a screen reader hears them: names, roles and order of what is on them, as text that somebody read and approved.
/// </summary>
/// <remarks><c>LABELFORGE_APPROVE=1</c> writes them anew, to be read before they are committed.</remarks>
public sealed partial class AccessibilityTreeTests(Chromium chromium)
{
    private static readonly string[] Main =
        ["/", "/recipes", "/recipes/tideline-bar", "/labels/lip-balm", "/looks/bramble-bar", "/materials/white-shea-base", "/find?q=tide",
            "/business"];

    [Fact]
    public async Task Each_main_page_is_heard_as_approved()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var differ = new List<string>();
        foreach (var route in Main)
        {
            await window.GoAsync(route);
            await window.SettleAsync();
            await window.Page.WaitForFunctionAsync("() => !document.querySelector('main .no-thumb:not(.tiles .no-thumb)')");
            differ.AddRange(await Differs(window.Page, window.Folder, route == "/" ? "today" : Name(route)));
        }
        Assert.Empty(differ);
    }

    [Fact]
    public async Task The_start_is_heard_as_approved()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        await window.GoAsync("/");
        Assert.Empty(await Differs(window.Page, window.Folder, "start"));
    }

    private static async Task<IEnumerable<string>> Differs(IPage page, string folder, string name)
    {
        // Pictures to choose from are drawn one after the other; what they are called does not wait for that.
        var heard = (await page.Locator("body").AriaSnapshotAsync()).Replace(folder, "my-workshop", StringComparison.Ordinal)
            .ReplaceLineEndings("\n");
        heard = TemporaryDownloads().Replace(heard, "/papers/") + "\n";
        var path = Path.GetFullPath(Path.Combine(Approved.Folder, "..", "..", "tests", "approved", "heard", name + ".txt"));
        if (Environment.GetEnvironmentVariable("LABELFORGE_APPROVE") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await File.WriteAllTextAsync(path, heard);
        }
        if (!File.Exists(path))
            return [$"{name}: there is no approved text {path}"];
        var approved = (await File.ReadAllTextAsync(path)).ReplaceLineEndings("\n");
        if (approved == heard)
            return [];
        var at = approved.Split('\n').Zip(heard.Split('\n')).TakeWhile(l => l.First == l.Second).Count();
        return [
            $"{name}, line {at + 1}: approved \"{approved.Split('\n').ElementAtOrDefault(at)?.Trim()}\", heard \"{heard.Split('\n').ElementAtOrDefault(at)?.Trim()}\""];
    }

    private static string Name(string route) => route.Trim('/').Split('?')[0].Replace('/', '-');

    [GeneratedRegex("/papers/[0-9a-f]+/[a-z.]*")]
    private static partial Regex TemporaryDownloads();
}
