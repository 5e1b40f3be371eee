using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>axe (Deque) finds nothing where a workshop begins; the pages of one that is filled are walked for their pictures.</summary>
public sealed class AccessibilityTests(Chromium chromium)
{
    [Fact]
    public async Task Axe_finds_nothing_where_a_workshop_begins()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        await window.GoAsync("/");
        Assert.Empty(await Axe.Violations(window.Page, "/"));
    }
}

/// <summary>What axe says of a page.</summary>
internal static class Axe
{
    // Our pages have no frames, so axe can run within the page, which is several times faster than in a tab of its own each time.
#pragma warning disable CS0618
    public static async Task<IEnumerable<string>> Violations(IPage page, string path) =>
        (await page.RunAxeLegacy()).Violations
            .Select(v => $"{path}: {v.Id}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}");
#pragma warning restore CS0618
}
