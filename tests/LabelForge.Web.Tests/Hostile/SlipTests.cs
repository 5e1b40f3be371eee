using LabelForge.Records.Books;
using LabelForge.Web.Tests.Browsing;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Hostile;

/// <summary>A point in the wrong place, a day to come: asked about before it is in the books.</summary>
public sealed class SlipTests(Chromium chromium)
{
    [Fact]
    public async Task Ten_times_the_plan_is_asked_about_and_the_first_answer_writes_nothing()
    {
        await using var window = await Filled();
        var page = window.Page;
        var before = Read(window).AllWeighings.Count;
        await window.GoAsync($"/batches/{FilledBooks.OpenLot}");
        var planned = Production.Compare(Read(window), Read(window).BatchOf(FilledBooks.OpenLot)).First(l => l.Weighed == 0).Line;
        var grams = (planned.Grams * 10).ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);
        await page.FillAsync("#weighed", grams);
        await page.Locator("#weighed").PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alertdialog)).ToContainTextAsync("was planned");
        await Assertions.Expect(page.Locator("#slip-again")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(page.GetByRole(AriaRole.Alertdialog)).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator("#weighed")).ToHaveValueAsync(grams);
        Assert.Equal(before, Read(window).AllWeighings.Count);
    }

    [Fact]
    public async Task A_receipt_of_a_day_to_come_is_written_once_it_was_answered()
    {
        await using var window = await Filled();
        var page = window.Page;
        var before = Read(window).AllReceipts.Count;
        await window.GoAsync("/stock/in");
        await page.Locator("#material").SelectOptionAsync("castor-oil");
        await page.FillAsync("#amount", "131000 kg");
        await page.FillAsync("#price", "9.50");
        await page.FillAsync("#on", "2027-11-25");
        await page.ClickAsync("button[type=submit].chief");
        var asked = page.GetByRole(AriaRole.Alertdialog);
        await Assertions.Expect(asked).ToContainTextAsync("yet to come");
        await Assertions.Expect(asked).ToContainTextAsync("131 tonnes");
        Assert.Equal(before, Read(window).AllReceipts.Count);
        await page.ClickAsync("#slip-yes");
        await Assertions.Expect(page.Locator(".notice.well")).ToContainTextAsync("Written down");
        Assert.Equal(before + 1, Read(window).AllReceipts.Count);
    }

    [Fact]
    public async Task A_recipe_without_a_package_is_asked_for_it_and_the_usual_one_is_proposed()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        const string file = "recipes/harbour-wall-bar.yaml";
        var path = Path.Combine(window.Folder, file);
        await File.WriteAllTextAsync(path,
            string.Join('\n', (await File.ReadAllLinesAsync(path)).Where(l => !l.StartsWith("package:", StringComparison.Ordinal))));
        await window.GoAsync("/recipes/harbour-wall-bar");
        await window.Page.ClickAsync("#usual-package");
        await Window.UntilAsync(() => window.File(file)
            .Contains("package: { shape: bar, size: 3.25x2.25x1 in }", StringComparison.Ordinal), "the usual package is in the file");
        await window.Page.FillAsync("#package-size", "3x2x1 in");
        await Window.UntilAsync(() => window.File(file).Contains("size: 3x2x1 in", StringComparison.Ordinal),
            "the measured one is in the file");
    }

    private static ReckonedBooks Read(Window window) => OpenBooks.Open(window.Folder).Read();

    private async Task<Window> Filled()
    {
        var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        return window;
    }
}
