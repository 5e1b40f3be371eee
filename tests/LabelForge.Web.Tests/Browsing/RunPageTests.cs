using LabelForge.Lots;
using LabelForge.Print.Sheets;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.UseCases;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Printing what was poured: a rule that stops it until it is ticked, places that are marked by hand, and the printer.</summary>
public sealed class RunPageTests(Chromium chromium)
{
    private const string Stock = "us-letter-10-2x4in";
    private static readonly DateOnly Day = new(2026, 11, 25);
    private static readonly string Lot = new LotCode(Day, 1).ToString();

    [Fact]
    public async Task A_broken_rule_stops_the_run_until_the_maker_ticks_that_it_is_known()
    {
        await using var window = await OpenAsync("30 % of batch");
        var page = window.Page;
        await page.ClickAsync("#plan");
        await Assertions.Expect(page.Locator("#sheets ~ [role=alert], section [role=alert]").First).ToContainTextAsync("Bramble");
        await Assertions.Expect(page.Locator("#make-run")).ToBeDisabledAsync();
        await page.CheckAsync("#anyway");
        await page.ClickAsync("#make-run");
        await page.Locator("#run-pdf").WaitForAsync();
        using var pdf = PdfDocument.Open(PagesOf(window, 1));
        // The sheet itself says over which rule it was printed, and so do the books.
        Assert.Contains("fragrance.over-limit", pdf.GetPage(1).Text, StringComparison.Ordinal);
        var printed = Assert.Single(OpenBooks.Open(window.Folder).Read().Printings);
        Assert.Contains("fragrance.over-limit", printed.Note ?? "", StringComparison.Ordinal);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_place_that_is_marked_used_gets_no_label_and_one_that_is_marked_free_gets_one_again()
    {
        await using var window = await OpenAsync();
        var page = window.Page;
        await page.ClickAsync("#plan");
        await Assertions.Expect(page.Locator("figure.mixed image")).ToHaveCountAsync(6);
        await Assertions.Expect(page.Locator("#place-1-1 image")).ToHaveCountAsync(1);
        await page.ClickAsync("#mark-places");
        await page.ClickAsync("#place-1-1");
        await Assertions.Expect(page.Locator("#place-1-1 rect.gone")).ToHaveCountAsync(1);
        await Assertions.Expect(page.Locator("#place-1-7 image")).ToHaveCountAsync(1);
        // By the keyboard too.
        await page.Locator("#place-1-2").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#place-1-2 rect.gone")).ToHaveCountAsync(1);
        Assert.Equal([1, 2], Used(window));
        await page.ClickAsync("#place-1-1");
        await Assertions.Expect(page.Locator("#place-1-1 image")).ToHaveCountAsync(1);
        Assert.Equal([2], Used(window));
        await page.ClickAsync("#make-run");
        await page.Locator("#run-pdf").WaitForAsync();
        Assert.Equal([1, 2, 3, 4, 5, 6, 7], Used(window));
        Assert.Equal("A:1,3-7", Assert.Single(OpenBooks.Open(window.Folder).Read().Printings).Places);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_printer_that_was_measured_moves_the_print_and_stays_chosen()
    {
        await using var window = await OpenAsync();
        Directory.CreateDirectory(Path.Combine(window.Folder, "printers"));
        await File.WriteAllTextAsync(Path.Combine(window.Folder, "printers/kitchen.yaml"), "nudge: 3,-2\n",
            TestContext.Current.CancellationToken);
        Assert.Equal("kitchen", Assert.Single(PrinterFile.Known(window.Folder)));
        var page = window.Page;
        await PrintAsync(page, printer: null);
        // The same places once more, on a new sheet.
        File.Delete(Path.Combine(window.Folder, "part-used.yaml"));
        PrintRun.Spoil(OpenBooks.Open(window.Folder), Shipped.Markets, Lot, 6, Day, "test");
        await window.GoAsync("/run");
        await Assertions.Expect(page.Locator($"#count-{Lot}")).ToHaveTextAsync("6");
        await PrintAsync(page, "kitchen");
        await window.GoAsync("/run");
        PrintRun.Spoil(OpenBooks.Open(window.Folder), Shipped.Markets, Lot, 1, Day, "test");
        await Assertions.Expect(page.Locator($"#count-{Lot}")).ToHaveTextAsync("1");
        await page.ClickAsync("#plan");
        await Assertions.Expect(page.Locator("#run-printer")).ToHaveValueAsync("kitchen");
        var (plain, moved) = (FirstLetter(window, 1), FirstLetter(window, 2));
        const double points = 72 / 25.4;
        Assert.Equal(3 * points, moved.X - plain.X, 0.1);
        // The page is measured from its foot.
        Assert.Equal(2 * points, moved.Y - plain.Y, 0.1);
        Assert.Empty(window.Complaints);
    }

    private static async Task PrintAsync(IPage page, string? printer)
    {
        await page.ClickAsync("#plan");
        await Assertions.Expect(page.Locator("figure.mixed image")).ToHaveCountAsync(6);
        if (printer is not null)
            await page.Locator("#run-printer").SelectOptionAsync(printer);
        await page.ClickAsync("#make-run");
        await page.Locator("#run-pdf").WaitForAsync();
    }

    private static string PagesOf(Window window, int run) =>
        Path.Combine(window.Folder, PrintRun.Kept, FormattableString.Invariant($"run-{run:0000}.pdf"));

    private static (double X, double Y) FirstLetter(Window window, int run)
    {
        using var pdf = PdfDocument.Open(PagesOf(window, run));
        var letter = pdf.GetPage(1).Letters[0];
        return (letter.StartBaseLine.X, letter.StartBaseLine.Y);
    }

    private static IEnumerable<int> Used(Window window) =>
        Assert.Single(PartUsedSheets.Of(window.Folder).SheetsOf(StockShelf.Of(window.Folder).Load(Stock))).Used;

    // Six bars wait for their labels.
    private async Task<Window> OpenAsync(string? scent = null)
    {
        var window = await Window.OpenAsync(chromium, example: true);
        await File.AppendAllTextAsync(Path.Combine(window.Folder, "workshop.yaml"), $"label stock: [ {Stock} ]\n",
            TestContext.Current.CancellationToken);
        if (scent is not null)
        {
            var path = Path.Combine(window.Folder, "recipes/bramble-bar.yaml");
            await File.WriteAllTextAsync(path,
                window.File("recipes/bramble-bar.yaml").Replace("1.8 % of batch", scent, StringComparison.Ordinal),
                TestContext.Current.CancellationToken);
        }
        var workshop = Workshop.Open(window.Folder);
        Production.Start(OpenBooks.Open(window.Folder), FrozenRecipe.Of(workshop, workshop.ProductOf("bramble-bar").Batch, "us", null),
            Lot, Day, "test");
        await window.GoAsync("/run");
        await window.Page.Locator($"#count-{Lot}").WaitForAsync();
        return window;
    }
}
