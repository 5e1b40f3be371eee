using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;

namespace LabelForge.UseCases;

/// <summary>Labels of one product that are to be printed with a lot.</summary>
/// <param name="Job">The label, of the product as its lot was weighed where the books know the lot.</param>
/// <param name="Lot">The lot on it.</param>
/// <param name="Count">How many; zero where the paper is no label and nothing of it goes into the books.</param>
public sealed record LabelsToPrint(LabelJob Job, LotCode Lot, int Count)
{
    /// <summary>The label stock; null where it is not written down.</summary>
    public string? Stock { get; init; }

    /// <summary>Where on the sheets they stand; null where it is not written down.</summary>
    public string? Places { get; init; }

    /// <summary>What the label looks like, as <see cref="LabelDrawing"/> says it; null where it is not written down.</summary>
    public string? Drawing { get; init; }
}

/// <summary>What a person asks to be printed.</summary>
/// <param name="Labels">The labels, on one paper.</param>
/// <param name="Despite">Ids of the rules that the person knows to be broken and prints over.</param>
/// <param name="On">The day.</param>
/// <param name="By">Who prints.</param>
public sealed record PrintCall(ImmutableArray<LabelsToPrint> Labels, ImmutableArray<string> Despite, DateOnly On, string By)
{
    /// <summary>The number of the print run; null where none is counted.</summary>
    public int? Run { get; init; }

    /// <summary>What the paper is called where it carries no labels for stock, as <c>Batch sheet</c>.</summary>
    public string Paper { get; init; } = "Label";
}

/// <summary>What became of a print.</summary>
public sealed record PrintOutcome
{
    /// <summary>Each <c>must</c> that stopped it; where there is one, nothing was written.</summary>
    public ImmutableArray<Finding> Open { get; init; } = [];

    /// <summary>What stands in the books now: one entry for each lot.</summary>
    public ImmutableArray<Printing> Recorded { get; init; } = [];

    /// <summary>Lots that stand on labels of several products, with those products' names. A lot
    /// is one product's: these are bound to none.</summary>
    public ImmutableArray<(string Lot, ImmutableArray<string> Products)> Shared { get; init; } = [];

    /// <summary>Why the labels are not in the books, though they were written; null where they are, or where no books are kept.</summary>
    public Problem? NotRecorded { get; init; }

    /// <summary>Whether an open rule stopped it.</summary>
    public bool IsStopped => !Open.IsEmpty;
}

/// <summary>Prints labels: judges what was laid out, stops where a rule is broken, writes the
/// paper, and writes in the books whose lot it is now.</summary>
public static class PrintLabels
{
    /// <summary>What stops a print: each open <c>must</c> that the person does not print over.</summary>
    /// <exception cref="InputException">A product cannot be judged.</exception>
    public static ImmutableArray<Finding> Open(IEnumerable<LabelJob> jobs, IReadOnlyCollection<string> despite) =>
        [.. jobs.SelectMany(j => LotFindings.BeforePrinting(j)).Where(f => !despite.Contains(f.Rule))];

    /// <summary>Prints.</summary>
    /// <param name="call">What is asked for.</param>
    /// <param name="book">The books; null where none are kept, or where the paper binds no lot.</param>
    /// <param name="write">Writes the paper, whole or not at all. Not called where a rule stops the print.</param>
    /// <exception cref="InputException">A product cannot be judged, or the paper cannot be written.</exception>
    public static PrintOutcome Run(PrintCall call, OpenBooks? book, Action write)
    {
        if (Open(call.Labels.Select(l => l.Job), call.Despite) is { IsEmpty: false } open)
            return new PrintOutcome { Open = open };
        write();
        // A set is of several products, each of which has its own lot: its label binds none.
        var lots = call.Labels.Where(l => !l.Job.IsSet).GroupBy(l => l.Lot.ToString())
            .ToLookup(g => g.Select(l => Name(l.Job)).Distinct().Count() == 1);
        var outcome = new PrintOutcome
        {
            Shared = [.. lots[false].Select(g => (g.Key, g.Select(l => l.Job.Content.ProductName).Distinct().ToImmutableArray()))],
        };
        Printing[] own = [.. lots[true].Select(g => Entry(call, g.Key, [.. g])).Where(p => p.Labels > 0)];
        if (book is null)
            return outcome;
        try
        {
            NoteBroken(call, book);
            return own.Length == 0 ? outcome : outcome with { Recorded = [.. PrintedLots.Print(book, own)] };
        }
        catch (InputException e)
        {
            return outcome with { NotRecorded = e.Problem };
        }
    }

    // A paper that puts no labels into stock, printed over a broken rule: its batch says so; before there is one, a label drawn once.
    private static void NoteBroken(PrintCall call, OpenBooks book)
    {
        foreach (var lot in call.Labels.Where(l => l.Count == 0).GroupBy(l => l.Lot.ToString()))
        {
            if (Broken(lot.Select(l => l.Job), call.Despite) is not { IsEmpty: false } broken)
                continue;
            if (book.Ask(books => books.FindBatch(lot.Key)) is not null)
                Production.Note(book, lot.Key, $"{call.Paper} printed despite {string.Join(", ", broken)}.", call.On, call.By);
            else
                PrintedLots.Print(book, [Entry(call, lot.Key, [.. lot.Take(1).Select(l => l with { Count = 1 })])]);
        }
    }

    private static Printing Entry(PrintCall call, string lot, ImmutableArray<LabelsToPrint> labels) => new()
    {
        On = call.On,
        By = call.By,
        Lot = lot,
        Recipe = labels[0].Job.Batch.Recipe.Id,
        Variant = labels[0].Job.Batch.Recipe.VariantName,
        Product = labels[0].Job.Content.ProductName,
        Labels = labels.Sum(l => l.Count),
        Run = call.Run,
        Stock = labels[0].Stock,
        Places = labels[0].Places,
        Drawing = labels[0].Drawing,
        Note = Broken(labels, call.Despite) is { Length: > 0 } broken ? $"Printed despite {string.Join(", ", broken)}." : null,
    };

    private static ImmutableArray<string> Broken(ImmutableArray<LabelsToPrint> labels, ImmutableArray<string> despite) =>
        Broken(labels.Select(l => l.Job), despite);

    /// <summary>The rules that a print breaks and that the person named: of those named, only what is really broken.</summary>
    public static ImmutableArray<string> Broken(IEnumerable<LabelJob> jobs, ImmutableArray<string> despite) => despite.IsEmpty ? []
        : [.. jobs.SelectMany(j => LotFindings.BeforePrinting(j)).Select(f => f.Rule).Distinct().Where(r => despite.Contains(r))];

    /// <summary>What the margin of its sheets says of a print over broken rules; null where none is broken.</summary>
    public static string? Note(IEnumerable<LabelJob> jobs, ImmutableArray<string> despite) =>
        Broken(jobs, despite) is { IsEmpty: false } broken ? MarginNote.Despite(broken) : null;

    private static (string, string?) Name(LabelJob job) => (job.Batch.Recipe.Id, job.Batch.Recipe.VariantName);
}
