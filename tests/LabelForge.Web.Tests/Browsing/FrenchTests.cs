using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// A page in French says nothing in English but what is marked as English (<c>lang="en"</c>): the paragraphs of the law and what a
/// library says of a rule or a file; and what the maker wrote in English.
/// </summary>
public sealed class FrenchTests(Chromium chromium)
{
    // Words that English cannot do without and French does not have.
    private const string English = """
        () => {
          const words = /\b(the|and|with|what|which|your|from|they|are|was|has|have|not|is|of|it|its|this|that|for|write|choose|nothing|add|remove|save|show|open|warning|weight)\b/gi;
          const found = [];
          const walk = document.createTreeWalker(document.querySelector('body'), NodeFilter.SHOW_TEXT);
          while (walk.nextNode()) {
            const e = walk.currentNode.parentElement, text = walk.currentNode.textContent.trim();
            if (!text || e.closest('[lang="en"], script, style, textarea, pre, code, datalist, #stock, svg.label, .statement')) continue;
            const hits = text.match(words) ?? [];
            if (hits.length >= 2 || hits.length === 1 && text.split(/\s+/).length <= 4) found.push(text.slice(0, 200));
          }
          for (const e of document.querySelectorAll('[aria-label], [placeholder], [title]')) {
            const text = e.getAttribute('aria-label') ?? e.getAttribute('placeholder') ?? e.title;
            if (!e.closest('[lang="en"]') && (text.match(words) ?? []).length >= 2) found.push('@' + text.slice(0, 90));
          }
          return [...new Set(found)];
        }
        """;

    // The example's own words: names that its maker gave, and what a buyer wrote.
    private static readonly string[] Written = ["Bramble & Shea", "Salt Meadow", "Harbour Wall", "Wendle market", "Rooksedge",
        "The base was melted twice.", "20 drops, 1.5 % of batch"];

    [Fact]
    public async Task No_page_in_French_speaks_English()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var pot = FilledBooks.BeginPot(window.Folder);
        await window.GoAsync("/business");
        await window.Page.SelectOptionAsync("#language", "fr");
        await Assertions.Expect(window.Page.Locator("html")).ToHaveAttributeAsync("lang", "fr");
        var found = new List<string>();
        foreach (var route in (string[])[.. Routes.All, $"/pour?pot={pot}"])
        {
            await window.GoAsync(route);
            if (route == "/papers")
                await window.Page.SelectOptionAsync("#of-product", "lip-balm");
            await window.SettleAsync();
            foreach (var details in await window.Page.Locator("details").AllAsync())
                await details.EvaluateAsync("d => d.open = true");
            found.AddRange((await window.Page.EvaluateAsync<string[]>(English))
                .Where(t => !Written.Any(w => t.Contains(w, StringComparison.Ordinal))).Select(t => $"{route}: {t}"));
        }
        Assert.True(found.Count == 0, string.Join('\n', found));
        Assert.Empty(window.Complaints);
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
        await window.GoAsync("/business");
        await page.SelectOptionAsync("#language", "fr");
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "fr");
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
            await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
            found.AddRange((await page.EvaluateAsync<string[]>(English))
                .Where(t => !Written.Any(w => t.Contains(w, StringComparison.Ordinal))).Select(t => $"{route}: {t}"));
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
