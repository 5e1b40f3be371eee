using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>English on a page in French, but for what is marked as English and what the maker wrote.</summary>
internal static class English
{
    // Words that English cannot do without and French does not have.
    private const string Words = """
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

    /// <summary>Chooses French, as a person does.</summary>
    public static async Task LeaveAsync(Window window)
    {
        await window.GoAsync("/business");
        await window.Page.SelectOptionAsync("#language", "fr");
        await Assertions.Expect(window.Page.Locator("html")).ToHaveAttributeAsync("lang", "fr");
    }

    /// <summary>What stands in English on the page, all that is folded open.</summary>
    public static async Task<IEnumerable<string>> OnAsync(IPage page, string route)
    {
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        return (await page.EvaluateAsync<string[]>(Words)).Where(t => !Written.Any(w => t.Contains(w, StringComparison.Ordinal)))
            .Select(t => $"{route}: {t}");
    }
}
