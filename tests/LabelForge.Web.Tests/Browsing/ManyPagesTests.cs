using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Fifty pages open at once on one workshop: each is live, and what is typed in one is seen in all.</summary>
public sealed class ManyPagesTests(Chromium chromium)
{
    private const int Many = 50;

    [Fact]
    public async Task Fifty_pages_open_at_once_all_show_what_one_of_them_types()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/recipes/tideline-bar");
        var pages = new List<IPage> { window.Page };
        for (var i = 1; i < Many; i++)
            pages.Add(await window.Context.NewPageAsync());
        await Task.WhenAll(pages.Select(async page =>
        {
            await page.GotoAsync(new Uri(window.Address, "/recipes/tideline-bar").ToString());
            await page.Locator(".pictures img").First.WaitForAsync();
        }));
        await window.Page.FillAsync("#name", "Half Tide");
        foreach (var page in pages)
        {
            await page.Locator("h1", new PageLocatorOptions { HasTextString = "Half Tide" }).WaitForAsync();
            await page.GetByAltText("The label of Half Tide", new() { Exact = false }).First.WaitForAsync();
        }
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains("name: Half Tide", StringComparison.Ordinal),
            "the file has the new name");
        Assert.Empty(window.Complaints);
    }
}
