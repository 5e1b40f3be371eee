using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

public class ListImportTests : IDisposable
{
    private readonly TestShop _shop = new();

    public ListImportTests()
    {
        _shop.Stock();
        _shop.Finish("26R02-01X");
    }

    public void Dispose()
    {
        _shop.Dispose();
        GC.SuppressFinalize(this);
    }

    // A market day typed in a spreadsheet: no numbers, two lots, one price with a point.
    [Fact]
    public void A_market_day_typed_in_a_spreadsheet_is_read_in()
    {
        Assert.Equal((2, 0), Read("lot;pieces;to;paid\n26r02 01x;2;Fairport market;14.00\n26R02-01X;1;\"'=gift\";0\n"));
        var snapshot = _shop.Book.Read();
        Assert.Equal(["Fairport market", "=gift"], snapshot.Sales.Select(s => s.To));
        Assert.Equal(5, snapshot.PiecesLeft(snapshot.BatchOf("26R02-01X")));
    }

    // No numbers in it, so that nothing but what it says tells the second reading from the first.
    [Fact]
    public void A_list_read_twice_adds_nothing_and_a_line_that_stands_twice_in_it_is_two_entries()
    {
        const string Day = "lot,pieces,to,paid\n26R02-01X,1,Fairport market,7\n26R02-01X,1,Fairport market,7\n26R02-01X,2,Ann,14\n";
        Assert.Equal((3, 0), Read(Day));
        Assert.Equal((0, 3), Read(Day));
        // On another day, by another person: a line that names neither is still the same line.
        _shop.Write("in.csv", Day);
        Assert.Equal((0, 3), ListImport.ReadFiles(_shop.Book, [Path.Combine(_shop.Folder, "in.csv")], TestShop.Day.AddDays(3), "B"));
        Assert.Equal((1, 3), Read(Day + "26R02-01X,1,Fairport market,7\n"));
        Assert.Equal(4, _shop.Book.Read().Sales.Count);
    }

    [Theory]
    [InlineData("lot,pieces,to,paid\n26R02-01X,1,Ann,7\n26R02-01X,x,Ann,7\n", "in.csv, line 3: \"x\" is not a whole number")]
    [InlineData("lot,pieces,to,paid\n26R02-01X,1,Ann,7\n26R02-01X,0,Ann,7\n", "in.csv, line 3: A sale is of one piece or more")]
    [InlineData("lot,pieces,to,paid\n26R02-01X,9,Ann,7\n", "less than nothing")]
    [InlineData("lot,pieces,to,paid\n26R02X02N,1,Ann,7\n", "No batch has the lot")]
    [InlineData("lot,pieces,price\n26R02-01X,1,7\n", "The heading is that of no list")]
    [InlineData("number,material,amount,price\n1,base,5,1\n", "in.csv, line 2: The books have another receipt 1")]
    [InlineData("lot,pieces,to,paid,on\n26R02-01X,1,Ann,7,2.11.2026\n", "\"2.11.2026\" is not a date")]
    public void A_list_with_a_mistake_is_refused_as_a_whole(string csv, string says)
    {
        Assert.Contains(says, TestShop.Refusal(() => Read(csv)));
        Assert.Empty(_shop.Book.Read().AllSales);
    }

    // What came in is a list of receipts: all of it or nothing, and a row that the books hold already is asked about by its line.
    [Fact]
    public void A_list_of_what_came_in_is_written_whole_or_not_and_rows_that_are_there_already_are_asked_about()
    {
        Assert.Contains("in.csv, line 3: \"x\"", TestShop.Refusal(() => Received("material,amount,price\nbase,1 kg,9.50\nbase,x,9.50\n")));
        Assert.Contains("in.csv, line 3", TestShop.Refusal(() => Received("material,amount,price\nbase,1 kg,9.50\nbase,0 g,9.50\n")));
        Assert.Equal(3, _shop.Book.Read().Receipts.Count);

        var list = Received("material,amount,price,supplier lot\nbase,1 kg,9.50,A\nbase,1 kg,9.50,B\n");
        Assert.Empty(Asked(list));
        Assert.Equal([4, 5], list.Write(_shop.Book).Select(r => r.Id));
        Assert.Equal(["Line 2: M4 in the books says all of the same. Is this another bottle?"],
            Asked(Received("material,amount,price,supplier lot\nbase,1 kg,9.50,A\nbase,1 kg,9.50,A\n")));
        // What came on another day is another bottle.
        Assert.Empty(Asked(Received("material,amount,price,supplier lot,on\nbase,1 kg,9.50,A,2026-11-01\n")));
        Assert.Equal(5, _shop.Book.Read().Receipts.Count);
    }

    private ReceiptList Received(string csv)
    {
        _shop.Write("in.csv", csv);
        return ReceiptList.Read(Path.Combine(_shop.Folder, "in.csv"), _shop.Workshop, TestShop.Day, "A");
    }

    private string[] Asked(ReceiptList list) =>
        [.. _shop.Book.Ask(books => list.Slips(books, _shop.Workshop, TestShop.Day)).Select(s => s.Wrong)];

    private (int Added, int Known) Read(string csv)
    {
        _shop.Write("in.csv", csv);
        return ListImport.ReadFiles(_shop.Book, [Path.Combine(_shop.Folder, "in.csv")], TestShop.Day, "A");
    }
}
