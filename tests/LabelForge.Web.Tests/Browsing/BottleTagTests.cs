using LabelForge.Pouring;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A bottle has a label with its number: printed from the page, and scanned on it.</summary>
public sealed class BottleTagTests(Chromium chromium)
{
    [Fact]
    public async Task Labels_for_the_bottles_in_the_house_are_printed_from_the_page()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        await window.GoAsync("/stock");
        var paper = await window.Page.RunAndWaitForPopupAsync(() => window.Page.ClickAsync("#tags"));
        await Assertions.Expect(window.Page.Locator(".notice.well")).ToContainTextAsync("a code to scan");
        var answer = await window.Context.APIRequest.GetAsync(paper.Url);
        using var document = PdfDocument.Open(await answer.BodyAsync());
        var text = string.Join(' ', document.GetPages().Select(p => p.Text));
        var bottles = OpenBooks.Open(window.Folder).Ask(books => books.InStock().Select(s => books.Bottle(s.Receipt.Id)).ToArray());
        Assert.NotEmpty(bottles);
        Assert.All(bottles, bottle => Assert.Contains(bottle, text, StringComparison.Ordinal));
        Assert.Contains("Received 2026-10-26", text, StringComparison.Ordinal);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_bottles_number_scanned_at_the_bench_is_taken_from_and_elsewhere_leads_to_where_it_went()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        var workshop = Workshop.Open(window.Folder);
        var line = BatchFormula.Of(workshop, workshop.Recipe("hayloft-bar")).Lines[1].Material;
        var book = OpenBooks.Open(window.Folder);
        var bottle = StockMovements.Receive(book,
            new Receipt { On = new(2026, 11, 20), By = "test", Material = line.Id, Amount = 500, Price = 9 }).Id;
        await window.GoAsync($"/batches/{FilledBooks.OpenLot}");
        await page.Locator("#weighed").WaitForAsync();
        await CameraTests.ScanAsync(page, $"M{bottle}", thePageItself: true);
        await Assertions.Expect(page.Locator("#from")).ToHaveValueAsync($"{bottle}");
        await Assertions.Expect(page.Locator("#now")).ToHaveTextAsync(line.Name);
        await page.FillAsync("#weighed", "5");
        await page.ClickAsync(".bench-buttons .chief");
        await BookedAsync(page);

        // The cursor stands in the weight after a weighing, and a scanner types where the cursor is: a bottle's number is heard there
        // too, and what was typed before it stays. A bottle of something that does not go in is not taken.
        await Assertions.Expect(page.Locator("#weighed")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("12");
        await TypedAsync(page, $"M{bottle}");
        await Assertions.Expect(page.Locator("#from")).ToHaveValueAsync($"{bottle}");
        await Assertions.Expect(page.Locator("#now")).ToHaveTextAsync(line.Name);
        await Assertions.Expect(page.Locator("#weighed")).ToHaveValueAsync("12");
        var wrong = book.Ask(books => books.InStock()
            .First(s => s.Receipt.Material is var m
                && BatchFormula.Of(workshop, workshop.Recipe("hayloft-bar")).Lines.All(l => l.Material.Id != m)).Receipt);
        await TypedAsync(page, $"M{wrong.Id}");
        await Assertions.Expect(page.Locator("main [role=alert]").First).ToContainTextAsync($"M{wrong.Id} holds {wrong.Material}");
        await Assertions.Expect(page.Locator("#weighed")).ToHaveValueAsync("12");

        await window.GoAsync("/recipes");
        await CameraTests.ScanAsync(page, "M1");
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync("M1");
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_bottle_scanned_while_a_pot_is_weighed_is_the_one_that_is_taken_from()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        var (workshop, book, day) = (Workshop.Open(window.Folder), OpenBooks.Open(window.Folder), new DateOnly(2026, 11, 25));
        var material = BatchFormula.Of(workshop, workshop.Recipe("bramble-bar")).Lines[1].Material;
        var bottle = StockMovements.Receive(book,
            new Receipt { On = day, By = "test", Material = material.Id, Amount = 5000, Price = 9 }).Id;
        var pot = Pour.Begin(book, workshop, PourWish.ReadAll(workshop, ["bramble-bar=6", "meadow-bar/Moss Lane=6"]), day, "test").Pot!;
        await window.GoAsync($"/pour?pot={pot}");
        await page.FocusAsync("#weighed");
        await TypedAsync(page, $"M{bottle}");
        await Assertions.Expect(page.Locator("#weigh-what")).ToHaveTextAsync(material.Name);
        await Assertions.Expect(page.Locator("#weighed")).ToHaveValueAsync("");
        await page.FillAsync("#weighed", "5");
        await page.ClickAsync("#do-weigh");
        await BookedAsync(page);
        var from = book.Ask(books => books.BatchesOfPot(pot).SelectMany(b => books.WeighedInto(b)).Select(w => w.ReceiptId).ToArray());
        Assert.NotEmpty(from);
        Assert.All(from, id => Assert.Equal(bottle, id));
        Assert.Empty(window.Complaints);
    }

    // So little may look like a slip.
    private static async Task BookedAsync(IPage page)
    {
        var (yes, written) = (page.Locator("#slip-yes"), page.Locator(".notice.well:has-text('5.00 g')"));
        await Assertions.Expect(yes.Or(written).First).ToBeVisibleAsync();
        if (await yes.IsVisibleAsync())
            await yes.ClickAsync();
        await Assertions.Expect(written.First).ToBeVisibleAsync();
    }

    // As a scanner does that is plugged in as a keyboard: into whatever has the cursor.
    private static async Task TypedAsync(IPage page, string code)
    {
        await page.Keyboard.TypeAsync(code);
        await page.Keyboard.PressAsync("Enter");
    }
}
