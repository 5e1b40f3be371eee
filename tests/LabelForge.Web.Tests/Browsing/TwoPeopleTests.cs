using LabelForge.Lots;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Bench and market table, each with a page of its own on one server: each sees what the
/// other writes, and nothing is sold twice.</summary>
public sealed class TwoPeopleTests(Chromium chromium)
{
    private static readonly DateOnly Day = new(2026, 11, 25);
    private static readonly string Lot = new LotCode(Day, 1).ToString();

    [Fact]
    public async Task Each_sees_the_others_entries_and_an_oversale_says_who_sold_the_last()
    {
        var books = TestServer.NewBooks();
        await using var bench = await OpenAsync(books);
        await using var table = await OpenAsync(books);
        var book = Finish(bench.Folder);
        await bench.GoAsync($"/batches/{Lot}");
        await bench.Page.FillAsync("#who", "Ada");
        await table.GoAsync("/market");
        await table.Page.FillAsync("#who", "Bea");
        await Assertions.Expect(bench.Page.Locator("#out ~ p").First).ToContainTextAsync("6 in the house");
        await Assertions.Expect(table.Page.Locator("#sell-bramble-bar")).ToContainTextAsync("6 left");

        // Four are sold at the table; the bench sees it without asking.
        for (var i = 0; i < 4; i++)
            await table.Page.ClickAsync("#sell-bramble-bar");
        await table.Page.ClickAsync("#pay-cash");
        await Assertions.Expect(table.Page.Locator("#undo-sale")).ToBeVisibleAsync();
        await Assertions.Expect(bench.Page.Locator("#out ~ p").First).ToContainTextAsync("2 in the house");

        // The last two lie in the basket at the table when the bench gives them away: the table sees it, and may not sell them.
        await table.Page.ClickAsync("#sell-bramble-bar");
        await table.Page.ClickAsync("#sell-bramble-bar");
        StockMovements.Sell(book, Lot, 2, "A. Reader", 0, Day, "Ada");
        await Assertions.Expect(bench.Page.Locator("#out ~ p").First).ToContainTextAsync("0 in the house");
        await Assertions.Expect(table.Page.Locator("#sell-bramble-bar")).ToBeDisabledAsync();
        await table.Page.ClickAsync("#pay-cash");
        await Assertions.Expect(table.Page.Locator("main [role=alert]")).ToContainTextAsync("A. Reader");
        await Assertions.Expect(table.Page.Locator("main [role=alert]")).ToContainTextAsync("Ada");
        Assert.Equal(["Bea", "Ada"], book.Ask(b => b.SalesOf(b.BatchOf(Lot)).Select(s => s.By).ToArray()));
        Assert.Equal(0, book.Ask(b => b.PiecesLeft(b.BatchOf(Lot))));
        Assert.Empty(bench.Complaints);
        Assert.Empty(table.Complaints);
    }

    private async Task<Window> OpenAsync(string books)
    {
        var window = await Window.OpenAsync(chromium, example: true);
        await File.AppendAllTextAsync(Path.Combine(window.Folder, "workshop.yaml"), $"\nrecords: \"{books}\"\n");
        return window;
    }

    private static OpenBooks Finish(string folder)
    {
        var (workshop, book) = (Workshop.Open(folder), OpenBooks.Open(folder));
        Production.Start(book, FrozenRecipe.Of(workshop, workshop.ProductOf("bramble-bar").Batch, "us", null), Lot, Day, "Ada");
        foreach (var line in workshop.ProductOf("bramble-bar").Batch.Lines)
            Production.Weigh(book, Lot, line.Material.Id, line.Mass.Grams, null, Day, "Ada");
        Production.Close(book, Lot, 6, 0, null, Day, "Ada");
        return book;
    }
}
