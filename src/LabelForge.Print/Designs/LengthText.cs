using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Reads lengths in design and stock files: <c>2.625 in</c>, <c>10/3 in</c>, <c>63.5 mm</c>, <c>0 mm</c>.</summary>
public static class LengthText
{
    /// <summary>Reads a length.</summary>
    public static Parsed<Length> Parse(string text)
    {
        var trimmed = text.Trim();
        var unit = trimmed.EndsWith("mm", StringComparison.Ordinal)
            ? 1m
            : trimmed.EndsWith("in", StringComparison.Ordinal)
            ? Length.MillimetresPerInch
            : 0m;
        if (unit == 0m)
            return Parsed<Length>.Refused("length.no-unit", ("trimmed", trimmed));
        var parts = trimmed[..^2].Split('/')
            .Select(p => PlainFigure.Read(p.Trim()) ?? -1m)
            .ToArray();
        return parts switch
        {
            [>= 0m and <= 10_000m] => Parsed<Length>.Of(Length.FromMillimetres(parts[0] * unit)),
            [>= 0m and <= 10_000m, > 0m] => Parsed<Length>.Of(Length.FromMillimetres(parts[0] * unit / parts[1])),
            _ => Parsed<Length>.Refused("length.not-a-length", ("trimmed", trimmed)),
        };
    }

    /// <summary>The length of a key that must be there.</summary>
    /// <exception cref="InputException">It is not there, or no length.</exception>
    public static Length RequiredLength(this MapNode map, string key) => Read(map.Required(key, "2 in"));

    /// <summary>The length of a key, or another where it is not there.</summary>
    public static Length LengthOr(this MapNode map, string key, Length otherwise) =>
        map.OptionalText(key) is { } text ? Read(text) : otherwise;

    /// <summary>A number without a unit, from zero up, or another where the key is not there.</summary>
    public static double NumberOr(this MapNode map, string key, double otherwise)
    {
        if (map.OptionalText(key) is not { } node)
            return otherwise;
        return double.TryParse(node.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value < 1000
            ? value
            : throw node.Refuse("length.key-not-a-number", ("key", key), ("text", node.Text));
    }

    private static Length Read(TextNode node)
    {
        var read = Parse(node.Text);
        return read.IsValue ? read.Value : throw node.Refuse(read.Problem);
    }

    /// <summary>A key's word, one of those known.</summary>
    /// <param name="map">The set of keys.</param>
    /// <param name="otherwise">The word where the key is not there; null where it has to be.</param>
    /// <param name="known">The words.</param>
    public static string Choice(this MapNode map, string key, string? otherwise, IReadOnlyCollection<string> known)
    {
        if (map.OptionalText(key) is not { } node)
            return otherwise ?? throw map.Refuse("design.missing", ("key", key), ("list", string.Join(", ", known)));
        return known.Contains(node.Text) ? node.Text
            : throw node.Refuse("arrangement.unknown-word", ("key", key), ("text", node.Text), ("list", string.Join(", ", known)));
    }
}
