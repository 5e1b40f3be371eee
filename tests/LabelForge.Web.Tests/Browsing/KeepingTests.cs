using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Nothing that is typed is lost, and nothing that the maker wrote is rewritten.</summary>
public sealed class KeepingTests(Chromium chromium)
{
    private const string Recipe = "recipes/harbour-wall-bar.yaml";

    [Fact]
    public async Task What_is_typed_is_in_the_makers_file_and_the_rest_of_the_file_is_as_it_was()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var before = window.File(Recipe);
        await window.GoAsync("/recipes/harbour-wall-bar");
        await window.Page.FillAsync("#superfat", "6 %");
        var after = before.Replace("superfat: 5 %  ", "superfat: 6 %  ", StringComparison.Ordinal);
        Assert.NotEqual(before, after);
        await Window.UntilAsync(() => window.File(Recipe) == after, "the file has the new superfat and every comment");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Window.UntilAsync(() => window.File(Recipe) == before, "undo brought the file back to the letter");
    }

    [Fact]
    public async Task The_warnings_and_the_allergens_of_a_file_stand_in_fields()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/recipes/harbour-wall-bar");
        var warning = window.Page.Locator("#warnings-0");
        await warning.WaitForAsync();
        Assert.StartsWith("For external use only.", await warning.InputValueAsync(), StringComparison.Ordinal);
        await warning.FillAsync("Keep out of eyes.");
        await Window.UntilAsync(() => window.File(Recipe).Contains("  - Keep out of eyes.", StringComparison.Ordinal),
            "the new warning is in the file");
        await window.GoAsync("/materials/bramble-fragrance");
        await window.Page.GetByRole(AriaRole.Textbox, new() { NameRegex = new("Share") }).First.WaitForAsync();
    }

    [Fact]
    public async Task What_cannot_be_used_yet_is_kept_over_a_reload_and_stays_out_of_the_file()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var before = window.File(Recipe);
        await window.GoAsync("/recipes/harbour-wall-bar");
        await window.Page.Locator(".pictures img").First.WaitForAsync();
        await window.Page.FillAsync("#amount-0", "450");
        await window.Page.GetByText("\"450\" has no unit.").First.WaitForAsync();
        await Window.UntilAsync(() => File.Exists(Path.Combine(window.Folder, ".drafts/recipes/harbour-wall-bar.draft")),
            "a draft is kept");
        await window.Page.ReloadAsync();
        await window.Page.Locator("h1").WaitForAsync();
        await Assertions.Expect(window.Page.Locator("#amount-0")).ToHaveValueAsync("450");
        Assert.Equal(before, window.File(Recipe));
        await window.Page.FillAsync("#amount-0", "455 g");
        await Window.UntilAsync(() => window.File(Recipe).Contains("amount: 455 g }", StringComparison.Ordinal),
            "it is saved once it can be used");
        await Window.UntilAsync(() => !File.Exists(Path.Combine(window.Folder, ".drafts/recipes/harbour-wall-bar.draft")),
            "the draft is gone");
    }

    [Fact]
    public async Task A_change_made_by_another_program_is_shown_or_asked_about()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var path = Path.Combine(window.Folder, Recipe);
        await window.GoAsync("/recipes/harbour-wall-bar");
        await File.WriteAllTextAsync(path,
            window.File(Recipe).Replace("name: Harbour Wall", "name: Harbour Light", StringComparison.Ordinal));
        await window.Page.Locator("h1", new PageLocatorOptions { HasTextString = "Harbour Light" }).WaitForAsync();
        await window.Page.FillAsync("#amount-0", "450");
        await window.Page.GetByText("Kept as a draft").WaitForAsync();
        await File.WriteAllTextAsync(path,
            window.File(Recipe).Replace("name: Harbour Light", "name: Harbour Bell", StringComparison.Ordinal));
        await window.Page.GetByText("was changed by another program").WaitForAsync();
        await Assertions.Expect(window.Page.Locator("#amount-0")).ToHaveValueAsync("450");
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Take the file’s text" }).ClickAsync();
        await window.Page.Locator("h1", new PageLocatorOptions { HasTextString = "Harbour Bell" }).WaitForAsync();
        await Assertions.Expect(window.Page.Locator("#amount-0")).ToHaveValueAsync("450 g");
    }

    [Fact]
    public async Task Two_pages_on_one_recipe_show_the_same()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/recipes/bramble-bar");
        var other = await window.Context.NewPageAsync();
        await other.GotoAsync(new Uri(window.Address, "/recipes/bramble-bar").ToString());
        await other.Locator("h1").WaitForAsync();
        await window.Page.FillAsync("#name", "Bramble & Oat");
        await other.Locator("h1", new PageLocatorOptions { HasTextString = "Bramble & Oat" }).WaitForAsync();
        await Assertions.Expect(other.Locator("#name")).ToHaveValueAsync("Bramble & Oat");
    }
}
