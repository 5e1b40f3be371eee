using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Microsoft.VisualBasic.FileIO;

namespace LabelForge.Formulas;

/// <summary>A whole formula that somebody published.</summary>
/// <param name="Id">What it is called here.</param>
/// <param name="Product">The kind of product.</param>
/// <param name="IsAside">Whether it was kept aside: nothing was learned from it.</param>
/// <param name="Source">Where it was read.</param>
/// <param name="Ingredients">Its ingredients and their mass percent, the most first.</param>
internal sealed record PublishedFormula(string Id, string Product, bool IsAside, string Source, ImmutableArray<(string Name, double Percent)> Ingredients)
{
    /// <summary>All formulas of the table.</summary>
    public static ImmutableArray<PublishedFormula> All { get; } = Read();

    /// <summary>Those that levels were learned from.</summary>
    public static ImmutableArray<PublishedFormula> ToLearnFrom => [.. All.Where(f => !f.IsAside)];

    /// <summary>Those kept aside.</summary>
    public static ImmutableArray<PublishedFormula> Aside => [.. All.Where(f => f.IsAside)];

    private static ImmutableArray<PublishedFormula> Read([CallerFilePath] string here = "")
    {
        using var table = new TextFieldParser(Path.Combine(Path.GetDirectoryName(here)!, "published-formulas.csv")) { Delimiters = [","] };
        table.ReadFields();
        var rows = new List<(string Formula, string Product, string Part, string Ingredient, double Percent, string Source)>();
        while (table.ReadFields() is [var formula, var product, var part, var ingredient, var percent, var source])
            rows.Add((formula, product, part, ingredient, double.Parse(percent, CultureInfo.InvariantCulture), source));
        return [.. rows.GroupBy(r => r.Formula).Select(g => new PublishedFormula(
            g.Key, g.First().Product, g.First().Part == "aside", g.First().Source, [.. g.Select(r => (r.Ingredient, r.Percent)).OrderByDescending(r => r.Percent)]))];
    }
}
