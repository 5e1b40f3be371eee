using LabelForge.Composition;
using LabelForge.Measures;

namespace LabelForge.Tests.Composition;

/// <summary>Short ways to write suppliers' lists in tests.</summary>
internal static class Lists
{
    /// <summary>A material; constituents as <c>Name</c> or <c>Name: 10-30 %</c>, a colourant with <c>*</c> in front.</summary>
    public static MaterialPart Part(string material, decimal share, ListedOrder listed, params string[] constituents) =>
        new(material, share, listed, [.. constituents.Select(Read)]);

    private static Constituent Read(string text)
    {
        var halves = text.TrimStart('*').Split(": ");
        return new Constituent(halves[0], halves.Length > 1 ? ShareText.Parse(halves[1]).Value : ShareRange.Unknown, text.StartsWith('*'));
    }

    public static IngredientShare Of(this CompositionProof proof, string name) => proof.Ingredients.Single(i => i.Name == name);

    public static string[] Names(this CompositionProof proof) => [.. proof.Ingredients.Select(i => i.Name)];

    public static PairOrder Pair(this CompositionProof proof, string first, string second) =>
        proof.Pair(Array.IndexOf(proof.Names(), first), Array.IndexOf(proof.Names(), second));
}
