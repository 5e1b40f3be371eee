using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A field takes a number as it is written on the packet, and shows how it was understood.</summary>
public sealed class LooseFieldTests(Chromium chromium)
{
    [Fact]
    public async Task A_loose_amount_is_shown_as_understood_and_stands_strictly_in_the_file()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/tideline-bar");
        var amount = page.Locator("#amount-0");
        await amount.FillAsync("");
        await amount.PressSequentiallyAsync("1 lb 11 oz");
        await Assertions.Expect(page.Locator("#amount-0-hint")).ToHaveTextAsync("Understood: 27 oz");
        await Assertions.Expect(amount).ToHaveValueAsync("1 lb 11 oz");
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains("amount: 27 oz", StringComparison.Ordinal),
            "the file has it strictly");
        await amount.PressAsync("Tab");
        await Assertions.Expect(amount).ToHaveValueAsync("27 oz");
    }

    [Fact]
    public async Task A_number_that_does_not_say_of_what_is_asked_with_buttons()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/tideline-bar");
        await page.FillAsync("#amount-2", "1,5");
        await page.GetByRole(AriaRole.Button, new() { Name = "1.5 tsp", Exact = true }).WaitForAsync();
        await page.FillAsync("#amount-2", "2 %");
        await page.GetByRole(AriaRole.Button, new() { Name = "2 % of batch" }).ClickAsync();
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains("amount: 2 % of batch", StringComparison.Ordinal),
            "the answer is in the file");
    }

    [Theory]
    [InlineData("/stock/in", "amount", "1 lb 11 oz", "27 oz")]
    [InlineData("/stock/in", "price", "$11.99", "11.99")]
    [InlineData("/stock/out", "gone-amount", "½ tsp", "0.5 tsp")]
    [InlineData("/stock/out", "paid", "11,99 €", "11.99")]
    [InlineData("/stock/out", "pieces", "8 bars", "8")]
    [InlineData("/weigh", "declared", "4½ oz", "4.5 oz")]
    [InlineData("/market", "cash", "$ 40,50", "40.50")]
    [InlineData("/costs/figures", "wage", "$18,50", "18.50")]
    public async Task A_form_shows_how_it_understood(string page, string field, string typed, string understood)
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        await window.GoAsync(page);
        await window.Page.Locator($"#{field}").FillAsync(typed);
        await Assertions.Expect(window.Page.Locator($"#{field}-hint")).ToHaveTextAsync($"Understood: {understood}");
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task What_came_in_is_booked_as_it_was_understood()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/stock/in");
        await page.SelectOptionAsync("#material", "clear-glycerin-base");
        await page.FillAsync("#amount", "1 lb 11 oz");
        await page.FillAsync("#price", "$11.99");
        await page.ClickAsync("button.chief[type=submit]");
        await page.GetByText("Write M1 on the bottle").WaitForAsync();
        var receipt = Assert.Single(LabelForge.Records.Books.OpenBooks.Open(window.Folder).Read().Receipts);
        // 27 oz of 28.349523125 g each (NIST Handbook 44, appendix C).
        Assert.Equal(27 * 28.349523125m, receipt.Amount, 5);
        Assert.Equal(11.99m, receipt.Price);
    }
}
