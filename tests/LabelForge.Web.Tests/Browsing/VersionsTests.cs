using LabelForge.Web.Workbench;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>How a recipe read earlier is kept, shown by what it changed on the label, and brought back.</summary>
public sealed class VersionsTests(Chromium chromium)
{
    private const string Recipe = "recipes/bramble-bar.yaml";

    [Fact]
    public async Task What_a_change_did_to_the_label_is_shown_and_the_earlier_recipe_can_be_brought_back()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var before = window.File(Recipe);
        await window.GoAsync("/recipes/bramble-bar");
        await page.FillAsync("#name", "Bramble & Oat");
        await page.FillAsync("#net", "3.5 oz");
        await Window.UntilAsync(() => window.File(Recipe).Contains("net: 3.5 oz", StringComparison.Ordinal), "the change is saved");
        await page.GetByRole(AriaRole.Link, new() { Name = "Earlier versions" }).ClickAsync();
        var changes = page.Locator(".versions > li").First.Locator(".changes");
        await Assertions.Expect(changes).ToContainTextAsync("Bramble & Oat");
        await Assertions.Expect(changes.Locator("dt")).ToHaveTextAsync(["Name", "Weight"]);
        await Assertions.Expect(changes.Locator("ins").Nth(1)).ToContainTextAsync("3.5 oz");
        // Letters typed in one go are no versions of their own.
        await Assertions.Expect(page.Locator(".versions > li")).ToHaveCountAsync(1);

        await page.ClickAsync("#back-0");
        await Window.UntilAsync(() => window.File(Recipe) == before, "the recipe is as it was, to the letter");
        await page.ClickAsync("#undo-version");
        await Window.UntilAsync(() => window.File(Recipe).Contains("net: 3.5 oz", StringComparison.Ordinal), "and that can be undone");
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task What_another_program_wrote_over_is_a_version_too()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/recipes/bramble-bar");
        await File.WriteAllTextAsync(Path.Combine(window.Folder, Recipe),
            window.File(Recipe).Replace("name: Bramble & Shea", "name: Bramble & Salt", StringComparison.Ordinal));
        await window.Page.Locator("h1", new PageLocatorOptions { HasTextString = "Bramble & Salt" }).WaitForAsync();
        await window.GoAsync("/recipes/bramble-bar/versions");
        await Assertions.Expect(window.Page.Locator(".changes del")).ToContainTextAsync("Bramble & Shea");
    }

    [Fact]
    public async Task What_a_change_of_a_material_did_to_the_labels_of_all_that_it_goes_into_is_shown()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        const string material = "materials/clear-glycerin-base.yaml";
        var before = window.File(material);
        await window.GoAsync("/materials/clear-glycerin-base");
        var first = await page.InputValueAsync("#in-0");
        await page.FillAsync("#in-0", first + " Extra");
        await Window.UntilAsync(() => window.File(material).Contains(first + " Extra", StringComparison.Ordinal), "the change is saved");
        await page.GetByRole(AriaRole.Link, new() { Name = "Earlier versions" }).ClickAsync();
        // Two recipes are made of it, so that each change says on whose label it is.
        var changes = page.Locator(".versions > li").First.Locator(".changes");
        await Assertions.Expect(changes.Locator("dt").First).ToContainTextAsync("Ingredients");
        await Assertions.Expect(changes.Locator("dt").Nth(1)).ToBeVisibleAsync();
        await Assertions.Expect(changes.Locator("ins mark").First).ToContainTextAsync("Extra");
        await page.ClickAsync("#back-0");
        await Window.UntilAsync(() => window.File(material) == before, "the material is as it was, to the letter");
        Assert.Empty(window.Complaints);
    }

    [Theory]
    [InlineData("Water, Glycerin, Parfum", "Glycerin, Water, Parfum", "Water, ")]
    [InlineData("Water, Glycerin", "Water, Glycerin, Mica", "")]
    [InlineData("Net Wt 4 oz", "Net Wt 3.5 oz", "4 ")]
    [InlineData("", "anything", "")]
    public void What_is_marked_is_what_the_other_has_not_in_that_place(string text, string other, string marked)
    {
        var pieces = WordDifference.Of(text, other);
        Assert.Equal(text, string.Concat(pieces.Select(p => p.Words)));
        Assert.Equal(marked, string.Concat(pieces.Where(p => !p.Same).Select(p => p.Words)));
    }
}
