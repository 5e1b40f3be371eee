using System.Collections.Immutable;
using LabelForge.Measures;
using LabelForge.Print.Lettering;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Reads label designs from YAML; every refusal names the file and the line.</summary>
internal static class DesignFile
{
    private static readonly string[] ElementKeys =
    [
        "role", "place", "align", "face", "least", "most", "lines", "capitals", "tracking", "leading", "gap", "optional", "before", "length", "thickness", "caption",
    ];

    public static LabelDesign ReadFile(string path, string shownAs) =>
        ReadDesign(YamlFile.Read(path, shownAs), Path.GetFileNameWithoutExtension(path));

    public static LabelDesign ReadText(string text, string shownAs, string id) => ReadDesign(YamlFile.ReadText(text, shownAs), id);

    private static LabelDesign ReadDesign(MapNode map, string id)
    {
        map.OnlyKeys("A design", "name", "width", "height", "shape", "panels");
        var (width, height) = (map.RequiredLength("width"), map.RequiredLength("height"));
        var round = Choice(map, "shape", "rectangle", ["rectangle", "round"]) == "round";
        var panels = map.OptionalMap("panels") ?? throw map.Refuse("A design needs panels.", "Write panels: and under it each panel's name with its place, size and elements.");
        var read = panels.Entries.Select(e => ReadPanel(e, width, height)).ToImmutableArray();
        if (read.Count(p => p.Principal) > 1)
            throw panels.Refuse("Two panels are principal.", "Leave \"principal: true\" on the one that faces the buyer.");
        return new LabelDesign(id, map.Required("name", "Bar soap").Text, width, height, round, read);
    }

    private static DesignPanel ReadPanel(Entry entry, Length labelWidth, Length labelHeight)
    {
        var map = entry.Value as MapNode ?? throw entry.Value.Refuse($"The panel \"{entry.Key}\" is {entry.Value.Kind}.", "Write x, y, width, height, padding and elements under it.");
        map.OnlyKeys("A panel", "principal", "x", "y", "width", "height", "padding", "elements");
        var (x, y) = (map.LengthOr("x", default), map.LengthOr("y", default));
        var (width, height, padding) = (map.RequiredLength("width"), map.RequiredLength("height"), map.LengthOr("padding", default));
        if (x.Millimetres + width.Millimetres > labelWidth.Millimetres || y.Millimetres + height.Millimetres > labelHeight.Millimetres)
            throw map.Refuse($"The panel \"{entry.Key}\" reaches beyond the label.", $"Keep it inside {labelWidth} by {labelHeight}.");
        if (2 * padding.Millimetres >= Math.Min(width.Millimetres, height.Millimetres))
            throw map.Refuse($"The padding of \"{entry.Key}\" leaves no room.", "Write a smaller padding.");
        var elements = map.Items("elements").Select(n =>
            ReadElement(n as MapNode ?? throw n.Refuse($"An element is {n.Kind}.", "Write - { role: name, place: top, ... }"))).ToImmutableArray();
        return new DesignPanel(entry.Key, Flag(map, "principal"), x, y, width, height, padding, elements);
    }

    private static DesignElement ReadElement(MapNode map)
    {
        map.OnlyKeys("An element", ElementKeys);
        var role = (Role)Roles.Names.ToList().IndexOf(Choice(map, "role", null, Roles.Names));
        var most = map.LengthOr("most", Length.FromMillimetres(2m));
        var least = map.LengthOr("least", Length.FromMillimetres(1m));
        if (least.Millimetres > most.Millimetres)
            throw map.Refuse($"least {least} is more than most {most}.", "Write the smaller one as least.");
        return new DesignElement
        {
            Role = role,
            Place = Enum.Parse<Place>(Choice(map, "place", "top", ["top", "middle", "bottom"]), ignoreCase: true),
            Align = Enum.Parse<Align>(Choice(map, "align", "left", ["left", "centre"]), ignoreCase: true),
            Face = BundledFaces.Named(Choice(map, "face", "regular", BundledFaces.Names))!,
            Least = least,
            Most = most,
            Lines = (int)map.NumberOr("lines", 0),
            Capitals = Flag(map, "capitals"),
            Tracking = map.NumberOr("tracking", 0),
            Leading = map.NumberOr("leading", 1.15),
            Gap = map.LengthOr("gap", default),
            Optional = Flag(map, "optional"),
            Before = map.OptionalText("before")?.Text ?? "",
            Caption = Flag(map, "caption", otherwise: true),
            RuleLength = map.LengthOr("length", default),
            RuleThickness = map.LengthOr("thickness", Length.FromMillimetres(0.25m)),
        };
    }

    private static string Choice(MapNode map, string key, string? otherwise, IReadOnlyCollection<string> known)
    {
        if (map.OptionalText(key) is not { } node)
            return otherwise ?? throw map.Refuse($"\"{key}\" is missing.", $"Write one of: {string.Join(", ", known)}.");
        return known.Contains(node.Text) ? node.Text
            : throw node.Refuse($"\"{key}: {node.Text}\" is not known.", $"Write one of: {string.Join(", ", known)}.");
    }

    private static bool Flag(MapNode map, string key, bool otherwise = false) =>
        Choice(map, key, otherwise ? "true" : "false", ["true", "false"]) == "true";
}
