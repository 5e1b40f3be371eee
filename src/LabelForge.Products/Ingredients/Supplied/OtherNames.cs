using System.Collections.Frozen;
using LabelForge.Checks.Reading;

namespace LabelForge.Ingredients.Supplied;

/// <summary>
/// Names that suppliers write and no label carries: other languages, E numbers, formulas, abbreviations of the trade, colour
/// names in all spellings; and a name that a scanner misread, where one ingredient alone can have been meant.
/// </summary>
public sealed partial class OtherNames
{
    private const int ShortestMisread = 6;

    private static readonly string[] Heading = ["name", "kind", "ingredient", "source"];
    private static readonly Lazy<FrozenDictionary<string, string>> LazyTable =
        new(() => Read(DataTable.Embedded("ingredients/tables/other-names.csv").Single()));

    private readonly IngredientDictionary _dictionary;
    private readonly FrozenDictionary<string, string> _table;
    private readonly Lazy<Dictionary<string, Ingredient?>> _shapes;

    /// <summary>Uses the table that ships.</summary>
    public OtherNames(IngredientDictionary dictionary)
    {
        (_dictionary, _table) = (dictionary, LazyTable.Value);
        _shapes = new Lazy<Dictionary<string, Ingredient?>>(Shapes);
    }

    /// <summary>The ingredient that is meant, or null: by the table, by a colour's name or number
    /// in another spelling, or where both names of a pair mean it.</summary>
    public Ingredient? Find(string name) => Listed(name) ?? Colour(name) ?? Pair(name);

    /// <summary>The one ingredient whose name looks like this to a scanner, where letters and
    /// figures of like shape are taken for one another; else null.</summary>
    public Ingredient? Misread(string name) =>
        name.Length >= ShortestMisread && name.Any(char.IsLetter) ? _shapes.Value.GetValueOrDefault(Shape(name)) : null;

    private Ingredient? Listed(string name) => _table.TryGetValue(Folded(name), out var known) ? _dictionary.Find(known) : null;

    private Ingredient? Known(string name) => _dictionary.Find(name) ?? Listed(name) ?? Colour(name);

    private Ingredient? Colour(string name)
    {
        if (Certified().Match(name.Trim()) is { Success: true } m)
        {
            var plain =
                $"{CultureInfo.InvariantCulture.TextInfo.ToTitleCase(m.Groups["hue"].Value.ToLowerInvariant())} {m.Groups["number"].Value}";
            return _dictionary.Find(m.Groups["lake"].Success ? $"{plain} Lake" : plain);
        }
        return Numbered().Match(name.Trim()) is { Success: true } n
            ? _dictionary.Find($"{n.Groups["name"].Value} (CI {n.Groups["number"].Value})")
                ?? _dictionary.Find($"CI {n.Groups["number"].Value}")
            : null;
    }

    // Glycerin/Glycérine, Water - Aqua, Eau (Water): both sides mean the same thing.
    private Ingredient? Pair(string name)
    {
        var parts = Bracketed().Match(name) is { Success: true } m && !name.Contains('/', StringComparison.Ordinal)
            ? [m.Groups["one"].Value, m.Groups["two"].Value]
            : PairSigns().Split(name).Select(p => p.Trim()).Where(p => p.Length > 0).ToArray();
        if (parts.Length is < 2 or > 4)
            return null;
        var known = parts.Select(Known).ToArray();
        return known[0] is { } first && known.All(k => ReferenceEquals(k, first)) ? first : null;
    }

    private Dictionary<string, Ingredient?> Shapes()
    {
        var shapes = new Dictionary<string, Ingredient?>(StringComparer.Ordinal);
        foreach (var (name, ingredient) in _dictionary.Entries.SelectMany(e => e.Names.Select(n => (n, e))))
        {
            foreach (var shape in new[] { Shape(name), Shape(NameText.WithoutParentheses(name)) }.Distinct()
                .Where(s => s.Length >= ShortestMisread))
                shapes[shape] = shapes.TryGetValue(shape, out var other) && !ReferenceEquals(other, ingredient) ? null : ingredient;
        }
        return shapes;
    }

    /// <summary>The name in small letters without accents and with one space for any.</summary>
    internal static string Folded(string name)
    {
        // By a table of letters: without the system's tables, normalization leaves every accent where it is.
        return FoldedText.Of(NameText.Plain(name)).Replace('ß', 's');
    }

    // What a scanner takes for one another looks alike here: rn and m, vv and w, 1 l i and |, 0 and o, 5 and s, cl and d.
    private static string Shape(string name)
    {
        var shape = new StringBuilder(name.Length);
        foreach (var sign in Folded(name))
        {
            var alike = sign switch { '1' or 'l' or '|' or '!' => 'i', '0' => 'o', '5' => 's', '8' => 'b', _ => sign };
            if (char.IsLetterOrDigit(alike))
                shape.Append(alike);
        }
        return shape.Replace("rn", "m").Replace("vv", "w").Replace("ci", "d").ToString();
    }

    private static FrozenDictionary<string, string> Read(DataTable table) =>
        table.Rows(Heading).ToArray()
            .DistinctBy(r => Folded(r.Needed("name")))
            .ToFrozenDictionary(r => Folded(r.Needed("name")), r => r.Needed("source").Length > 0 ? r.Needed("ingredient") : "");

    [GeneratedRegex(@"^(?:ext\.?\s*)?(?:F\.?\s*D\.?\s*(?:&|and|\+)?\s*C\.?|D\.?\s*(?:&|and|\+)\s*C\.?|FDC|DC)\s*[-.]?\s*(?<hue>blue|red|yellow|green|orange|violet|black|brown)\s*[-,.]?\s*(?:no\.?|nr\.?|number|#|№)?\s*(?<number>[0-9]{1,2})(?<lake>\s*,?\s*(?:\(?(?:al|alum|aluminum|aluminium)\.?\)?\s*)?lake)?$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Certified();

    [GeneratedRegex(@"^(?<name>[\p{L}][\p{L} .&-]*?)\s*[,:-]?\s*C\.?\s?I\.?\s*(?:no\.?\s*)?(?<number>[0-9]{5})(?::[0-9])?$",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Numbered();

    [GeneratedRegex(@"^(?<one>[^()\[\]]+?)\s*[(\[](?<two>[^()\[\]]+)[)\]]$", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"\s*/\s*|\s+-\s+|\s*=\s*", RegexOptions.CultureInvariant, 20_000)]
    private static partial Regex PairSigns();
}
