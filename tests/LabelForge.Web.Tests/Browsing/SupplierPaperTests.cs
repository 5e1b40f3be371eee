using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Suppliers' papers and letters on the page: nothing on a paper is lost, a name is
/// settled, and what to ask is written out for all products.</summary>
public sealed class SupplierPaperTests(Chromium chromium)
{
    [Fact]
    public async Task A_wrapper_and_a_safety_data_sheet_become_one_material_and_no_word_is_lost()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/materials/new");
        await page.FillAsync("#name", "Brook base");
        await page.FillAsync("#list",
            "Brook base, product of the mill\nIngredients: Water, Glycerin, Sodium Stearate, Example Ferment Filtrate.");
        await page.FillAsync("#sheet", "SECTION 3: Composition\nGlycerin 56-81-5 10 - 20 %\nPhenoxyethanol 122-99-6 < 1 %\n");
        await Assertions.Expect(page.GetByText("The safety data sheet names Phenoxyethanol")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Add it to the workshop" }).ClickAsync();
        await Window.UntilAsync(() => File.Exists(Path.Combine(window.Folder, "materials", "brook-base.yaml")), "the material is there");
        var written = window.File("materials/brook-base.yaml");
        Assert.Contains("Glycerin: 10-20 %", written, StringComparison.Ordinal);
        Assert.Contains("product of the mill", written, StringComparison.Ordinal);
        Assert.Contains("The safety data sheet names Phenoxyethanol", written, StringComparison.Ordinal);

        await page.GetByRole(AriaRole.Button, new() { Name = "Example Ferment Filtrate is right as it stands" }).ClickAsync();
        await Window.UntilAsync(() => window.File("materials/brook-base.yaml").Contains("own names:", StringComparison.Ordinal),
            "the name is settled");
        await page.GetByRole(AriaRole.Button, new() { Name = "Example Ferment Filtrate is not settled" }).ClickAsync();
        await Window.UntilAsync(() => !window.File("materials/brook-base.yaml").Contains("own names:", StringComparison.Ordinal),
            "and open again");

        await page.SelectOptionAsync("#trust", "legal limits");
        await Window.UntilAsync(() => window.File("materials/brook-base.yaml").Contains("trust: legal limits", StringComparison.Ordinal),
            "the limits are trusted");
    }

    [Fact]
    public async Task What_to_ask_is_one_message_a_supplier_over_all_products()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/materials");
        await page.ClickAsync("#ask");
        var letter = page.Locator(".letter").First;
        await letter.WaitForAsync();
        Assert.StartsWith("mailto:",
            await letter.GetByRole(AriaRole.Link, new() { Name = "Open it in your mail program" }).GetAttributeAsync("href"),
            StringComparison.Ordinal);
        await Assertions.Expect(letter.GetByRole(AriaRole.Button, new() { Name = "Copy the message" })).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_scale_is_written_once_for_the_workshop()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/business");
        await window.Page.FillAsync("#scale", "heavy");
        await window.Page.PressAsync("#scale", "Tab");
        await window.Page.Locator(".wrong").First.WaitForAsync();
        await window.Page.FillAsync("#scale", "1 g");
        await Window.UntilAsync(() => window.File("workshop.yaml").Contains("scale: 1 g", StringComparison.Ordinal),
            "the scale is in the file");
    }
}
