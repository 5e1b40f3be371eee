namespace LabelForge.Starts;

/// <summary>One scent of a range as it is written on a line: its name, the fragrance, the colour.</summary>
/// <param name="Name">The product's name.</param>
/// <param name="Fragrance">What the bottle of fragrance is called; null for none.</param>
/// <param name="Colour">The colour's words; null for none.</param>
/// <param name="ColourGood">The usual good that the colour's words mean; null where they mean none that is known.</param>
public sealed record ScentLine(string Name, string? Fragrance, string? Colour, UsualGood? ColourGood)
{
    /// <summary>The scents of a text, a line each. Empty lines count for nothing.</summary>
    public static ImmutableArray<ScentLine> Read(string text) =>
        [.. text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(One).OfType<ScentLine>()];

    /// <summary>What is wrong with the scents, as a sentence with what to write; null where nothing is.</summary>
    public static Problem? Wrong(ImmutableArray<ScentLine> scents)
    {
        if (scents.GroupBy(s => s.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { Key: var twice })
            return new Problem("start.scent-twice", ("name", twice));
        if (scents.FirstOrDefault(s => s is { Colour: not null, ColourGood: null }) is { } unknown)
            return new Problem("start.colour-unknown", ("colour", unknown.Colour),
                ("known",
                    string.Join(", ",
                        UsualGood.OfKind(Recipes.MaterialKind.Colourant).Select(g => g.Material.Name.Split(' ')[0].ToLowerInvariant()))));
        return null;
    }

    // A line with two parts has a fragrance, unless the second names a colour alone.
    private static ScentLine? One(string line)
    {
        var parts = line.Split([',', ';', '\t'], StringSplitOptions.TrimEntries).Select(p => p.Length == 0 ? null : p).ToArray();
        if (parts[0] is not { } name)
            return null;
        var (fragrance, colour) = (parts.ElementAtOrDefault(1), parts.ElementAtOrDefault(2));
        if (colour is null && fragrance is not null && parts.Length == 2 && fragrance.Contains("mica", StringComparison.OrdinalIgnoreCase))
            (fragrance, colour) = (null, fragrance);
        return new ScentLine(name, fragrance, colour, colour is null ? null : UsualGood.Colour(colour));
    }
}
