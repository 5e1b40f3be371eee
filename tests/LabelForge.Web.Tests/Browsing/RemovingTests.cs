using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>What is removed is asked about where something would miss it, said, undone, and found again.</summary>
public sealed class RemovingTests(Chromium chromium)
{
    [Fact]
    public async Task A_material_that_recipes_use_is_asked_about_and_named_with_them()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/materials/bramble-fragrance");
        await page.ClickAsync("#remove");
        var asked = page.GetByRole(AriaRole.Alertdialog);
        await Assertions.Expect(asked).ToContainTextAsync("could not be made or printed without it");
        Assert.True(File.Exists(Path.Combine(window.Folder, "materials/bramble-fragrance.yaml")));
        await page.ClickAsync("#keep-it");
        await Assertions.Expect(asked).ToHaveCountAsync(0);
        await page.ClickAsync("#remove");
        await page.ClickAsync("#remove-it");
        await Assertions.Expect(page.GetByText("was removed.")).ToBeVisibleAsync();
        Assert.False(File.Exists(Path.Combine(window.Folder, "materials/bramble-fragrance.yaml")));
        await page.ClickAsync("#undo-remove");
        await Assertions.Expect(page.GetByText("is back.")).ToBeVisibleAsync();
        Assert.True(File.Exists(Path.Combine(window.Folder, "materials/bramble-fragrance.yaml")));
    }

    [Fact]
    public async Task What_was_removed_long_ago_is_brought_back_from_its_own_page()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var before = window.File("recipes/harbour-wall-bar.yaml");
        await window.GoAsync("/recipes/harbour-wall-bar");
        await page.ClickAsync("#remove");
        await Assertions.Expect(page.GetByText("was removed.")).ToBeVisibleAsync();
        await window.GoAsync("/recipes");
        await page.GetByRole(AriaRole.Link, new() { Name = "What was removed" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Bring back Harbour Wall" }).ClickAsync();
        await Assertions.Expect(page.GetByText("is back.")).ToBeVisibleAsync();
        Assert.Equal(before, window.File("recipes/harbour-wall-bar.yaml"));
    }

    [Fact]
    public async Task A_recipe_that_the_books_have_batches_of_is_asked_about()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        await window.GoAsync("/recipes/bramble-bar");
        await window.Page.ClickAsync("#remove");
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Alertdialog)).ToContainTextAsync(FilledBooks.Lot);
        Assert.NotEmpty(OpenBooks.Open(window.Folder).Read().Batches);
    }

    [Fact]
    public async Task Nothing_is_written_that_nobody_typed()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        const string file = "materials/bramble-fragrance.yaml";
        var before = window.File(file);
        await window.GoAsync("/materials/bramble-fragrance");
        var at = await page.Locator("[id^='size-']").CountAsync();
        await page.ClickAsync("#add-pack");
        await Assertions.Expect(page.Locator($"#size-{at}")).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator($"#price-{at}")).ToHaveValueAsync("");
        await page.ClickAsync("#limits-add");
        await page.ClickAsync("#allergens-add");
        await page.ClickAsync("#add-ingredient");
        await page.FillAsync($"#size-{at}", "8 oz");
        await OnlyWhatIsTypedAfterAsync(window, file, before);
        await page.FillAsync($"#price-{at}", "14.50");
        await Window.UntilAsync(() => window.File(file).Contains("{ size: 8 oz, price: 14.50 }", StringComparison.Ordinal),
            "the pack is in the file once both its figures are");
        await window.GoAsync("/recipes/harbour-wall-bar");
        var recipe = window.File("recipes/harbour-wall-bar.yaml");
        var line = await page.Locator("[id^='amount-']").CountAsync();
        await page.ClickAsync("#add-material");
        await Assertions.Expect(page.Locator($"#amount-{line}")).ToHaveValueAsync("");
        await page.ClickAsync("#warnings-add");
        await page.ClickAsync("#claims-add");
        await page.Locator($"#use-{line}").SelectOptionAsync("castor-oil");
        await OnlyWhatIsTypedAfterAsync(window, "recipes/harbour-wall-bar.yaml", recipe);
        await page.Locator($"#amount-{line}").PressSequentiallyAsync("12 g");
        await Window.UntilAsync(() => window.File("recipes/harbour-wall-bar.yaml")
            .Contains("{ use: castor-oil, amount: 12 g }", StringComparison.Ordinal), "the row is in the recipe");
    }

    // What was done before would be saved with what is typed after it: the file has that, and nothing else.
    private static async Task OnlyWhatIsTypedAfterAsync(Window window, string file, string before)
    {
        var name = await window.Page.InputValueAsync("#name");
        await window.Page.FillAsync("#name", name + " II");
        await Window.UntilAsync(() => window.File(file).Contains($"{name} II", StringComparison.Ordinal), "the name is saved");
        Assert.Equal(before.Replace($"name: {name}", $"name: {name} II", StringComparison.Ordinal), window.File(file));
    }
}
