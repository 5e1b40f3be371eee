using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Papers;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Documents;
using LabelForge.Print.Output;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Print.Jobs;

/// <summary>The batch sheet of a label's batch.</summary>
public static class BatchSheetJob
{
    /// <summary>Writes the batch sheet as a PDF, whole or not at all.</summary>
    /// <param name="path">The file.</param>
    /// <param name="job">The label of the batch.</param>
    /// <param name="info">The document's title and time.</param>
    /// <param name="takeFrom">For a material's id, the lots to take it from; null where the books propose none.</param>
    /// <param name="words">The language of the sheet; English where null.</param>
    public static void Write(string path, LabelJob job, LotCode lot, DocumentInfo info, Func<string, string?>? takeFrom = null,
        PaperWords? words = null) =>
        BatchSheetWriter.WritePdf(path, Content(job, lot, takeFrom, words), info);

    /// <summary>What stands on the batch sheet.</summary>
    public static BatchSheetContent Content(LabelJob job, LotCode lot, Func<string, string?>? takeFrom = null, PaperWords? words = null) =>
        InWords(job, lot, takeFrom, words ?? PaperWords.English);

    private static BatchSheetContent InWords(LabelJob job, LotCode lot, Func<string, string?>? takeFrom, PaperWords words) => new()
    {
        Words = words,
        Title = job.Content.ProductName,
        Subtitle = words["batch-subtitle", job.Content.BusinessName, job.Content.Identity,
            Invariant($"{lot.Made:yyyy-MM-dd}")],
        LotCode = lot.ToString(),
        LotBarcode = Barcode.Draw(BarcodeKind.Code128, lot.ToString()).OrRefuse(),
        Materials = [.. job.Batch.Lines
            .Select(l => new BatchSheetMaterial(l.Material.Name, OnScale(job.Workshop, job.Batch, l),
                Under(words, l.Written.IsMass ? null : AsWritten(l.Written), takeFrom?.Invoke(l.Material.Id))))],
        PiecesExpected = words.Counted("batch-expected", job.Batch.Recipe.Pieces, job.Content.NetQuantity, Weighs(words, job.Batch)),
        Cautions = BenchCautions.Of(job.Workshop, job.Batch, words),
        Notes = [.. Notes(words, job.Workshop, job.Batch), .. TooFine(words, job.Workshop, job.Batch)],
    };

    // The nearest mark of the workshop's scale; what it cannot weigh stays as it is, with a note of how to get it in.
    private static Mass OnScale(Workshop workshop, BatchFormula batch, BatchLine line) =>
        workshop.Business.Scale is { } step
            && ScaleReading.Of(batch, step)[batch.Lines.IndexOf(line)] is var reading
            && reading.IsWeighable(ScaleReading.ToleranceOf(batch)) ? reading.Shown : line.Mass;

    private static IEnumerable<string> TooFine(PaperWords words, Workshop workshop, BatchFormula batch) =>
        workshop.Business.Scale is { } step
            ? ScaleReading.Of(batch, step).Where(r => !r.IsWeighable(ScaleReading.ToleranceOf(batch)))
                .Select(r => words["too-fine", BenchMass.Grams(r.Line.Mass), r.Line.Material.Name,
                    r.WayRound(batch, ScaleReading.ToleranceOf(batch))])
            : [];

    private static string? Under(PaperWords words, string? written, string? lots) =>
        lots is null ? written : written is null ? words["take", lots] : $"{written}; {words["take", lots]}";

    private static string Weighs(PaperWords words, BatchFormula batch) => batch.Losses.IsEmpty
        ? words["weighs", BenchMass.Grams(batch.Total)]
        : words["weighs-finished", BenchMass.Grams(batch.Total), BenchMass.Grams(batch.Yield)];

    // A batch sheet is read with lye in the hand: what the sum rests on belongs beside the weights.
    private static ImmutableArray<string> Notes(PaperWords words, Workshop workshop, BatchFormula batch) =>
        SoapCharge.In(workshop, batch) is { } charge
            ? [SoapSentences.Superfat(Superfat.Of(charge), words),
                .. SoapCheck.Find(workshop, batch).Where(f => f.Severity == Severity.Must).Select(f => $"{f.Message} {f.Fix}")]
            : [];

    private static string AsWritten(Amount amount) => amount.Unit == AmountUnit.BySuperfat ? Amount.BySuperfatText : amount.Of is { } of
        ? Invariant($"{amount.Figure:0.####} % of {of}")
        : Invariant($"{amount.Figure:0.####} {UnitName(amount.Unit)}");

    private static string UnitName(AmountUnit unit) => unit switch
    {
        AmountUnit.Millilitre => "mL",
        AmountUnit.Litre => "L",
        AmountUnit.FluidOunce => "fl oz",
        AmountUnit.Gallon => "gal",
        AmountUnit.Quart => "qt",
        AmountUnit.Pint => "pt",
        AmountUnit.Teaspoon => "tsp",
        AmountUnit.Tablespoon => "tbsp",
        AmountUnit.Drop => "drops",
        _ => "",
    };
}
