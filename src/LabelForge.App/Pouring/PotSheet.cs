using LabelForge.Papers;
using LabelForge.Print.Documents;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;

namespace LabelForge.Pouring;

/// <summary>The bench sheet of a pot: cautions, the shared base, and for each product what goes
/// in and what to do, in the maker's order.</summary>
public static class PotSheet
{
    /// <summary>What stands on it.</summary>
    /// <param name="poured">The pot and its batches.</param>
    /// <param name="words">The language of the sheet; English where null.</param>
    public static PotSheetContent Content(Workshop workshop, Poured poured, PaperWords? words = null)
    {
        words ??= PaperWords.English;
        var shared = poured.Needs.Where(n => n.InPot).ToArray();
        var recipes = poured.Batches.Select(b => b.Wish.Product.Recipe).ToArray();
        var ofPot = BenchOrder.StepsOfPot([.. poured.Batches.Select(b => b.Wish.Formula)], [.. shared.Select(n => n.Material)]);
        string? Note(Material material) =>
        recipes.Select(r => r.Steps.FirstOrDefault(s => s.Takes(material))?.Text ?? "").Where(t => t.Length > 0).Distinct()
            .ToArray() is { Length: > 0 } notes ? string.Join(" / ", notes) : null;
        return new PotSheetContent
        {
            Words = words,
            Pot = poured.Pot ?? poured.Batches[0].Batch.Lot,
            Subtitle = words["pot-subtitle", workshop.Business.Name,
                Invariant($"{poured.Batches[0].Batch.On:yyyy-MM-dd}"), poured.Batches.Sum(b => b.Batch.PiecesPlanned),
                poured.Batches.Length],
            Cautions = [.. poured.Batches.SelectMany(b => BenchCautions.Of(workshop, b.Wish.Formula, words)).Distinct()
                .OrderBy(c => c == words["caution-sheets"])],
            Shared =
            [
                .. shared.Select(n => new PotSheetRow(n.Material.Name, Mass.FromGrams(n.Grams), Under(words, Note(n.Material), n.From),
                    true)),
                .. recipes[0].Steps.Take(ofPot).Where(s => s.Adds is null).Select(s => new PotSheetRow(s.Text, null, null, false)),
            ],
            Blocks = [.. poured.Batches
                .Select(b => Block(b.Wish, b.Batch.Lot, b.Batch.PiecesPlanned, [.. shared.Select(n => n.Material.Id)], ofPot, poured.Needs,
                    words))],
        };
    }

    /// <summary>Writes the sheet as a PDF, of the day that the pot was begun.</summary>
    /// <param name="stream">Where.</param>
    /// <param name="poured">The pot and its batches.</param>
    /// <param name="words">The language of the sheet; English where null.</param>
    public static void WritePdf(Stream stream, Workshop workshop, Poured poured, PaperWords? words = null)
    {
        var content = Content(workshop, poured, words);
        PotSheetWriter.WritePdf(stream, content,
            new DocumentInfo(content.Words["pot", content.Pot],
                poured.Batches[0].Batch.On));
    }

    private static PotSheetBlock Block(PourWish wish, string lot, int pieces, ImmutableArray<string> shared, int ofPot,
        ImmutableArray<PotNeed> needs, PaperWords words)
    {
        var recipe = wish.Product.Recipe;
        var rows = ImmutableArray.CreateBuilder<PotSheetRow>();
        var poured = wish.Formula.Lines.Where(l => shared.Contains(l.Material.Id)).Sum(l => l.Mass.Grams);
        if (poured > 0)
            rows.Add(new PotSheetRow(words["pot-jug"], Mass.FromGrams(poured), null, false));
        PotSheetRow Weigh(BatchLine line, string? note) =>
        new(line.Material.Name, line.Mass, Under(words, note, needs.First(n => n.Material.Id == line.Material.Id).From), true);
        rows.AddRange(BenchOrder.Of(recipe, wish.Formula.Lines.Where(l => !shared.Contains(l.Material.Id)), l => l.Material)
            .Where(o => o.Line is not null || !recipe.Steps.Take(ofPot).Contains(o.Step))
            .Select(o => o.Line is { } line ? Weigh(line, o.Step?.Text) : new PotSheetRow(o.Step!.Text, null, null, false)));
        rows.Add(new PotSheetRow(wish.Moulds is { } moulds ? words["fill-moulds", moulds] : words.Counted("fill", pieces), null, null,
            false));
        return new PotSheetBlock(recipe.Name, lot, words.Counted("block-expected", pieces, BenchMass.Grams(wish.Formula.Total)),
            rows.ToImmutable());
    }

    private static string? Under(PaperWords words, string? note, ImmutableArray<(string Bottle, decimal Grams)> from)
    {
        var take = from switch
        {
            [] => null,
            [var one] => words["take", one.Bottle],
            _ => words["take", string.Join(", ", from.Select(f => Invariant($"{f.Bottle} {f.Grams:0.#} g")))],
        };
        return string.Join("; ", new[] { note, take }.Where(t => !string.IsNullOrEmpty(t))) is { Length: > 0 } under ? under : null;
    }
}
