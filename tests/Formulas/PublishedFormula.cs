using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Microsoft.VisualBasic.FileIO;

namespace LabelForge.Formulas;

/// <summary>A whole formula that somebody published.</summary>
/// <param name="Id">What it is called here.</param>
/// <param name="Product">The kind of product.</param>
/// <param name="Part">What it is for: <c>learn</c>; <c>aside</c>, kept aside, though measured while weights were chosen; <c>unseen</c>,
/// gathered when the estimate stood and measured once before anything was changed.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Ingredients">Its ingredients and their mass percent, the most first.</param>
internal sealed record PublishedFormula(string Id, string Product, string Part, string Source,
    ImmutableArray<(string Name, double Percent)> Ingredients)
{
    /// <summary>All formulas of the table.</summary>
    public static ImmutableArray<PublishedFormula> All { get; } = Read();

    /// <summary>Those that levels were learned from.</summary>
    public static ImmutableArray<PublishedFormula> ToLearnFrom => Of("learn");

    /// <summary>Those kept aside.</summary>
    public static ImmutableArray<PublishedFormula> Aside => Of("aside");

    /// <summary>Those gathered when the estimate stood.</summary>
    public static ImmutableArray<PublishedFormula> Unseen => Of("unseen");

    private static ImmutableArray<PublishedFormula> Of(string part) => [.. All.Where(f => f.Part == part)];

    private static ImmutableArray<PublishedFormula> Read([CallerFilePath] string here = "")
    {
        using var table = new TextFieldParser(Path.Combine(Path.GetDirectoryName(here)!, "published-formulas.csv")) { Delimiters = [","] };
        table.ReadFields();
        var rows = new List<(string Formula, string Product, string Part, string Ingredient, double Percent, string Source)>();
        while (table.ReadFields() is [var formula, var product, var part, var ingredient, var percent, var source])
            rows.Add((formula, product, part, ingredient, double.Parse(percent, CultureInfo.InvariantCulture), source));
        return [.. rows.GroupBy(r => r.Formula).Select(g => new PublishedFormula(
            g.Key, g.First().Product, g.First().Part, g.First().Source,
            [.. g.Select(r => (r.Ingredient, r.Percent)).OrderByDescending(r => r.Percent)]))];
    }
}
