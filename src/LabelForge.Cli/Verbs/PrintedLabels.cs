using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Jobs;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary>Writes down in the books what sheets of labels were made, so that their lot stays their product's.</summary>
internal static class PrintedLabels
{
    /// <summary>Writes it down, where the workshop keeps books. Sheets that cannot be written down are made all the same.</summary>
    /// <param name="made">The labels' ways, their lots, and how many of each.</param>
    /// <param name="on">The day.</param>
    public static void WriteDown(IReadOnlyList<(LabelJob Job, LotCode Lot, int Labels)> made, DateOnly on)
    {
        var folder = made[0].Job.Workshop.Folder;
        if (!RecordBook.Exists(folder))
            return;
        // One lot for several products is nobody's: it is told, and binds none.
        foreach (var several in made.GroupBy(m => m.Lot.ToString()).Where(g => g.Select(m => Name(m.Job)).Distinct().Count() > 1))
            Console.Error.WriteLine($"Note: the lot {several.Key} stands on labels of {string.Join(", ", several.Select(m => m.Job.Content.ProductName).Distinct())}. A lot is one product's: give each its own.");
        var own = made.GroupBy(m => m.Lot.ToString()).Where(g => g.Select(m => Name(m.Job)).Distinct().Count() == 1)
            .Select(g => new Printing
            {
                On = on,
                By = Environment.UserName,
                Lot = g.Key,
                Recipe = g.First().Job.Batch.Recipe.Id,
                Variant = g.First().Job.Batch.Recipe.VariantName,
                Product = g.First().Job.Content.ProductName,
                Labels = g.Sum(m => m.Labels),
            }).Where(p => p.Labels > 0).ToArray();
        try
        {
            if (own.Length > 0)
                PrintedLots.Print(RecordBook.Open(folder), own);
        }
        catch (InputException e)
        {
            Console.Error.WriteLine($"Note: that these labels were made is not in the books. {e.Message}");
        }
    }

    private static (string, string?) Name(LabelJob job) => (job.Batch.Recipe.Id, job.Batch.Recipe.VariantName);
}
