using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A new row is empty until it is filled: no name and no number that nobody wrote stands in a file.</summary>
public sealed class NothingProposedTests(Chromium chromium)
{
    [Fact]
    public async Task A_new_scent_is_in_the_recipe_once_it_has_a_name_and_not_before()
    {
        const string Recipe = "recipes/bramble-bar.yaml";
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var before = window.File(Recipe);
        await window.GoAsync("/recipes/bramble-bar");
        await page.Locator("#add-variant").ClickAsync();
        await Assertions.Expect(page.Locator("#variant-0")).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator("#add-variant")).ToBeDisabledAsync();
        Assert.Equal(before, window.File(Recipe));
        await page.Locator("#variant-0").PressSequentiallyAsync("Moss Wall");
        await Window.UntilAsync(() => window.File(Recipe).Contains("name: Moss Wall", StringComparison.Ordinal),
            "the scent is in the file");
        Assert.DoesNotContain("New variant", window.File(Recipe), StringComparison.Ordinal);
        await page.GetByRole(AriaRole.Button, new() { Name = "Remove the scent Moss Wall" }).ClickAsync();
        await Window.UntilAsync(() => window.File(Recipe) == before, "the file is as it was");
    }

    [Fact]
    public async Task New_packaging_counts_once_it_says_what_and_how_many()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var before = window.File("costs.yaml");
        await window.GoAsync("/costs/figures");
        await page.Locator("#add-packaging").ClickAsync();
        await Assertions.Expect(page.Locator("#pack-2")).ToHaveValueAsync("");
        await Assertions.Expect(page.Locator("#pack-count-2")).ToHaveValueAsync("");
        await page.Locator("#pack-2").SelectOptionAsync("scrub-jar");
        await Assertions.Expect(page.Locator("#pack-2")).ToHaveValueAsync("scrub-jar");
        Assert.Equal(before, window.File("costs.yaml"));
        await page.Locator("#pack-count-2").PressSequentiallyAsync("12");
        await Window.UntilAsync(() => window.File("costs.yaml").Contains("{ use: scrub-jar, count: 12 }", StringComparison.Ordinal),
            "the row is in the file");
    }
}
