using LabelForge.Quantities;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Reads label designs from YAML; every refusal names the file and the line.</summary>
internal static class DesignFile
{
    /// <summary>The keys of a design.</summary>
    internal static readonly string[] DesignKeys = ["name", "for", "package", "width", "height", "shape", "style", "tone", "bleed", "with",
        "panels"];

    /// <summary>The keys of a panel.</summary>
    internal static readonly string[] PanelKeys = ["principal", "turned", "x", "y", "width", "height", "padding", "elements", "fill"];

    /// <summary>The keys of an element.</summary>
    internal static readonly string[] ElementKeys =
    [
        "role", "place", "align", "face", "least", "most", "lines", "capitals", "tracking", "leading", "gap", "optional", "before",
    "length", "thickness", "caption", "file",
    ];

    public static LabelDesign Read(MapNode map, DesignLook look, Package? wanted)
    {
        map.OnlyKeys("A design", DesignKeys);
        var package = PackageOf(map, look.Design, wanted);
        var style = DesignStyle.Load(look.Style ?? map.Choice("style", "plain", DesignStyle.Known));
        var tone = look.Tone ?? Enum.Parse<Tone>(map.Choice("tone", "light", ["light", "dark"]), ignoreCase: true);
        var (width, height) = (LengthFormula.Required(map, "width", package?.Sides),
            LengthFormula.Required(map, "height", package?.Sides));
        var round = map.Choice("shape", "rectangle", ["rectangle", "round", "oval"]) != "rectangle";
        var panels = map.OptionalMap("panels") ?? throw map.Refuse("design.no-panels");
        var read = panels.Entries.Select(e => ReadPanel(e, width, height, style, package)).ToImmutableArray();
        if (read.Count(p => p.Principal) > 1)
            throw panels.Refuse("design.two-principal");
        var with = map.Texts("with")
            .Select(t => LabelDesign.Known.Contains(t.Text)
                ? t.Text
                : throw t.Refuse("design.unknown-with", ("text", t.Text), ("list", string.Join(", ", LabelDesign.Known))));
        var (ground, ink) = style.Colours[tone];
        return new LabelDesign(look.Design, map.Required("name", "Bar soap").Text, width, height, round, read)
        {
            Package = package,
            Ground = ground,
            Ink = ink,
            Bleed = map.LengthOr("bleed", Length.FromMillimetres(ground == Colour.White ? 0m : 1.5m)),
            For = map.OptionalText("for")?.Text ?? "",
            With = [.. with],
            SaidElsewhere = map.Texts("with").SelectMany(t => RolesOf(LabelDesign.Tree(t.Text))).ToHashSet(),
        };
    }

    private static Package? PackageOf(MapNode map, string id, Package? wanted)
    {
        var own = map.OptionalMap("package") is { } node ? PackageFile.Read(node) : null;
        if (own is null || wanted is null || own.Shape == wanted.Shape)
            return own is null ? null : wanted ?? own;
        throw new InputException("design.other-package", ("id", id), ("shape", own.Shape.ToString().ToLowerInvariant()),
            ("shape-2", wanted.Shape.ToString().ToLowerInvariant()));
    }

    private static IEnumerable<Role> RolesOf(MapNode design) => (design.OptionalMap("panels")?.Entries ?? [])
        .SelectMany(p => (p.Value as MapNode)?.Items("elements") ?? [])
        .Select(e => Roles.Names.ToList().IndexOf((e as MapNode)?.OptionalText("role")?.Text ?? ""))
        .Where(i => i >= 0).Select(i => (Role)i);

    private static DesignPanel ReadPanel(Entry entry, Length labelWidth, Length labelHeight, DesignStyle style, Package? package)
    {
        var map = entry.Value as MapNode
            ?? throw entry.Value.Refuse("design.not-a-panel", ("name", entry.Key), ("kind", entry.Value.Kind));
        map.OnlyKeys("A panel", PanelKeys);
        var sides = package?.Sides;
        var (x, y) = (LengthFormula.Or(map, "x", default, sides), LengthFormula.Or(map, "y", default, sides));
        var (width, height, padding) = (LengthFormula.Required(map, "width", sides), LengthFormula.Required(map, "height", sides),
            map.LengthOr("padding", default));
        if (x.Millimetres + width.Millimetres > labelWidth.Millimetres || y.Millimetres + height.Millimetres > labelHeight.Millimetres)
            throw map.Refuse("design.panel-outside", ("name", entry.Key), ("label-width", labelWidth), ("label-height", labelHeight));
        if (2 * padding.Millimetres >= Math.Min(width.Millimetres, height.Millimetres))
            throw map.Refuse("design.padding", ("name", entry.Key));
        var elements = map.Items("elements").Select(n =>
            ReadElement(n as MapNode ?? throw n.Refuse("design.not-an-element", ("kind", n.Kind)), style)).ToImmutableArray();
        return new DesignPanel(entry.Key, Flag(map, "principal"), x, y, width, height, padding, elements, Flag(map, "turned"))
        {
            Fill = Enum.Parse<PanelFill>(map.Choice("fill", "none", ["none", "ornament", "plate"]), ignoreCase: true),
        };
    }

    private static DesignElement ReadElement(MapNode map, DesignStyle style)
    {
        map.OnlyKeys("An element", ElementKeys);
        var role = (Role)Roles.Names.ToList().IndexOf(map.Choice("role", null, Roles.Names));
        var most = map.LengthOr("most", Length.FromMillimetres(2m));
        var least = map.LengthOr("least", Length.FromMillimetres(1m));
        if (least.Millimetres > most.Millimetres)
            throw map.Refuse("design.least-above-most", ("least", least), ("most", most));
        return new DesignElement
        {
            Role = role,
            Place = Enum.Parse<Place>(map.Choice("place", "top", ["top", "middle", "bottom"]), ignoreCase: true),
            Align = Enum.Parse<Align>(map.Choice("align", "left", ["left", "centre"]), ignoreCase: true),
            Face = style.Faces[map.Choice("face", role == Role.Business ? "business" : role == Role.Name ? "display" : "regular",
                [.. style.Faces.Keys.Order()])],
            Least = least,
            Most = most,
            Lines = (int)map.NumberOr("lines", 0),
            Capitals = Flag(map, "capitals", role == Role.Business && style.Capitals),
            Tracking = map.NumberOr("tracking", role == Role.Business ? style.Tracking : 0),
            File = map.OptionalText("file")?.Text ?? "",
            Leading = map.NumberOr("leading", 1.15),
            Gap = map.LengthOr("gap", default),
            Optional = Flag(map, "optional"),
            Before = map.OptionalText("before")?.Text ?? "",
            Caption = Flag(map, "caption", otherwise: true),
            RuleLength = map.LengthOr("length", default),
            RuleThickness = map.LengthOr("thickness", style.Rule),
        };
    }

    private static bool Flag(MapNode map, string key, bool otherwise = false) =>
        map.Choice(key, otherwise ? "true" : "false", ["true", "false"]) == "true";
}
