using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// A page in French says nothing in English but what is marked as English (<c>lang="en"</c>): the paragraphs of the law and what a
/// library says of a rule or a file; and what the maker wrote in English.
/// </summary>
public sealed class FrenchTests(Chromium chromium, PageWalk walk)
{
    [Fact]
    public async Task No_page_in_French_speaks_English()
    {
        var found = await walk.FoundAsync(chromium, PageWalk.Seen.French);
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    // What is told of things that went wrong is in French too: at fields, in findings, and where a form is refused. What fills the places
    // of a finding from lists of claims (what words promise, what to write instead) is in English
    // still: labels made elsewhere are not walked.
    [Fact]
    public async Task What_is_wrong_is_told_in_French()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        FilledBooks.Fill(window.Folder);
        await English.LeaveAsync(window);
        Change(window, "recipes/meadow-bar.yaml", "identity: ", "identity: \" \" # ");
        Change(window, "recipes/tideline-bar.yaml", "amount: ", "amount: heaps # ");
        var found = new List<string>();
        foreach (var route in new[] { "/recipes/meadow-bar", "/labels/meadow-bar", "/print/meadow-bar", "/recipes/tideline-bar",
            "/materials?ask=true", "/stock/out", "/stock/in", "/trace/M77", "/materials/castor-oil" })
        {
            // Castor oil goes into most recipes: it is broken once their pictures were seen.
            if (route == "/materials/castor-oil")
                Change(window, "materials/castor-oil.yaml", "kind: oil", "kind: grease");
            await window.GoAsync(route);
            if (route is "/stock/out" or "/stock/in")
                await page.Locator("form button[type=submit]").First.ClickAsync();
            // A recipe that cannot be used has no picture to wait for.
            if (route == "/recipes/tideline-bar")
                await page.Locator(".wrong, .notice.must").First.WaitForAsync();
            else
                await window.SettleAsync();
            found.AddRange(await English.OnAsync(page, route));
        }
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    private static void Change(Window window, string file, string from, string to)
    {
        var path = Path.Combine(window.Folder, file);
        var text = File.ReadAllText(path);
        Assert.Contains(from, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(from, to, StringComparison.Ordinal));
    }
}
