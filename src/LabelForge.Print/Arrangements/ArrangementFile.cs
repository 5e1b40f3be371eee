using System.Collections.Concurrent;
using LabelForge.Print.Designs;
using LabelForge.Print.Lettering;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Arrangements;

/// <summary>The outline of a face, by which an arrangement's variant is chosen.</summary>
internal enum FaceShape
{
    /// <summary>About as wide as high.</summary>
    Square,

    /// <summary>Much wider than high: a bag's seal.</summary>
    Wide,

    /// <summary>Much higher than wide: half of a long label, a tube.</summary>
    Tall,

    /// <summary>A circle.</summary>
    Round,

    /// <summary>An ellipse, wider than high.</summary>
    Oval,
}

/// <summary>Reads templates/arrangements: where things stand on a front, as boxes in boxes.</summary>
public static class ArrangementFile
{
    /// <summary>The ids of the arrangements that ship with the tool, in the order they are shown.</summary>
    public static IReadOnlyList<string> Known { get; } = Templates.Ids("arrangements");

    private static readonly ConcurrentDictionary<string, MapNode> Read = new(StringComparer.Ordinal);

    private static readonly string[] BoxKeys =
    [
        "rows", "columns", "pair", "say", "window", "picture", "space", "rule", "gap", "padding", "size", "share", "width", "least",
        "want", "most", "on", "shape", "corner", "behind", "ring", "align", "run", "lines", "face", "capitals", "tracking", "leading",
    ];

    /// <summary>Which variant a face takes.</summary>
    internal static FaceShape ShapeOf(double width, double height, bool round) =>
        round ? width > WidestRound * height ? FaceShape.Oval : FaceShape.Round
        : width > 1.75 * height ? FaceShape.Wide : width < 0.78 * height ? FaceShape.Tall : FaceShape.Square;

    /// <summary>An arrangement's file.</summary>
    public static MapNode File(string id) => Read.GetOrAdd(id, i => Known.Contains(i)
        ? YamlFile.ReadText(Templates.Text($"arrangements/{i}.yaml"), $"arrangements/{i}.yaml")
            .OnlyKeys("An arrangement", "name", "for", "square", "wide", "tall", "round", "oval")
        : throw Templates.Unknown("arrangement", i, Known));

    /// <summary>Its boxes for a face, or null where it has none for a face of this shape.</summary>
    /// <param name="id">The arrangement.</param>
    /// <param name="width">The face's width in points.</param>
    /// <param name="height">Its height in points.</param>
    /// <param name="round">Whether it is a circle.</param>
    /// <param name="style">The pair of types.</param>
    /// <param name="longName">Whether the name may take a line more.</param>
    internal static ArrangementBox? For(string id, double width, double height, bool round, DesignStyle style, bool longName = false)
    {
        var file = File(id);
        var shape = ShapeOf(width, height, round);
        var root = file.OptionalMap(shape.ToString().ToLowerInvariant())
            ?? (shape is FaceShape.Round or FaceShape.Oval or FaceShape.Wide ? null : file.OptionalMap("square"));
        var (w, h) = (Points.ToLength(width), Points.ToLength(height));
        return root is null
            ? null
            : new Reader(style, longName, shape,
                ImmutableDictionary<string, Length>.Empty.Add("w", w).Add("h", h).Add("u", w.CompareTo(h) < 0 ? w : h)).Box(root);
    }

    // By eye.
    private const double WidestRound = 1.2;
    private const decimal TallName = 1.25m;
    private const decimal NarrowName = 1.5m;

    private sealed class Reader(DesignStyle style, bool longName, FaceShape shape, ImmutableDictionary<string, Length> sides)
    {
        public ArrangementBox Box(MapNode map)
        {
            map.OnlyKeys("A box", BoxKeys);
            var kind = Kinds.FirstOrDefault(k => map[k.Key] is not null);
            if (kind.Key is null)
                throw map.Refuse("arrangement.box-holds-nothing");
            var padding = map.Texts("padding").Select(t => Of(t)).ToArray();
            return new ArrangementBox(kind.Kind)
            {
                Inside = kind.Kind is BoxKind.Rows or BoxKind.Columns or BoxKind.Pair
                    ? [.. map.Items(kind.Key).Select(n => Box((MapNode)n))]
                    : [],
                Element = kind.Kind == BoxKind.Say ? Element(map) : null,
                Side = Word(map, "align", Side.Left),
                Run = Word(map, "run", Run.Across),
                Gap = Points(map, "gap") ?? 0,
                Padding = padding.Length switch
                {
                    0 => default,
                    1 => (padding[0], padding[0], padding[0], padding[0]),
                    2 => (padding[1], padding[0], padding[1], padding[0]),
                    4 => (padding[3], padding[0], padding[1], padding[2]),
                    _ => throw map.Refuse("arrangement.padding-lengths"),
                },
                Size = Points(map, "size"),
                Share = (double)map.NumberOr("share", kind.Kind is BoxKind.Ornament or BoxKind.Space ? 1 : 0),
                Width = Points(map, "width"),
                Least = kind.Kind == BoxKind.Say ? 0 : Points(map, "least") ?? Lettering.Points.OfMillimetres(7m),
                Want = kind.Kind == BoxKind.Say ? 0 : Points(map, "want") ?? Points(map, "least") ?? Lettering.Points.OfMillimetres(9m),
                Most = kind.Kind == BoxKind.Say ? double.PositiveInfinity : Points(map, "most") ?? double.PositiveInfinity,
                Ground = Word(map, "on", BoxGround.None),
                Shape = Word(map, "shape", BoxShape.Box),
                Corner = Points(map, "corner") ?? 0,
                Behind = map.OptionalText("behind")?.Text == "ornament",
                Ring = Points(map, "ring") ?? 0,
            };
        }

        // On a small face a name is small too; a lid's shows no more than its middle at full width.
        private decimal SmallName => shape is FaceShape.Round or FaceShape.Oval ? 0.05m : 0.085m;

        private DesignElement Element(MapNode map)
        {
            var name = map.Required("say", "name").Text;
            var role = (Role)Roles.Names.ToList().IndexOf(name);
            if ((int)role < 0)
                throw map.Refuse("arrangement.no-such-part", ("name", name), ("list", string.Join(", ", Roles.Names)));
            var usual = RoleOnFront.Usual.GetValueOrDefault(role) ?? RoleOnFront.Other;
            return new DesignElement
            {
                Role = role,
                Align = Align.Left,
                Face = style.Faces[map.OptionalText("face")?.Text ?? usual.Face],
                Least = LengthFormula.Or(map, "least",
                    Length.FromMillimetres(role == Role.Name ? Math.Min(usual.Least, SmallName * sides["u"].Millimetres) : usual.Least),
                    sides),
                Most = Most(role, LengthFormula.Or(map, "most", Length.FromMillimetres(usual.Most), sides)),
                // A tube is so narrow that a name of three words takes a line for each.
                Lines = (int)map.NumberOr("lines", usual.Lines) + (IsNarrow ? 1 : 0)
                    + (longName && role == Role.Name && Word(map, "run", Run.Across) == Run.Across ? 1 : 0),
                Capitals = map.OptionalText("capitals")?.Text is { } c
                    ? c == "true"
                    : role == Role.Business || (role == Role.Name && style.NameCapitals),
                Tracking = map.NumberOr("tracking",
                    role == Role.Business ? Math.Max(0.1, style.Tracking) : role == Role.Name ? style.NameTracking : 0),
                Leading = map.NumberOr("leading", role == Role.Name ? style.NameLeading : usual.Leading),
            };
        }

        private bool IsNarrow => sides["u"].Millimetres < 26;

        // On a tall front a name's lines stand over each other, with room for larger letters than its width alone would let it have.
        private Length Most(Role role, Length most) => role == Role.Name && shape == FaceShape.Tall
            ? Length.FromMillimetres(most.Millimetres * (IsNarrow ? NarrowName : TallName))
            : most;

        private T Word<T>(MapNode map, string key, T otherwise) where T : struct, Enum =>
            map.OptionalText(key) is not { } node ? otherwise
            : Enum.TryParse<T>(node.Text, ignoreCase: true, out var value) ? value
            : throw node.Refuse("arrangement.unknown-word", ("key", key), ("text", node.Text),
                ("list", string.Join(", ", Enum.GetNames<T>().Select(n => n.ToLowerInvariant()))));

        private double? Points(MapNode map, string key) => map.OptionalText(key) is { } node ? Of(node) : null;

        private double Of(TextNode node) => Lettering.Points.Of(LengthFormula.Of(node, sides));

        private static readonly (string Key, BoxKind Kind)[] Kinds =
        [
            ("rows", BoxKind.Rows), ("columns", BoxKind.Columns), ("pair", BoxKind.Pair), ("say", BoxKind.Say),
            ("window", BoxKind.Ornament), ("picture", BoxKind.Picture), ("space", BoxKind.Space), ("rule", BoxKind.Rule),
        ];
    }
}

/// <summary>How a part of a front is usually set: face, letter heights in millimetres, lines, leading.</summary>
internal sealed record RoleOnFront(string Face, decimal Least, decimal Most, int Lines, double Leading)
{
    public static RoleOnFront Other { get; } = new("medium", 1.1m, 1.4m, 2, 1.15);

    public static ImmutableDictionary<Role, RoleOnFront> Usual { get; } = ImmutableDictionary<Role, RoleOnFront>.Empty
        .Add(Role.Business, new("business", 1.05m, 1.4m, 2, 1.25))
        .Add(Role.Name, new("display", 2.2m, 8m, 2, 0.98))
        .Add(Role.Identity, new("semibold", 1.5m, 2.6m, 2, 1.1))
        .Add(Role.NetQuantity, new("semibold", 1.5m, 1.5m, 2, 1.02))
        .Add(Role.ScentLine, new("medium", 1.2m, 1.5m, 3, 1.25))
        .Add(Role.Words, new("medium", 1.1m, 1.3m, 3, 1.2))
        .Add(Role.Claim, new("semibold", 1.15m, 1.4m, 2, 1.2))
        .Add(Role.Price, new("semibold", 1.3m, 1.8m, 1, 1.1));
}
