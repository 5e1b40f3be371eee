using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Looks;

/// <summary>Reads the values of a look; each refusal names the file and the line.</summary>
internal static class LookText
{
    public static string? Known(TextNode? node, string what, IReadOnlyList<string> known) => node is null ? null
        : known.Contains(node.Text) ? node.Text
        : throw (Spelling.Nearest(node.Text, known) is { } near
            ? node.Refuse("look.unknown", ("what", what), ("text", node.Text), ("near", near), ("list", string.Join(", ", known)))
            : node.Refuse("look.unknown-nearest", ("what", what), ("text", node.Text), ("list", string.Join(", ", known))));

    public static double? Number(TextNode? node, string what, double least, double most) => node is null ? null
        : double.TryParse(node.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value)
            && value >= least
            && value <= most ? value
        : throw node.Refuse("look.out-of-range", ("what", what), ("text", node.Text), ("written", Written(least)),
            ("written-2", Written(most)), ("written-3", Written(Math.Min(most, Math.Max(least, 1)))));

    public static Colour? Colour(TextNode? node) => node is null ? null
        : Print.Colour.Parse(node.Text) ?? throw node.Refuse("look.not-a-colour", ("text", node.Text));

    public static bool? Yes(TextNode? node, string what) => node?.Text switch
    {
        null => null,
        "true" => true,
        "false" => false,
        var other => throw node!.Refuse("look.true-or-false", ("what", what), ("text", other)),
    };

    /// <summary>How far words are moved, in points.</summary>
    public static ImmutableDictionary<Role, (double X, double Y)> Moved(MapNode? map)
    {
        var moved = ImmutableDictionary<Role, (double X, double Y)>.Empty;
        if (map is null)
            return moved;
        map.OnlyKeys("What is moved", [.. MovedWords.May.Select(Roles.NameOf)]);
        foreach (var role in MovedWords.May.Where(r => map[Roles.NameOf(r)] is not null))
        {
            if (map.Texts(Roles.NameOf(role)).ToArray() is not [var right, var down])
                throw map.Refuse("look.moved", ("part", Roles.NameOf(role)));
            moved = moved.Add(role, (Millimetres(right, role), Millimetres(down, role)));
        }
        return moved;
    }

    private static double Millimetres(TextNode node, Role role) =>
        node.Text.EndsWith("mm", StringComparison.Ordinal)
            && decimal.TryParse(node.Text.AsSpan(0, node.Text.Length - 2).Trim(),
                NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            && Math.Abs(value) <= FarthestMoved
            ? Points.OfMillimetres(value)
            : throw node.Refuse("look.moved", ("part", Roles.NameOf(role)));

    private const decimal FarthestMoved = 200;

    private static string Written(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
