using System.Text.RegularExpressions;
using LabelForge.Lots;
using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>The lot on the labels is the lot of what is in the pot.</summary>
public sealed class LotPrintingTests(Chromium chromium)
{
    private static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    public async Task Labels_printed_before_any_batch_keep_their_lot_for_their_product()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var first = new LotCode(Today, 1).ToString();
        await window.GoAsync("/print/harbour-wall-bar");
        await Assertions.Expect(page.Locator("#lot")).ToHaveValueAsync(first);
        await Make(page);
        await window.GoAsync("/print/tideline-bar");
        var second = new LotCode(Today, 2).ToString();
        await Assertions.Expect(page.Locator("#lot")).ToHaveValueAsync(second);
        await page.FillAsync("#lot", first);
        await Assertions.Expect(page.Locator(".field:has(#lot) .wrong")).ToContainTextAsync("were printed with lot");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Make the sheets" })).ToBeDisabledAsync();
        await page.FillAsync("#lot", second);
        await Make(page);
        // The batch of the first gets the lot that its labels have.
        await window.GoAsync("/batches");
        await page.Locator("#recipe").SelectOptionAsync("harbour-wall-bar");
        await page.Locator("button[type=submit].chief").ClickAsync();
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/batches/."));
        var snapshot = OpenBooks.Open(window.Folder).Read();
        Assert.Equal(first, snapshot.Batches.Single(b => b.Recipe == "harbour-wall-bar").Lot);
        Assert.Equal(["harbour-wall-bar", "tideline-bar"], snapshot.Printings.Select(p => p.Recipe));
    }

    [Fact]
    public async Task The_lot_goes_with_the_link_of_its_batch()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        var workshop = LabelForge.Recipes.Workshop.Open(window.Folder);
        var later = new LotCode(Today, 3).ToString();
        Production.Start(OpenBooks.Open(window.Folder),
            FrozenRecipe.Of(workshop, LabelForge.Recipes.BatchFormula.Of(workshop, workshop.Recipe("bramble-bar")), "us", null), later,
            Today, "test");
        await window.GoAsync($"/batches/{FilledBooks.Lot}");
        await page.GetByRole(AriaRole.Link, new() { Name = "Print its labels" }).ClickAsync();
        await Assertions.Expect(page.Locator("#lot")).ToHaveValueAsync(FilledBooks.Lot);
        await page.FillAsync("#lot", FilledBooks.OpenLot);
        await Assertions.Expect(page.Locator(".field:has(#lot) .wrong")).ToContainTextAsync("in the books");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Make the sheets" })).ToBeDisabledAsync();
    }

    [Fact]
    public async Task Labels_that_were_not_printed_after_all_set_the_lot_free()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/print/harbour-wall-bar");
        await Make(window.Page);
        await window.Page.ClickAsync("#undo-sheets");
        await Window.UntilAsync(() => OpenBooks.Open(window.Folder).Read().Printings.Count == 0, "the printing is struck");
    }

    [Fact]
    public async Task A_broken_rule_stops_the_print_until_it_is_printed_over_and_the_books_say_so()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var recipe = Path.Combine(window.Folder, "recipes", "harbour-wall-bar.yaml");
        File.WriteAllText(recipe, File.ReadAllText(recipe).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        await window.GoAsync("/print/harbour-wall-bar");
        var make = window.Page.GetByRole(AriaRole.Button, new() { Name = "Make the sheets" });
        await Assertions.Expect(window.Page.Locator("#anyway")).ToBeVisibleAsync();
        await Assertions.Expect(make).ToBeDisabledAsync();
        await window.Page.Locator("#anyway").CheckAsync();
        await Make(window.Page);
        Assert.Equal("Printed despite identity.missing.", Assert.Single(OpenBooks.Open(window.Folder).Read().Printings).Note);
    }

    [Fact]
    public async Task A_sheet_of_each_scent_is_stopped_by_a_broken_rule_until_it_is_printed_over_and_the_books_say_so_of_each()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var recipe = Path.Combine(window.Folder, "recipes", "meadow-bar.yaml");
        File.WriteAllText(recipe, File.ReadAllText(recipe).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        await window.GoAsync("/print/meadow-bar");
        await page.ClickAsync("#make-each");
        await Assertions.Expect(page.Locator("#each-anyway")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#make-each")).ToBeDisabledAsync();
        Assert.Empty(OpenBooks.Open(window.Folder).Read().Printings);
        await page.Locator("#each-anyway").CheckAsync();
        var opened = page.Context.WaitForPageAsync();
        await page.ClickAsync("#make-each");
        await (await opened).CloseAsync();
        var printed = OpenBooks.Open(window.Folder).Read().Printings;
        Assert.True(printed.Count > 1);
        Assert.All(printed, p => Assert.Equal("Printed despite identity.missing.", p.Note));
    }

    [Fact]
    public async Task The_sheet_is_shown_at_true_size_by_a_card_held_against_the_screen()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/print/harbour-wall-bar");
        await page.ClickAsync("#sheet-actual");
        // The test's sheet is US Letter, 215.9 mm wide, in a drawing with a millimetre around it; a page's own inch has 96 pixels.
        var drawn = page.Locator(".true-sheet .sheet-picture");
        Assert.Equal((215.9 + 2) / 25.4 * 96, (await drawn.BoundingBoxAsync())!.Width, 0.2);
        await page.Locator("details.ruler summary").ClickAsync();
        await page.Locator("#screen-scale")
            .EvaluateAsync("e => { e.value = 1.25; e.dispatchEvent(new Event('input', { bubbles: true })); }");
        await page.WaitForFunctionAsync("() => document.querySelector('.card-ruler .card').getBoundingClientRect().width > 400");
        // A bank card is 85.60 mm wide (ISO/IEC 7810, ID-1): what was found with it counts for the sheet.
        Assert.Equal(85.60 / 25.4 * 96 * 1.25, (await page.Locator(".card-ruler .card").BoundingBoxAsync())!.Width, 2d);
        await page.WaitForFunctionAsync("() => document.querySelector('.true-sheet .sheet-picture').getBoundingClientRect().width > 900");
        Assert.Equal((215.9 + 2) / 25.4 * 96 * 1.25, (await drawn.BoundingBoxAsync())!.Width, 0.2);
        // It scrolls by itself; the page does not.
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
    }

    private static async Task Make(IPage page)
    {
        var opened = page.Context.WaitForPageAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the sheets" }).ClickAsync();
        await (await opened).CloseAsync();
        await Assertions.Expect(page.GetByText("from now on, in the books")).ToBeVisibleAsync();
    }
}
