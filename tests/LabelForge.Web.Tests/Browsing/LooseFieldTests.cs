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
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains("amount: 27 oz", StringComparison.Ordinal), "the file has it strictly");
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
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains("amount: 2 % of batch", StringComparison.Ordinal), "the answer is in the file");
    }
}
