using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Print.Documents;
using LabelForge.Print.Jobs;
using LabelForge.Records.Books;

namespace LabelForge.ProductPapers;

/// <summary>What is certified of a lot: made, weighed, checked.</summary>
internal static class LotCertificate
{
    /// <summary>The parts.</summary>
    /// <param name="of">The product as the lot was weighed.</param>
    /// <param name="batch">The record.</param>
    public static ImmutableArray<PaperSection> Of(PaperCase of, BatchRecord batch) =>
        [Made(of, batch), Weighed(batch), Checked(of, batch, RecipeCheck.Run(of.Job.Facts))];

    private static PaperSection Made(PaperCase of, BatchRecord batch) => new("made", "Made", null)
    {
        Facts =
        [
            PaperFact.Of("lot", "Lot", batch.Lot, "the books"),
            PaperFact.Of("product", "Product", batch.Product, "the books", of.Product.Name),
            PaperFact.Of("maker", "Made by", BusinessParts.Address(of.Business), "workshop.yaml"),
            PaperFact.Of("begun", "Begun", $"{batch.On.ToIso()}, by {batch.By}", "the books", batch.On),
            batch.Closing is { } closing
                ? PaperFact.Of("closed", "Finished",
                    Invariant($"{closing.On.ToIso()}, by {closing.By}: {closing.Made} pieces made, {closing.Rejected} rejected{(closing.YieldGrams is { } grams ? $"; all weigh {grams:0.##} g" : "")}"), "the books", closing.On)
                : PaperFact.Lacking("closed", "Finished", $"The lot is still at the bench: count what came out and close it."),
            PaperFact.Of("net", "Net content of a piece", of.Job.Content.NetQuantity),
            PaperFact.Of("ingredients", "Ingredients", of.Declaration.Statement,
                of.Product.Weighed is { Changes.IsEmpty: true } ? "by what was weighed; as on the label" : "by what was weighed",
                of.Declaration.Names),
            .. of.Product.Weighed?.Changes.Select((c, i) =>
                PaperFact.Of(Invariant($"change-{i + 1}"), "Otherwise than planned", c, "the books")) ?? [],
        ],
    };

    private static PaperSection Weighed(BatchRecord batch) => new("weighed", "Weighed", null)
    {
        Table = MakingParts.Weighed(batch),
        Facts = batch.Lines.Any(l => l.Weighed == 0)
            ? [PaperFact.Lacking("weighings", "Weighings",
                $"Nothing is written for {string.Join(", ", batch.Lines.Where(l => l.Weighed == 0).Select(l => l.Name))}.")]
            : [],
        Notes = [batch.Lines.Any(l => l.IsOff)
            ? "OFF: further from the recipe than its tolerance."
            : "Every amount is within the recipe's tolerance.",
            .. batch.Deviations.Select(d => $"Deviation, {d.On.ToIso()}, {d.By}: {d.What}"),
            .. batch.Deviations.Count == 0 ? ["No deviation is written."] : (string[])[]],
    };

    private static PaperSection Checked(PaperCase of, BatchRecord batch, CheckReport report) => new("checked", "Checked against", null)
    {
        Facts =
        [
            PaperFact.Of("rules", "Rules",
                Invariant($"the rules known for {of.Market.Name} on {of.On.ToIso()}: {report.Findings.Count(f => f.Severity == Severity.Must)} open that a rule requires, {report.Findings.Count(f => f.Severity == Severity.Should)} that should be looked at"), $"the checks, market {of.Market.Id}, by what was weighed into {batch.Lot}", report.Findings.Count(f => f.Severity == Severity.Must)),
            PaperFact.Lacking("signature", "Released by", "Name, day and signature of the person who releases the lot."),
        ],
        Table = report.Findings.All(f => f.Severity == Severity.Note)
            ? null
            : new PaperTable([new("rule", "Rule", 2), new("severity", "weight", 0.8), new("message", "what", 4),
                new("source", "source", 2)],
            [
                .. report.Findings.Where(f => f.Severity != Severity.Note).Select(f => (ImmutableArray<PaperValue>)[
                    new(f.Rule), new(f.Severity.ToString().ToLowerInvariant()), new(f.Message), new(f.Source)])]),
        Blanks = 2,
    };
}
