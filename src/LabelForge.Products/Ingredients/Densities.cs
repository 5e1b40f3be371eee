using System.Collections.Frozen;

namespace LabelForge.Ingredients;

/// <summary>A published density, for a maker to take or leave: nothing is reckoned with it until
/// it stands in the material's file.</summary>
/// <param name="GramsPerMillilitre">The figure to propose.</param>
/// <param name="Least">The least that was read.</param>
/// <param name="Most">The most that was read.</param>
/// <param name="As">How it lay: <c>spooned</c>, <c>liquid</c>, or <c>bulk</c> as in a bin, which is heavier than on a spoon.</param>
/// <param name="Source">Where it was read.</param>
public sealed record PublishedDensity(decimal GramsPerMillilitre, decimal Least, decimal Most, string As, string Source);

/// <summary>Densities of powders as spooned and of liquids, by ingredient.</summary>
public static class Densities
{
    private static readonly string[] Heading = ["ingredient", "as", "density", "least", "most", "basis", "source"];

    private static readonly Lazy<FrozenDictionary<string, ImmutableArray<PublishedDensity>>> Held =
        new(() => Read(DataTable.Embedded("ingredients/tables/densities.csv").Single()));

    /// <summary>The published densities of an ingredient, as spooned first; empty where none is held, as for mica and clay.</summary>
    /// <param name="name">Any name the dictionary knows it by.</param>
    public static ImmutableArray<PublishedDensity> Of(string name, IngredientDictionary dictionary) =>
        dictionary.Find(name) is { } known && Held.Value.TryGetValue(known.Us, out var found) ? found : [];

    /// <summary>That nothing says how heavy a material is, and what to write: the published figure for the one
    /// thing that it is, else how to measure it.</summary>
    /// <param name="file">The material's file.</param>
    /// <param name="contains">The names of its list.</param>
    /// <param name="dictionary">The names known.</param>
    public static Problem Missing(string file, IEnumerable<string> contains, IngredientDictionary dictionary)
    {
        if (contains.ToArray() is not [var only] || Of(only, dictionary) is not [var published, ..])
            return new Problem("material.density-to-measure", ("file", file));
        var figure = published.GramsPerMillilitre.ToString("0.###", CultureInfo.InvariantCulture);
        return published.As switch
        {
            "liquid" => new Problem("material.density-as-a-liquid", ("file", file), ("figure", figure),
                ("source", published.Source)),
            "bulk" => new Problem("material.density-in-bulk", ("file", file), ("figure", figure),
                ("source", published.Source)),
            _ => new Problem("material.density-as-spooned", ("file", file), ("figure", figure),
                ("source", published.Source)),
        };
    }

    private static FrozenDictionary<string, ImmutableArray<PublishedDensity>> Read(DataTable table) =>
        table.Rows(Heading).ToArray()
            .GroupBy(r => r.Needed("ingredient"), StringComparer.Ordinal)
            .ToFrozenDictionary(g => g.Key, g => g
                .Select(r => new PublishedDensity(Figure(r, "density"), Figure(r, "least"), Figure(r, "most"), r.Needed("as"),
                    r.Needed("source")))
                .OrderBy(d => d.As switch { "spooned" => 0, "liquid" => 1, _ => 2 }).ToImmutableArray());

    private static decimal Figure(DataRow row, string column) =>
        PlainFigure.Read(row[column]) is > 0 and < 25 and var figure
            ? figure
            : throw row.Refuse("substances.no-density", ("row", row[column]));
}
