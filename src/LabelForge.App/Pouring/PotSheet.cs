using System.Collections.Immutable;
using LabelForge.Measures;
using LabelForge.Print.Documents;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Recipes;

namespace LabelForge.Pouring;

/// <summary>The bench sheet of a pot: cautions, the shared base, and for each product what goes in and what to do, in the maker's order.</summary>
public static class PotSheet
{
    /// <summary>What stands on it.</summary>
    /// <param name="workshop">The workshop.</param>
    /// <param name="poured">The pot and its batches.</param>
    public static PotSheetContent Content(Workshop workshop, Poured poured)
    {
        var shared = poured.Needs.Where(n => n.InPot).Select(n => n.Material.Id).ToHashSet();
        return new PotSheetContent
        {
            Pot = poured.Pot ?? poured.Batches[0].Batch.Lot,
            Subtitle = FormattableString.Invariant($"{workshop.Business.Name} · {poured.Batches[0].Batch.On:yyyy-MM-dd} · {poured.Batches.Sum(b => b.Batch.PiecesPlanned)} pieces of {poured.Batches.Length} products"),
            Cautions = [.. poured.Batches.SelectMany(b => BenchCautions.Of(workshop, b.Wish.Formula)).Distinct().OrderBy(IsLast)],
            Shared = [.. poured.Needs.Where(n => n.InPot).Select(n => new BatchSheetMaterial(n.Material.Name, Mass.FromGrams(n.Grams), Take(n.From)))],
            Blocks = [.. poured.Batches.Select(b => Block(b.Wish, b.Batch.Lot, b.Batch.PiecesPlanned, shared, poured.Needs))],
        };
    }

    /// <summary>Writes the sheet as a PDF, of the day that the pot was begun.</summary>
    /// <param name="stream">Where.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="poured">The pot and its batches.</param>
    public static void WritePdf(Stream stream, Workshop workshop, Poured poured)
    {
        var content = Content(workshop, poured);
        PotSheetWriter.WritePdf(stream, content, new DocumentInfo($"Pot {content.Pot}", new DateTimeOffset(poured.Batches[0].Batch.On.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero)));
    }

    // The sentence about safety data sheets closes the cautions, whichever product brought it.
    private static bool IsLast(string caution) => caution.StartsWith("Read each", StringComparison.Ordinal);

    private static PotSheetBlock Block(PourWish wish, string lot, int pieces, HashSet<string> shared, ImmutableArray<PotNeed> needs)
    {
        var recipe = wish.Product.Recipe;
        var rows = ImmutableArray.CreateBuilder<PotSheetRow>();
        var poured = wish.Formula.Lines.Where(l => shared.Contains(l.Material.Id)).Sum(l => l.Mass.Grams);
        if (poured > 0)
            rows.Add(new PotSheetRow("From the pot into the jug", Mass.FromGrams(poured), null, false));
        PotSheetRow Weigh(BatchLine line, string? note) => new(line.Material.Name, line.Mass,
            string.Join("; ", new[] { note, Take(needs.First(n => n.Material.Id == line.Material.Id).From) }.Where(t => !string.IsNullOrEmpty(t))), true);
        rows.AddRange(BenchOrder.Of(recipe, wish.Formula.Lines.Where(l => !shared.Contains(l.Material.Id)), l => l.Material)
            .Select(o => o.Line is { } line ? Weigh(line, o.Step?.Text) : new PotSheetRow(o.Step!.Text, null, null, false)));
        rows.Add(new PotSheetRow(wish.Moulds is { } moulds ? $"Fill the moulds: {moulds}" : $"Fill {pieces} {(pieces == 1 ? "mould" : "moulds")}", null, null, false));
        return new PotSheetBlock(recipe.Name, lot, FormattableString.Invariant($"{pieces} pieces; the batch weighs {BenchMass.Grams(wish.Formula.Total)} g"), rows.ToImmutable(), []);
    }

    private static string? Take(ImmutableArray<(string Bottle, decimal Grams)> from) => from switch
    {
        [] => null,
        [var one] => $"take {one.Bottle}",
        _ => $"take {string.Join(", ", from.Select(f => FormattableString.Invariant($"{f.Bottle} {f.Grams:0.#} g")))}",
    };
}
