using LabelForge.Measures;
using LabelForge.Records.Books;
using LabelForge.Records.Tests.Books;

namespace LabelForge.Records.Tests.Hostile;

/// <summary>Lists for the books that somebody sends, made to do harm: each is refused in words, and nothing of it is kept.</summary>
public sealed class HostileListTests : IDisposable
{
    private readonly TestShop _shop = new();

    public HostileListTests()
    {
        _shop.Stock();
        _shop.Finish("26R02-01X");
    }

    [Theory]
    [InlineData("lot,pieces,to,paid\n26R02-01X,99999999999999999999,Ann,7\n")]
    [InlineData("lot,pieces,to,paid\n26R02-01X,1,Ann,1e400\n")]
    [InlineData("lot,pieces,to,paid\n26R02-01X,1,Ann,-79228162514264337593543950335\n")]
    [InlineData("lot,pieces,to,paid\n26R02-01X,1,\"Ann,7\n26R02-01X,1,Ann,7\n")]
    [InlineData("number,lot,pieces,to,paid\n99999999999999999999,26R02-01X,1,Ann,7\n")]
    [InlineData("number,lot,pieces,to,paid\n-5,26R02-01X,1,Ann,7\n")]
    [InlineData("lot,lot,pieces,to,paid\n26R02-01X,26R02-01X,1,Ann,7\n")]
    [InlineData("lot,pieces,to,paid,on\n26R02-01X,1,Ann,7,9999-99-99\n")]
    [InlineData("PK\u0003\u0004\u0014\0\0\0 a workbook's archive and no text")]
    [InlineData("\0\0\0\0")]
    [InlineData("")]
    public void A_list_made_to_break_the_reader_is_refused_and_nothing_of_it_is_kept(string csv) => Refused(csv);

    [Fact]
    public void A_line_of_a_megabyte_is_refused_and_nothing_of_it_is_kept() =>
        Refused("lot,pieces,to,paid\n26R02-01X,1,Ann," + new string('7', 1_000_000) + "\n");

    [Fact]
    public void A_hundred_thousand_columns_are_refused() =>
        Refused(string.Join(',', Enumerable.Range(0, 100_000).Select(i => $"c{i}")) + "\n");

    [Fact]
    public void A_list_of_eleven_megabytes_is_refused_unread() =>
        Assert.Contains("larger than ten megabytes", Refused("lot,pieces,to,paid\n" + new string('\n', 11_000_000)));

    [Fact]
    public void A_list_that_is_a_folder_is_refused()
    {
        Directory.CreateDirectory(Path.Combine(_shop.Folder, "in.csv"));
        Assert.NotEqual("",
            Assert.Throws<InputException>(() => ListImport.ReadFiles(_shop.Book, [Path.Combine(_shop.Folder, "in.csv")], TestShop.Day,
                "A")).Problem.Write);
    }

    // A name of any length may be typed; what is kept is what was typed, whole.
    [Fact]
    public void A_very_long_name_is_kept_whole_or_refused()
    {
        var name = new string('n', 100_000);
        _shop.Write("in.csv", $"lot,pieces,to,paid\n26R02-01X,1,{name},7\n");
        try
        {
            ListImport.ReadFiles(_shop.Book, [Path.Combine(_shop.Folder, "in.csv")], TestShop.Day, "A");
            Assert.Equal(name, Assert.Single(_shop.Book.Read().Sales).To);
        }
        catch (InputException refused)
        {
            Assert.NotEqual("", refused.Problem.Write);
            Assert.Empty(_shop.Book.Read().AllSales);
        }
    }

    public void Dispose() => _shop.Dispose();

    private string Refused(string csv)
    {
        _shop.Write("in.csv", csv);
        var refused = Assert.Throws<InputException>(() => ListImport.ReadFiles(_shop.Book, [Path.Combine(_shop.Folder, "in.csv")],
            TestShop.Day, "A"));
        Assert.NotEqual("", refused.Problem.Wrong);
        Assert.Empty(_shop.Book.Read().AllSales);
        return refused.Message;
    }
}
