using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A row of a recipe goes where it is dragged to, and back by undo.</summary>
public sealed class DragTests(Chromium chromium)
{
    private const string Recipe = "recipes/bramble-bar.yaml";

    [Theory]
    [InlineData(0, 2, "castor-oil", "bramble-fragrance", "white-shea-base")]
    [InlineData(2, 0, "bramble-fragrance", "white-shea-base", "castor-oil")]
    public async Task A_row_goes_where_it_is_dragged(int from, int to, params string[] first)
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var before = window.File(Recipe);
        await window.GoAsync("/recipes/bramble-bar");
        await page.Locator(".pictures img").First.WaitForAsync();
        var now = await Used(page);
        Assert.Equal(first.Order(StringComparer.Ordinal), now[..3].Order(StringComparer.Ordinal));
        await page.Locator(".grip").Nth(from).HoverAsync();
        await page.Mouse.DownAsync();
        await page.Locator(".grip").Nth(to).HoverAsync();
        await page.Mouse.UpAsync();
        await Window.UntilAsync(() => window.File(Recipe) != before, "the file has the new order");
        await Assertions.Expect(page.Locator("#use-0")).ToHaveValueAsync(first[0]);
        await Assertions.Expect(page.Locator("#use-2")).ToHaveValueAsync(first[2]);
        for (var step = 0; step < 2; step++)
            await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Window.UntilAsync(() => window.File(Recipe) == before, "undo brought the file back to the letter");
        Assert.Empty(window.Complaints);
    }

    private static async Task<string[]> Used(IPage page) =>
        await page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('select[id^=use-]')].map(s => s.value)");
}
