using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A beginner's first day by the page alone: four questions, a pour of one scent, a price, a bar sold by a touch. No file is
/// opened, and each page says where to go next.</summary>
public sealed class BeginnerTests(Chromium chromium)
{
    [Fact]
    public async Task From_an_empty_folder_to_the_first_bar_sold()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.FillAsync("#shop", "Thistlepond Bench");
        await page.FillAsync("#address", "14 Sample Mill Road\nLower Wendle ME 00000");
        await page.ClickAsync("#good-white-base");
        // A tile for what was bought is no taller than a button; the base is asked for in weights.
        Assert.True((await page.Locator("#good-white-base").BoundingBoxAsync())!.Height < 80);
        await page.FillAsync("#amount-white-base", "1.5");
        await page.PressAsync("#amount-white-base", "Tab");
        await Assertions.Expect(page.Locator("#print-first + .hint")).ToHaveTextAsync("after questions 3, 4");
        await page.GetByRole(AriaRole.Button, new() { Name = "1.5 lb" }).ClickAsync();
        await page.FillAsync("#pieces", "6");
        await page.FillAsync("#net", "4 oz");
        await page.ClickAsync("#print-first");
        await page.Locator("h1", new() { HasTextString = "Print White bar" }).WaitForAsync();

        // An address is a way to reach the maker: nobody who gave one is asked again who they are.
        await window.GoAsync("/");
        await Assertions.Expect(page.Locator("#first")).ToHaveTextAsync("Ready to pour");
        await page.GetByRole(AriaRole.Link, new() { Name = "Start a pour" }).ClickAsync();
        await page.FillAsync("#pour-white-bar", "6");
        await page.ClickAsync("#begin-pot");
        await Assertions.Expect(page.Locator("#now")).ToHaveTextAsync("White base");
        await page.FillAsync("#weighed", "680");
        await page.PressAsync("#weighed", "Enter");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("✓ 680.0 g");
        await page.FillAsync("#made", "6");
        await page.ClickAsync("form:not(.bench-now) [type=submit]");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "What came out" })).ToBeVisibleAsync();

        // Without a price nothing is sold by a touch, and the page says where a price is written.
        await window.GoAsync("/market");
        await Assertions.Expect(page.Locator("#sell-white-bar")).ToBeDisabledAsync();
        await page.Locator("main .hint a").ClickAsync();
        await page.FillAsync("#price", "$6,50");
        await page.PressAsync("#price", "Tab");
        await Window.UntilAsync(() => window.File("recipes/white-bar.yaml").Contains("price: 6.50", StringComparison.Ordinal),
            "the price is in the file");
        await window.GoAsync("/market");
        await Assertions.Expect(page.Locator("#sell-white-bar")).ToContainTextAsync("6.50");
        await Assertions.Expect(page.Locator("#sell-white-bar")).ToBeEnabledAsync();
        await page.ClickAsync("#sell-white-bar");
        await page.ClickAsync("#pay-cash");
        await Assertions.Expect(page.Locator(".last")).ToContainTextAsync("White bar");
        var sale = Assert.Single(OpenBooks.Open(window.Folder).Read().Sales);
        Assert.Equal((1, 6.50m), (sale.Pieces, sale.Paid));
        Assert.Empty(window.Complaints);
    }
}
