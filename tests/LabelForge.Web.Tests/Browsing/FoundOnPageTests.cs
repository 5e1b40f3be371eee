using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>What the checks find is put right on the page itself: at a field that it names, or by an answer to what it asks.</summary>
public sealed class FoundOnPageTests(Chromium chromium)
{
    private const string Recipe = "recipes/tideline-bar.yaml";

    [Fact]
    public async Task A_maker_in_the_Union_fills_in_how_long_it_keeps_and_answers_what_is_asked_without_seeing_a_file()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/business");
        await page.SelectOptionAsync("#market", "eu");
        await page.FillAsync("#responsible-eu", "Examplehaus GmbH, Musterweg 3, 10115 Berlin, Germany");
        await window.GoAsync("/recipes/tideline-bar");
        var found = page.Locator("section[aria-labelledby=found]");
        await Assertions.Expect(found).ToContainTextAsync("fill in “Best used before the end of”");
        await Assertions.Expect(found).Not.ToContainTextAsync(".yaml");
        await Assertions.Expect(found).Not.ToContainTextAsync("responsible person established in");
        await page.FillAsync("#best-before", "2028-05");
        await page.Locator("#best-before").BlurAsync();
        await Assertions.Expect(found).Not.ToContainTextAsync("nor how long it may be used once open");
        await Window.UntilAsync(() => window.File(Recipe).Contains("best before: 2028-05", StringComparison.Ordinal),
            "the file has the month");
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_question_that_a_finding_asks_is_answered_under_it_and_not_asked_again()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var workshop = Path.Combine(window.Folder, "workshop.yaml");
        var lines = await File.ReadAllLinesAsync(workshop);
        await File.WriteAllLinesAsync(workshop, lines.Where(l => !l.TrimStart().StartsWith("street:", StringComparison.Ordinal)));
        await window.GoAsync("/recipes/tideline-bar");
        var found = page.Locator("section[aria-labelledby=found]");
        const string Question = "Does a current directory list the business under this name?";
        await Assertions.Expect(found).ToContainTextAsync(Question);
        await found.GetByRole(AriaRole.Button, new() { Name = $"{Question} Yes" }).First.ClickAsync();
        await Assertions.Expect(found).Not.ToContainTextAsync(Question);
        await Window.UntilAsync(() => Regex.IsMatch(window.File(Recipe), "directory-listed: [\"']?yes\\b"), "the file has the answer");
        Assert.Empty(window.Complaints);
    }
}
