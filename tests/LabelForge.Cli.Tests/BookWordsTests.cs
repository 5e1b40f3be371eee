using System.Text.Json;
using LabelForge.Lots;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Tests;

/// <summary>What a verb of the books takes it keeps; what it does not keep it does not take; and each answers as JSON.</summary>
public sealed class BookWordsTests : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 25);
    private static readonly string Lot = new LotCode(Day, 1).ToString();

    private readonly ExampleWorkshop _example = new();
    private readonly OpenBooks _book;

    public BookWordsTests()
    {
        _book = OpenBooks.Open(_example.Opened.Folder);
        var batch = _example.Batch("bramble-bar");
        foreach (var line in batch.Lines)
            StockMovements.Receive(_book,
                new Receipt { On = Day, By = "A", Material = line.Material.Id, Amount = line.Mass.Grams * 2, Price = 9 });
        Production.Start(_book, FrozenRecipe.Of(_example.Opened, batch, "us", null), Lot, Day, "A");
        foreach (var line in batch.Lines)
            Production.Weigh(_book, Lot, line.Material.Id, line.Mass.Grams, null, Day, "A");
        Production.Close(_book, Lot, 6, 0, null, Day, "A");
    }

    public void Dispose() => _example.Dispose();

    private CommandRun Run(params string[] words) => CommandRun.Of([.. words, "--workshop", _example.Opened.Folder]);

    [Fact]
    public void A_note_is_kept_with_whatever_it_is_written_with_and_so_is_who_wrote_it()
    {
        foreach (var words in new[]
        {
            ["complaint", "--from", "Ann", "--what", "a rash"],
            ["dispose", Lot, "1", "--reason", "broken"],
            ["dispose", "M1", "1 g", "--reason", "spilt"],
            ["batch", "note", Lot, "base overheated"],
            (string[])["correct", "disposal", "1", "--set", "reason=dropped", "--reason", "misread"],
        })
        {
            var run = Run([.. words, "--note", "photo in papers/1.jpg", "--by", "Ada", "--on", "2026-11-25", "--format", "json"]);
            Assert.Equal((0, ""), (run.ExitCode, run.Messages));
            using var _ = JsonDocument.Parse(run.Output);
        }
        var snapshot = _book.Read();
        Assert.All((BookEntry[])[snapshot.AllComplaints[0], snapshot.AllDisposals[0], snapshot.AllDisposals[1], snapshot.AllDeviations[0],
            snapshot.Corrections[0]],
            e => Assert.Equal(("photo in papers/1.jpg", "Ada"), (e.Note, e.By)));
    }

    [Theory]
    [InlineData("books sale --note x")]
    [InlineData("books sale --by Ada")]
    [InlineData("import lists --note x")]
    [InlineData("receive-list in.csv --note x")]
    [InlineData("books verify --last 3")]
    [InlineData("market sheet --out t.pdf --by Ada")]
    [InlineData("market undo --note x")]
    [InlineData("market book bar=1 --note x")]
    [InlineData("market day --note x")]
    [InlineData("year --by Ada")]
    [InlineData("batch sheet 26R20-01H --out s.pdf --note x")]
    public void What_a_verb_does_not_use_it_refuses(string words) => Assert.Equal(2, Run(words.Split(' ')).ExitCode);

    [Fact]
    public void A_list_is_written_as_JSON_with_figures_and_a_page_of_it_by_itself()
    {
        for (var i = 1; i <= 4; i++)
            StockMovements.Sell(_book, Lot, 1, $"buyer {i}", 7.5m, Day, "A");
        using var json = JsonDocument.Parse(Run("books", "sale", "--last", "2", "--format", "json").Output);
        var entries = json.RootElement.GetProperty("entries").EnumerateArray().ToArray();
        Assert.Equal(["buyer 3", "buyer 4"], entries.Select(e => e.GetProperty("to").GetString()));
        Assert.Equal((7.5m, 1, Lot),
            (entries[0].GetProperty("paid").GetDecimal(), entries[0].GetProperty("pieces").GetInt32(),
                entries[0].GetProperty("lot").GetString()));
        Assert.EndsWith("Z", entries[0].GetProperty("writtenAt").GetString(), StringComparison.Ordinal);
        // What a batch froze is named, not written out into the cell.
        Assert.DoesNotContain("{", Run("books", "batch").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Books_that_agree_are_said_to_and_those_that_do_not_end_with_1()
    {
        var good = Run("books", "verify");
        Assert.Equal(0, good.ExitCode);
        Assert.Contains("all agrees", good.Output, StringComparison.Ordinal);
        _book.Write((_, context) =>
        {
            context.ReceiptStock.First().Left += 1;
            return 0;
        });
        var bad = Run("books", "verify", "--format", "json");
        Assert.Equal(1, bad.ExitCode);
        using var json = JsonDocument.Parse(bad.Output);
        Assert.Equal(1, json.RootElement.GetProperty("differences").GetArrayLength());
    }
}
