using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>What the label of a lot must say by what was really weighed, beside what the recipe says.</summary>
/// <param name="Weighed">The declaration of what was weighed; a material not yet weighed counts as planned.</param>
/// <param name="Planned">The declaration of the batch as it was begun, by today's material files.</param>
/// <param name="Changes">What differs, one sentence each; empty where the label holds.</param>
public sealed record WeighedLabel(Declaration Weighed, Declaration Planned, IReadOnlyList<string> Changes)
{
    /// <summary>Compares the two declarations.</summary>
    public static WeighedLabel Of(Workshop workshop, Recipe recipe, Ledger ledger, Batch batch, Market market, DateOnly on)
    {
        var kind = ProductKindOf.Recipe(recipe);
        var lines = Bench.Compare(ledger, batch);
        var known = lines.Where(l => workshop.Materials.ContainsKey(l.Line.Material)).ToArray();
        if (known.Length < lines.Count)
            throw new InputException(new Problem(recipe.File, 0, $"Lot {batch.Lot} was made with {lines.First(l => !known.Contains(l)).Line.Material}, which the workshop no longer has.", "Put its file back into materials/; the books hold its text."));
        Declaration Declare(Func<(FrozenLine Line, decimal Weighed, bool Off), decimal> grams) =>
            DeclarationBuilder.Build(workshop, BatchSize.Of(workshop, recipe, known.Select(l => (l.Line.Material, grams(l))), batch.PiecesPlanned), kind, market, on);
        var planned = Declare(l => l.Line.Grams);
        var weighed = Declare(l => l.Weighed > 0 ? l.Weighed : l.Line.Grams);
        return new WeighedLabel(weighed, planned, Differences(planned, weighed));
    }

    private static List<string> Differences(Declaration planned, Declaration weighed)
    {
        var (before, after) = (planned.Ingredients.Select(i => i.Name).ToArray(), weighed.Ingredients.Select(i => i.Name).ToArray());
        var changes = new List<string>();
        changes.AddRange(after.Except(before).Select(n => $"{n} must now be declared: more of it was weighed in than planned."));
        changes.AddRange(before.Except(after).Select(n => $"{n} need no longer be declared."));
        if (changes.Count == 0 && !before.SequenceEqual(after))
        {
            var first = Enumerable.Range(0, before.Length).First(i => before[i] != after[i]);
            changes.Add($"The order changed: {after[first]} now stands before {before[first]}.");
        }
        return changes;
    }
}
