using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>axe (Deque) finds nothing on any page: wide and light, narrow and dark.</summary>
public sealed class AccessibilityTests(Chromium chromium)
{
    [Fact]
    public Task Axe_finds_nothing_on_a_wide_light_page() => Look(1280, ColorScheme.Light);

    [Fact]
    public Task Axe_finds_nothing_on_a_narrow_dark_page() => Look(380, ColorScheme.Dark);

    [Fact]
    public async Task Axe_finds_nothing_where_a_workshop_begins()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        await window.GoAsync("/");
        Assert.Empty(await Violations(window.Page, "/"));
    }

    private async Task Look(int width, ColorScheme scheme)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width, scheme);
        FilledBooks.Fill(window.Folder);
        var found = new List<string>();
        foreach (var path in Routes.All)
        {
            await window.GoAsync(path);
            await window.SettleAsync();
            foreach (var details in await window.Page.Locator("details").AllAsync())
                await details.EvaluateAsync("d => d.open = true");
            found.AddRange(await Violations(window.Page, path));
            Assert.True(await window.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"), $"{path} at {width} runs over the side");
        }
        Assert.Empty(found);
        Assert.Empty(window.Complaints);
    }

    // Our pages have no frames, so axe can run within the page, which is several times faster than in a tab of its own each time.
#pragma warning disable CS0618
    private static async Task<IEnumerable<string>> Violations(IPage page, string path) =>
        (await page.RunAxeLegacy()).Violations.Select(v => $"{path}: {v.Id}: {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}");
#pragma warning restore CS0618
}
