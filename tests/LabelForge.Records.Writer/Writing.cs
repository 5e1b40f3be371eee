using System.Globalization;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Writer;

/// <summary>Writes into the books for as long as it lives: receipts, corrections, and weighings
/// that take from several bottles at once.</summary>
internal static class Writing
{
    private const string Lot = "26R02-01X";
    private static readonly DateOnly Day = new(2026, 11, 2);

    /// <summary>Writes, and says each write's entries once it is acknowledged: "ok sale 3 correction 4".</summary>
    public static void Forever(OpenBooks book, Action<string> say, int most = int.MaxValue)
    {
        for (var i = 0; i < most; i++)
            say("ok " + string.Join(' ', One(book, i)));
    }

    /// <summary>Does everything once, so that a process split off has nothing left to load.</summary>
    public static void WarmUp()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-writer-").FullName;
        try
        {
            var book = OpenBooks.Open(folder);
            Begin(book);
            Forever(book, _ => { }, 12);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Begins the batch that is weighed into.</summary>
    public static void Begin(OpenBooks book) =>
        Production.Start(book, new FrozenRecipe("bar", "Bar", 1000, 8, "us", null, [new FrozenLine("base", "Base", 1000, "")], ""), Lot,
            Day, "A");

    private static IEnumerable<string> One(OpenBooks book, int i)
    {
        switch (i % 4)
        {
            case 0 or 1:
                return [
                    $"receipt {StockMovements.Receive(book, new Receipt { On = Day, By = "A", Material = "base", Amount = 100.25m, Price = 9.50m }).Id}"];
            case 2:
                var snapshot = book.ReadWhole();
                var last = snapshot.Receipts[^1];
                var correction = Correcting.Of(book, Shipped.Markets, BookLists.Receipt, last.Id,
                new Dictionary<string, string> { ["price"] = "9.51" },
                    "misread", Day, "A");
                return [$"receipt {correction.InsteadId}", $"correction {correction.Id}"];
            default:
                return Production.Weigh(book, Lot, "base", 150m, null, Day, "A")
                    .Select(w => string.Create(CultureInfo.InvariantCulture, $"weighing {w.Id}"));
        }
    }
}
