using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Copying;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Years;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Ten scents, one Saturday, by touch: one pot, sixty bars, one mixed print run, forty sales of which two are undone, one
/// complaint and its trace. At the end the books balance to the gram and the cent, as they do through the command.
/// </summary>
public sealed class SaturdayPageTests(Chromium chromium)
{
    private static readonly string[] Scents = ["Bramble & Shea", "Salt Meadow", "Peach Morning", "Beeswing", "Moss Lane", "Rainy Day",
        "Winter Smoke", "Fern Hollow", "Quince Row", "Slate Quay"];

    [Fact]
    public async Task From_one_pot_to_the_market_table_and_back()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        Prepare(window.Folder);
        var pot = await PourAsync(window);
        await PrintAsync(window);
        await SellAsync(window);
        await AnswerAsync(window, pot);
        Balance(window.Folder);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_new_scent_is_one_form_and_the_evenings_paper_is_another()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/copy");
        await page.Locator("#from").SelectOptionAsync("bramble-bar");
        await page.FillAsync("#name", "Quince Row");
        await page.Locator("#scent").SelectOptionAsync("peach-fragrance");
        await page.FillAsync("#price", "7.50");
        await page.ClickAsync("#hue-60");
        await page.ClickAsync("#copy");
        await page.GetByRole(AriaRole.Link, new() { Name = "Open it" }).WaitForAsync();
        var copy = Workshop.Open(window.Folder).ProductOf("quince-row").Recipe;
        Assert.Equal(("60", 7.50m, "peach-fragrance"), (copy.Look.Hue?.Text, copy.Price, copy.Materials[2].Material));

        FilledBooks.Fill(window.Folder);
        await window.GoAsync("/tally");
        await page.FillAsync("#place", "Wendle market");
        await page.Locator("[id='sold-bramble-bar']").FillAsync("1");
        await page.FillAsync("#float", "40");
        await page.FillAsync("#card", "0");
        await page.FillAsync("#cash", "40");
        await Assertions.Expect(page.Locator("form .notice.should")).ToContainTextAsync("7.00 USD short: just one piece");
        await page.ClickAsync("#book-day");
        await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync("1");
        var takings = Assert.Single(OpenBooks.Open(window.Folder).Read().Takings);
        Assert.Equal((40m, 40m), (takings.Float, takings.Cash));
        Assert.Equal([7m],
            OpenBooks.Open(window.Folder).Read().Sales.Where(s => s.To == "Wendle market" && s.Ticket is not null).Select(s => s.Paid));
        Assert.Empty(window.Complaints);
    }

    private static void Prepare(string folder)
    {
        File.AppendAllText(Path.Combine(folder, "workshop.yaml"),
            "label stock: [ us-letter-10-2x4in ]\nsales tax: { rate: 5.5 %, prices: with tax }\n");
        foreach (var (name, scent, hue) in ((string, string, int)[])[("Fern Hollow", "moss-fragrance", 150),
            ("Quince Row", "peach-fragrance", 85), ("Slate Quay", "rain-fragrance", 250)])
            RecipeCopy.Write(Workshop.Open(folder), new RecipeCopyWish("meadow-bar/Salt Meadow", name, scent, hue));
        var book = OpenBooks.Open(folder);
        foreach (var material in Workshop.Open(folder).Materials.Values)
            StockMovements.Receive(book,
                new Receipt
                {
                    On = new DateOnly(2026, 11, 20),
                    By = "test",
                    Material = material.Id,
                    Amount = material.Kind == MaterialKind.Base ? 9000 : 300,
                    Price = 31.37m,
                });
    }

    private static async Task<string> PourAsync(Window window)
    {
        var page = window.Page;
        await window.GoAsync("/pour");
        foreach (var scent in Scents)
            await page.GetByLabel($"Pieces of {scent}", new() { Exact = true }).FillAsync("6");
        await page.ClickAsync("#begin-pot");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex(@"/pour\?pot="));
        var lines = page.Locator(".pouring .plain li");
        await Assertions.Expect(lines.First).ToBeVisibleAsync();
        // The base once, and of each scent its oil, its fragrance and its colour.
        var count = await lines.CountAsync();
        Assert.Equal(31, count);
        for (var weighed = 1; weighed <= count; weighed++)
        {
            var figure = (await page.Locator(".bench-figure").InnerTextAsync()).Replace("g", "", StringComparison.Ordinal).Trim();
            await page.FillAsync("#weighed", figure);
            if (weighed == count)
                await page.ClickAsync("#do-weigh");
            else
                await WrittenAsync(page, ".pouring form", "#do-weigh");
        }
        await page.Locator("#close-pot").WaitForAsync();
        foreach (var batch in OpenBooks.Open(window.Folder).Read().Batches)
            await page.FillAsync($"#made-{batch.Lot}", "6");
        await page.ClickAsync("#close-pot");
        await page.GetByRole(AriaRole.Link, new() { Name = "Print their labels" }).ClickAsync();
        return OpenBooks.Open(window.Folder).Read().Batches[0].Pot!;
    }

    private static async Task PrintAsync(Window window)
    {
        var page = window.Page;
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/run$"));
        await page.ClickAsync("#plan");
        await Assertions.Expect(page.Locator("figure.mixed")).ToHaveCountAsync(6);
        await Assertions.Expect(page.Locator("figure.mixed image")).ToHaveCountAsync(60);
        await page.ClickAsync("#make-run");
        await page.Locator("#run-pdf").WaitForAsync();
        var spoilt = OpenBooks.Open(window.Folder).Read().Batches[3].Lot;
        for (var bad = 1; bad <= 2; bad++)
        {
            await WrittenAsync(page, $"#spoil-{spoilt}", $"#spoil-{spoilt}");
            await Assertions.Expect(page.Locator($"#count-{spoilt}")).ToHaveTextAsync($"{bad}");
        }
        await page.ClickAsync("#plan");
        await Assertions.Expect(page.Locator("figure.mixed image")).ToHaveCountAsync(2);
        await Assertions.Expect(page.Locator("figure.mixed figcaption")).ToContainTextAsync("write A on it");
        await page.ClickAsync("#make-run");
        await page.Locator("#run-pdf").WaitForAsync();
        Assert.Equal(62, OpenBooks.Open(window.Folder).Read().Printings.Sum(p => p.Labels));
    }

    private static async Task SellAsync(Window window)
    {
        var page = window.Page;
        await window.GoAsync("/market");
        await page.FillAsync("#place", "Fairport market");
        var sold = 0;
        string? before = null;
        for (var buyer = 0; buyer < 40; buyer++)
        {
            // Every eighth buyer takes two scents in one go.
            int[] taken = buyer % 8 == 7 ? [buyer % 10, (buyer + 3) % 10] : [buyer % 10];
            foreach (var scent in taken)
                await Tile(page, Scents[scent]).ClickAsync();
            await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync($"{7 * taken.Length}.00 USD");
            var key = await page.Locator(".pay").GetAttributeAsync("data-once");
            Assert.NotEqual(before, key);
            before = key;
            await page.ClickAsync(buyer % 3 == 0 ? "#pay-card" : "#pay-cash");
            await Assertions.Expect(page.Locator(".buyer")).ToContainTextAsync("Touch what the buyer takes");
            sold += taken.Length;
            await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync($"{sold}");
            if (buyer is not (11 or 26))
                continue;
            await WrittenAsync(page, "#undo-sale", "#undo-sale");
            sold -= taken.Length;
            await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync($"{sold}");
        }
        await page.FillAsync("#float", "40");
        await page.FillAsync("#card", "91");
        await page.FillAsync("#cash", (40 + 7 * sold - 91).ToString(CultureInfo.InvariantCulture));
        await page.ClickAsync("#close-day");
        await Assertions.Expect(page.Locator(".sums")).ToContainTextAsync("The box should hold");
        await Assertions.Expect(page.Locator("#paid-in-all")).ToHaveTextAsync($"{7 * sold}.00 USD");
        Assert.Equal(38, OpenBooks.Open(window.Folder).Read().Sales.Select(s => s.Ticket).Distinct().Count());
    }

    // A form is written once for its key: what is pressed before the page has the next key is a second press, and does nothing.
    private static async Task WrittenAsync(IPage page, string form, string button)
    {
        var key = await page.Locator(form).GetAttributeAsync("data-once");
        await page.ClickAsync(button);
        await Assertions.Expect(page.Locator(form)).Not.ToHaveAttributeAsync("data-once", key!);
    }

    private static ILocator Tile(IPage page, string scent) =>
        page.Locator(".goods li").Filter(new() { Has = page.GetByText(scent, new() { Exact = true }) }).GetByRole(AriaRole.Button);

    private static async Task AnswerAsync(Window window, string pot)
    {
        var page = window.Page;
        var lot = OpenBooks.Open(window.Folder).Read().Batches[4].Lot;
        await window.GoAsync("/stock/complaints");
        await page.FillAsync("#from", "a buyer, 555-0142");
        await page.FillAsync("#what", "it itched");
        await page.Locator("#told-lot").SelectOptionAsync(lot);
        await page.Locator("button[type=submit].chief").ClickAsync();
        await Window.UntilAsync(() => OpenBooks.Open(window.Folder).Read().Complaints.Count == 1, "the complaint is written");
        await window.GoAsync($"/trace/{lot}");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Fairport market");
        await window.GoAsync($"/trace/{pot}");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Slate Quay");
    }

    private static void Balance(string folder)
    {
        var snapshot = OpenBooks.Open(folder).Read();
        BooksInvariants.Check(snapshot.Whole);
        foreach (var receipt in snapshot.Receipts)
            Assert.Equal(receipt.Amount,
                snapshot.Left(receipt) + snapshot.Weighings.Where(w => w.ReceiptId == receipt.Id).Sum(w => w.Grams)
                    + snapshot.PackingUses.Where(u => u.ReceiptId == receipt.Id).Sum(u => u.Used));
        var year = YearBook.Of(snapshot, 2026);
        Assert.Equal(snapshot.Sales.Sum(s => s.Paid), year.Whole.Paid);
        Assert.Equal(Math.Round(StockValue.Of(snapshot).Whole, 9), Math.Round(year.AtEnd, 9));
        Assert.Equal(0, Math.Round(year.OutOfBalance, 9));
    }
}
