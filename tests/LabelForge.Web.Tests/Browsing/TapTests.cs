using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Data.Sqlite;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>At the table every tap counts: one that comes while the last sale is still being
/// written, or while the page says what became of it.</summary>
public sealed class TapTests(Chromium chromium)
{
    private static readonly DateOnly Day = new(2026, 11, 25);

    private static readonly string[] Products = ["meadow-bar/Salt Meadow", "meadow-bar/Moss Lane"];

    [Fact]
    public async Task The_next_buyers_bar_is_touched_while_the_last_sale_is_written()
    {
        await using var window = await OpenAsync();
        var page = window.Page;
        await page.ClickAsync("#sell-meadow-bar-salt-meadow");
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("7.00 USD");
        // Another program writes into the books, so the sale has to wait.
        await using (var other = new SqliteConnection($"Data Source={Path.Combine(window.Folder, OpenBooks.FileName)};Pooling=False"))
        {
            await other.OpenAsync(TestContext.Current.CancellationToken);
            await using var writing = await other.BeginTransactionAsync(System.Data.IsolationLevel.Serializable,
                TestContext.Current.CancellationToken);
            await page.ClickAsync("#pay-cash");
            await page.ClickAsync("#sell-meadow-bar-moss-lane");
            await Assertions.Expect(page.Locator("#sell-meadow-bar-moss-lane .badge")).ToBeVisibleAsync();
            Assert.Empty(OpenBooks.Open(window.Folder).Read().Sales);
        }
        await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync("1");
        await Assertions.Expect(page.Locator(".buyer")).ToContainTextAsync("Sold: 1 Salt Meadow");
        // The sale took its own bar out of the basket, and no other.
        await Assertions.Expect(page.Locator(".buyer li")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator(".buyer li")).ToContainTextAsync("1 × Moss Lane");
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("7.00 USD");
        Assert.Empty(window.Complaints);
    }

    // A browser clicks for nothing that is gone when the finger is lifted; the tile is there, and only its picture was drawn anew.
    [Fact]
    public async Task A_tile_is_touched_though_what_lies_under_the_finger_is_drawn_anew_meanwhile()
    {
        await using var window = await OpenAsync();
        var page = window.Page;
        var tile = page.Locator("#sell-meadow-bar-moss-lane");
        await tile.ScrollIntoViewIfNeededAsync();
        var box = (await tile.BoundingBoxAsync())!;
        for (var taken = 1; taken <= 2; taken++)
        {
            await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
            await page.Mouse.DownAsync();
            await page.EvaluateAsync("""
                ([x, y]) => {
                  const under = document.elementFromPoint(x, y);
                  if (under.closest('button') !== under) under.replaceWith(under.cloneNode(true));
                }
                """, new double[] { box.X + box.Width / 2, box.Y + box.Height / 2 });
            await page.Mouse.UpAsync();
            await Assertions.Expect(tile.Locator(".badge")).ToContainTextAsync($"{taken}");
        }
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("14.00 USD");
    }

    [Fact]
    public async Task What_the_page_says_of_a_sale_or_an_undo_moves_no_tile_away_under_a_finger()
    {
        await using var window = await OpenAsync();
        var page = window.Page;
        var tile = page.Locator("#sell-meadow-bar-moss-lane");
        await page.ClickAsync("#sell-meadow-bar-salt-meadow");
        await page.Locator("#pay-cash").WaitForAsync();
        await TapWhileAsync("#pay-cash", "Sold: 1 Salt Meadow", "1");
        await TapWhileAsync("#undo-sale", "Undone: one piece", "2");
        Assert.Empty(window.Complaints);

        // The finger is down near the tile's upper edge, then the page says something, then it is up.
        async Task TapWhileAsync(string button, string said, string badge)
        {
            await tile.ScrollIntoViewIfNeededAsync();
            var box = (await tile.BoundingBoxAsync())!;
            await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + 10);
            await page.Mouse.DownAsync();
            await page.EvalOnSelectorAsync(button, "button => button.click()");
            await Assertions.Expect(page.Locator(".market, main").First).ToContainTextAsync(said);
            await page.Mouse.UpAsync();
            await Assertions.Expect(tile.Locator(".badge")).ToContainTextAsync(badge);
        }
    }

    [Fact]
    public async Task A_bar_held_before_a_scanner_goes_into_the_basket_as_a_touch_does()
    {
        await using var window = await OpenAsync();
        var page = window.Page;
        string Typed(int batch, string serial) =>
        "]d2" + Gs1ElementString.ForItem(Gtin.FromPrefix("9521407", 3).Value!, lot: LotOf(batch), serial: serial).Value!.Message
            .Replace(Gs1ElementString.Separator.ToString(), "", StringComparison.Ordinal);
        await CameraTests.ScanAsync(page, Typed(0, "1"), thePageItself: true);
        await Assertions.Expect(page.Locator(".buyer")).ToContainTextAsync("Salt Meadow, by its code.");
        await CameraTests.ScanAsync(page, Typed(0, "2"), thePageItself: true);
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("14.00 USD");
        await CameraTests.ScanAsync(page, Typed(1, "1"), thePageItself: true);
        await Assertions.Expect(page.Locator(".buyer li")).ToHaveCountAsync(2);
        // The third of two is not there to be sold, and a lot that nobody began is told.
        await CameraTests.ScanAsync(page, Typed(0, "3"), thePageItself: true);
        await Assertions.Expect(page.Locator(".buyer [role=alert]")).ToContainTextAsync("Salt Meadow");
        await CameraTests.ScanAsync(page, Typed(7, "1"), thePageItself: true);
        await Assertions.Expect(page.Locator(".buyer [role=alert]")).ToContainTextAsync(LotOf(7));
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("21.00 USD");
        await page.ClickAsync("#pay-card");
        await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync("3");
        Assert.Equal([(2, LotOf(0)), (1, LotOf(1))],
            OpenBooks.Open(window.Folder).Read() is var books
                ? books.Sales.Select(s => (s.Pieces, books.Batches.First(b => b.Id == s.BatchId).Lot))
                : []);
        Assert.Empty(window.Complaints);
    }

    private static string LotOf(int product) => new LotCode(Day, 11 + product).ToString();

    // Two bars of each of two products lie on the table.
    private async Task<Window> OpenAsync()
    {
        var window = await Window.OpenAsync(chromium, example: true);
        var (workshop, book) = (Workshop.Open(window.Folder), OpenBooks.Open(window.Folder));
        foreach (var (name, i) in Products.Select((p, i) => (p, i)))
        {
            Production.Start(book, FrozenRecipe.Of(workshop, workshop.ProductOf(name).Batch, "us", null), LotOf(i), Day, "test");
            foreach (var line in workshop.ProductOf(name).Batch.Lines)
                Production.Weigh(book, LotOf(i), line.Material.Id, line.Mass.Grams, null, Day, "test");
            Production.Close(book, LotOf(i), 2, 0, null, Day, "test");
        }
        await window.GoAsync("/market");
        await window.Page.Locator(".goods").WaitForAsync();
        return window;
    }
}
