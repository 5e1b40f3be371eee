using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Reads a design's lengths, which may be sums of a package's measures: <c>2*height + 2*depth + 10 mm</c>.</summary>
internal static class LengthFormula
{
    private static readonly ImmutableDictionary<string, Length> NoSides = ImmutableDictionary<string, Length>.Empty;

    public static Length Required(MapNode map, string key, ImmutableDictionary<string, Length>? sides) =>
        Read(map.Required(key, "2 in"), sides ?? NoSides);

    public static Length Or(MapNode map, string key, Length otherwise, ImmutableDictionary<string, Length>? sides) =>
        map.OptionalText(key) is { } node ? Read(node, sides ?? NoSides) : otherwise;

    /// <summary>Reads one value.</summary>
    public static Length Of(TextNode node, ImmutableDictionary<string, Length> sides) => Read(node, sides);

    private static Length Read(TextNode node, ImmutableDictionary<string, Length> sides)
    {
        decimal sum = 0;
        var sign = 1m;
        var from = 0;
        for (var i = 0; i <= node.Text.Length; i++)
        {
            if (i < node.Text.Length && node.Text[i] is not ('+' or '-'))
                continue;
            sum += sign * Term(node.Text[from..i].Trim(), node, sides);
            sign = i < node.Text.Length && node.Text[i] == '-' ? -1 : 1;
            from = i + 1;
        }
        return sum is >= 0 and <= 10_000
            ? Length.FromMillimetres(sum)
            : throw node.Refuse("length.out-of-range", ("text", node.Text), ("sum", $"{sum:0.##}"));
    }

    private static decimal Term(string term, TextNode node, ImmutableDictionary<string, Length> sides)
    {
        var times = 1m;
        if (term.IndexOf('*', StringComparison.Ordinal) is > 0 and var star)
        {
            if (!decimal.TryParse(term[..star].Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out times)
                || times > 1000)
                throw node.Refuse("length.not-a-number", ("term", term[..star].Trim()));
            term = term[(star + 1)..].Trim();
        }
        if (sides.TryGetValue(term, out var side))
            return times * side.Millimetres;
        var read = LengthText.Parse(term);
        return read.IsValue ? times * read.Value.Millimetres : throw (sides.IsEmpty ? node.Refuse(read.Problem)
            : node.Refuse("length.no-side", ("inner", read.Problem), ("sides", string.Join(", ", sides.Keys.Order()))));
    }
}
