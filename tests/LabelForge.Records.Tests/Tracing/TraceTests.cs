using System.Xml.Linq;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;
using LabelForge.Records.Tests.Books;
using LabelForge.Records.Tracing;
using Trace = LabelForge.Records.Tracing.Trace;

namespace LabelForge.Records.Tests.Tracing;

public abstract class TraceTests : IDisposable
{
    private readonly TestShop _shop;

    protected TraceTests(TestShop shop)
    {
        _shop = shop;
        _shop.Stock();
        StockMovements.Sell(_shop.Book, _shop.Finish("26R02-01X"), 3, "Ann <&>", 21, TestShop.Day, "A");
        StockMovements.Sell(_shop.Book, "26R02-01X", 2, "=market day", 0, TestShop.Day, "A");
        var other = _shop.Receive("scent", 100, 12, TestShop.Day.AddDays(5));
        Assert.Equal(4, other.Id);
        StockMovements.Sell(_shop.Book, _shop.Finish("26R02X02N"), 1, "Bea", 7, TestShop.Day, "A");
    }

    public void Dispose()
    {
        _shop.Dispose();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public void From_a_bottle_to_the_people_who_have_what_was_made_of_it()
    {
        Assert.Equal(["Bea"], Follow("M4").Deliveries.Select(d => d.To));
        Assert.Equal(["Ann <&>", "=market day"], Follow("m3").Deliveries.Select(d => d.To));
        Assert.Equal(6, Follow("H10000").Deliveries.Sum(d => d.Pieces));
        Assert.Equal(3, Follow("castor-oil").Deliveries.Count);
    }

    [Theory]
    [InlineData("26R02X02N", "M1 M2 M4")]
    [InlineData("Bea", "M1 M2 M4")]
    [InlineData("26r02-01x", "M1 M2 M3")]
    public void From_a_bar_or_a_buyer_back_to_the_bottles(string from, string bottles) =>
        Assert.Equal(bottles, string.Join(' ', Follow(from).Uses.Select(u => $"M{u.MaterialLot}").Distinct()));

    [Fact]
    public void A_recall_sheet_has_a_line_and_a_letter_for_each_who_has_pieces_and_names_the_bottles()
    {
        var sheet = RecallLetters.Of(Follow("castor-oil"), _shop.Workshop, TestShop.Day);
        string[] Lines(string heading) => [.. sheet.Parts.Single(p => p.Heading == heading).Lines];
        Assert.Contains("6 pieces left the house, 10 still in it", sheet.Summary, StringComparison.Ordinal);
        Assert.Equal(["Ann <&>: 3 of lot 26R02-01X, 2026-11-02", "=market day: 2 of lot 26R02-01X, 2026-11-02, given",
            "Bea: 1 of lot 26R02X02N, 2026-11-02"], Lines("Who has it"));
        Assert.Equal(["To: Ann <&>", "To: =market day", "To: Bea"], sheet.Letters.Select(l => l[2]));
        Assert.StartsWith("M2 Castor oil, from Heron, supplier's lot H1000, came 2026-11-02", Lines("What went into it")[0],
            StringComparison.Ordinal);
        Assert.Empty(Lines("What was told"));
    }

    [Fact]
    public void A_struck_sale_is_no_longer_followed()
    {
        Correcting.Of(_shop.Book, Shipped.Markets, "sale", 3, new Dictionary<string, string> { ["to"] = "Cleo" }, "wrong name", TestShop.Day, "A");
        Assert.Equal(["Cleo"], Follow("M4").Deliveries.Select(d => d.To));
    }

    [Fact]
    public void A_bottle_is_found_by_the_number_on_it_after_its_receipt_was_corrected_and_says_what_is_left_in_it()
    {
        Correcting.Of(_shop.Book, Shipped.Markets, "receipt", 4, new Dictionary<string, string> { ["supplier lot"] = "H101" }, "misread", TestShop.Day,
            "A");
        foreach (var name in new[] { "M4", "H101", "M5" })
            Assert.Equal((4, 82m, "Bea"),
                (Follow(name).Bottles.Single().MaterialLot, Follow(name).Bottles.Single().Left, Follow(name).Deliveries.Single().To));
        _shop.Receive("bag", 100, 6);
        Assert.Equal((100m, 0), (Follow("bag").Bottles.Single().Left, Follow("bag").Batches.Count));
    }

    [Fact]
    public void A_lot_whose_code_was_corrected_is_found_by_what_stood_on_the_label()
    {
        Correcting.Of(_shop.Book, Shipped.Markets, "batch", 2, new Dictionary<string, string> { ["lot"] = "26R02-03T" }, "wrong number", TestShop.Day, "A");
        Assert.Equal("Bea", Follow("26R02X02N").Deliveries.Single().To);
        Assert.Contains("went to Bea", Follow("be").From);
    }

    [Fact]
    public void What_the_books_do_not_know_is_refused() =>
        Assert.Contains("know nothing", TestShop.Refusal(() => Follow("M99")));

    [Fact]
    public void The_picture_is_sound_XML_and_shows_every_box_and_way()
    {
        var trace = Follow("castor-oil");
        var svg = XDocument.Parse(TracePicture.Svg(trace));
        XNamespace ns = "http://www.w3.org/2000/svg";
        Assert.Equal(1 + 1 + 2 + 3, svg.Descendants(ns + "rect").Count());
        Assert.Equal(2 + 3, svg.Descendants(ns + "path").Count());
        Assert.Contains(svg.Descendants(ns + "text"), t => t.Value == "Ann <&>");
    }

    [Fact]
    public void The_table_names_who_has_what_and_holds_no_formula()
    {
        var rows = TextTable.Read(TraceTable.Csv(Follow("M3")), "t.csv");
        Assert.Contains(rows, r => r.Cells[0] == "sold" && r.Cells[9] == "Ann <&>" && r.Cells[8] == "3");
        Assert.Contains(rows, r => r.Cells[0] == "given" && r.Cells[9] == "'=market day");
    }

    [Fact]
    public void A_mock_recall_from_books_opened_anew_finds_who_has_the_lot() =>
        Assert.Equal(Follow("M3").Deliveries.Select(d => d.ToString()),
            Trace.Of(OpenBooks.Open(_shop.Folder), "M3").Deliveries.Select(d => d.ToString()));

    private Trace Follow(string from) => Trace.Of(_shop.Book, from);
}

/// <summary>Tracing in books in a file.</summary>
public sealed class FileTraceTests() : TraceTests(new TestShop());

/// <summary>Tracing in books on a server.</summary>
public sealed class ServerTraceTests() : TraceTests(TestShop.OnServer());
