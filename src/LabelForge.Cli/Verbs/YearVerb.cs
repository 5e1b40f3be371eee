using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Print.Output;
using LabelForge.Records.Spreadsheets;
using LabelForge.Years;

namespace LabelForge.Cli.Verbs;

/// <summary><c>year</c>: totals for taxes.</summary>
internal static class YearVerb
{
    public static Command Build()
    {
        var verb = new Verb("year",
            "A year's totals by month, product and market: sold, sales tax, cost of goods first in first out, waste, stock");
        var year = verb.Argument<int?>("YEAR", "The year (default: this one)", ArgumentArity.ZeroOrOne);
        var output = OutputOption.Optional("The table to write, a CSV", FileKind.Csv).AddTo(verb);
        var options = new BookOptions().AddReadingTo(verb, dated: true);
        return verb.OpensBooks(r =>
        {
            var path = output.PathOrNone(r);
            var workshop = options.Workshop(r);
            var book = BookOptions.Book(workshop).Ask(books => YearBook.Of(books, r.GetValue(year) ?? options.On(r).Year));
            if (path is not null)
            {
                var (heading, rows) = book.Table();
                AtomicFile.Write(path, s => s.Write(SafeCsv.File(heading, rows)));
            }
            foreach (var material in book.WithoutAPrice)
                Console.Error
                    .WriteLine(
                        $"Note: {material} was weighed in and never received, so that its cost is in no figure here. Write what came in: "
                            + $"labelforge receive {material}");
            if (options.Json(r))
                Json(book);
            else
                Tell(book, workshop.Business.Currency);
            return Exit.Done;
        });
    }

    private static void Json(YearBook book) => JsonOut.Write(new JsonObject
    {
        ["year"] = book.Year,
        ["bought"] = book.Bought,
        ["atStart"] = YearBook.Cents(book.AtStart),
        ["atEnd"] = YearBook.Cents(book.AtEnd),
        ["lines"] = book.Lines
            .ToJson(l => new JsonObject
            {
                ["by"] = l.By,
                ["name"] = l.Name,
                ["sold"] = l.Sold,
                ["given"] = l.Given,
                ["returned"] = l.Returned,
                ["paid"] = l.Paid,
                ["tax"] = l.Tax,
                ["net"] = l.Net,
                ["cost"] = YearBook.Cents(l.Cost),
                ["margin"] = YearBook.Cents(l.Margin)
            }),
        ["waste"] = book.Waste.ToJson(w => new JsonObject { ["what"] = w.What, ["on"] = w.On.ToJson(), ["cost"] = YearBook.Cents(w.Cost) }),
        ["withoutAPrice"] = book.WithoutAPrice.ToJson(),
    });

    private static void Tell(YearBook book, string currency)
    {
        foreach (var by in book.Lines.GroupBy(l => l.By))
        {
            Console.WriteLine($"By {by.Key}");
            foreach (var line in by)
                Console.WriteLine(Invariant($"  {line.Name,-26} {line.Sold,5} sold {line.Given,4} given {line.Returned,3} back {line.Paid,10:0.00}  tax {line.Tax,8:0.00}  cost {line.Cost,9:0.00}  margin {line.Margin,9:0.00}"));
        }
        foreach (var waste in book.Waste)
            Console.WriteLine(Invariant($"  lost {waste.On:yyyy-MM-dd} {waste.Cost,8:0.00}  {waste.What}"));
        Console.WriteLine(Invariant($"In {currency}: {book.AtStart:0.00} in the house at the start, {book.Bought:0.00} bought, {book.Whole.Cost:0.00} sold and given, {book.Waste.Sum(w => w.Cost):0.00} lost, {book.AtEnd:0.00} at the end. Materials by what was paid for the very bottles; no work, no overhead."));
    }
}
