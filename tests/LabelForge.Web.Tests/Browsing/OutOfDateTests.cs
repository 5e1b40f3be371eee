using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>While something is wrong, nothing on the page speaks of the label as if it held.</summary>
public sealed class OutOfDateTests(Chromium chromium)
{
    [Fact]
    public async Task An_amount_that_cannot_be_read_greys_the_label_and_withdraws_what_was_settled_and_checked()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/harbour-wall-bar");
        await page.Locator(".pictures img").First.WaitForAsync();
        await Assertions.Expect(page.Locator(".out-of-date")).ToHaveCountAsync(0);
        await page.FillAsync("#amount-0", "½");
        await Assertions.Expect(page.Locator(".field:has(#amount-0) .wrong")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".pictures.old")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("The label as it was at")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".settled")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByText("Nothing was found wrong")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".findings")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByText("The checks wait")).ToBeVisibleAsync();
        await page.FillAsync("#amount-0", "450 g");
        await Assertions.Expect(page.Locator(".out-of-date")).ToHaveCountAsync(0);
    }

    [Theory]
    [InlineData("#name", "Harbour 松")]
    [InlineData("#directions", "Wet, lather, 松, rinse.")]
    [InlineData("#warnings-0", "Keep 松 away.")]
    public async Task A_letter_that_the_type_lacks_is_told_at_the_field_where_it_stands(string field, string typed)
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/harbour-wall-bar");
        await page.Locator(".pictures img").First.WaitForAsync();
        await page.FillAsync(field, typed);
        await Assertions.Expect(page.Locator($".field:has({field}) .wrong")).ToContainTextAsync("has no letter for \"松\"");
        await Assertions.Expect(page.Locator(".pictures.old")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".settled")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_is_out_of_date_is_not_printed()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/print/harbour-wall-bar");
        var make = page.GetByRole(AriaRole.Button, new() { Name = "Make the sheets" });
        await Assertions.Expect(make).ToBeEnabledAsync();
        var other = await window.Context.NewPageAsync();
        await other.GotoAsync(new Uri(window.Address, "/recipes/harbour-wall-bar").ToString());
        await other.FillAsync("#name", "Harbour 松");
        await Assertions.Expect(page.GetByText("has no letter for").First).ToBeVisibleAsync();
        await Assertions.Expect(make).ToBeDisabledAsync();
        await other.FillAsync("#name", "Harbour Wall");
        await Assertions.Expect(make).ToBeEnabledAsync();
        await other.FillAsync("#amount-0", "½");
        await Assertions.Expect(make).ToBeDisabledAsync();
    }
}
