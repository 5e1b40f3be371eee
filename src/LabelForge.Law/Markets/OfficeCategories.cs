using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Checks;

namespace LabelForge.Markets;

/// <summary>A kind of product in the words of the office that is notified.</summary>
/// <param name="Name">Its category there, from the widest to the narrowest.</param>
/// <param name="Frames">The frame formulations that are offered for it; empty where the office has none.</param>
public sealed record OfficeCategory(string Name, ImmutableArray<FrameFormulation> Frames);

/// <summary>A frame formulation: bounds on what a product may hold, laid down once for many products.</summary>
/// <param name="Name">Its name with the office.</param>
/// <param name="AtMost">Of what a label names by itself, the most that it allows, in percent of the finished product by the name on
/// the label; empty where these are not held here.</param>
public sealed record FrameFormulation(string Name, ImmutableSortedDictionary<string, decimal> AtMost);

/// <summary>The categories under which a market's office is notified of products, by our kinds of product.</summary>
/// <param name="Citation">Whose list it is.</param>
/// <param name="Basis">What it rests on.</param>
/// <param name="Read">The text that was read.</param>
/// <param name="ByKind">The categories, by the ids of kinds of product; what is not in it a person has to look up.</param>
public sealed record OfficeCategories(string Citation, Basis Basis, string? Read, ImmutableSortedDictionary<string, OfficeCategory> ByKind)
{
    /// <summary>Between the widest category and the next.</summary>
    public const string Within = " > ";

    /// <summary>A market's own list; null where none is held.</summary>
    /// <exception cref="Measures.InputException">The list cannot be read.</exception>
    public static OfficeCategories? Of(Market market) => market.Records("categories").Select(Of).FirstOrDefault();

    private static OfficeCategories Of(YamlRecord record)
    {
        record.OnlyKeys("citation", "basis", "read", "kinds", "frames");
        var (basis, read) = LawFile.BasisOf(record);
        var frames = record.Has("frames")
            ? record.Records("frames", "what each frame allows").Select(Frame).ToDictionary(f => f.Name)
            : [];
        return new OfficeCategories(record.Text("citation", "whose list it is"), basis, read,
            record.Records("kinds", "kinds of product").ToImmutableSortedDictionary(k => k.Text("kind", "a kind of product"), k =>
            {
                k.OnlyKeys("kind", "category", "frames");
                return new OfficeCategory(string.Join(Within, k.Texts("category", "from the widest to the narrowest")),
                    k.Has("frames")
                        ? [.. k.Texts("frames", "their names").Select(n => frames.GetValueOrDefault(n)
                            ?? new FrameFormulation(n, ImmutableSortedDictionary<string, decimal>.Empty))]
                        : []);
            }, StringComparer.Ordinal));
    }

    // "Glycerin 20": the name on the label, and percent.
    private static FrameFormulation Frame(YamlRecord record)
    {
        record.OnlyKeys("frame", "at most");
        return new(record.Text("frame", "its name"), record.Texts("at most", "such as Glycerin 20").ToImmutableSortedDictionary(
            t => t[..t.LastIndexOf(' ')], t => decimal.Parse(t.AsSpan(t.LastIndexOf(' ') + 1), CultureInfo.InvariantCulture),
            StringComparer.OrdinalIgnoreCase));
    }
}
