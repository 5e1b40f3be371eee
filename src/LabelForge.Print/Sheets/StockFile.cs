using LabelForge.Print.Designs;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Sheets;

/// <summary>Reads label stock from YAML and refuses geometry that cannot be.</summary>
internal static class StockFile
{
    // Thirds of an inch have no exact decimal; a sum of them may differ in the last places.
    private const decimal Tolerance = 0.000001m;

    public static LabelStock ReadFile(string path, string shownAs) =>
        Read(YamlFile.Read(path, shownAs), Path.GetFileNameWithoutExtension(path));

    private static readonly string[] Common = ["name", "name fr", "basis", "source", "kind", "width", "height", "corner", "shape"];

    /// <summary>A stock from what its file says.</summary>
    public static LabelStock Read(MapNode map, string id) =>
        map.Choice("kind", "sheet", ["sheet", "roll"]) == "roll" ? ReadRoll(map, id) : ReadSheet(map, id);

    // A roll's page is one label, so that only the label's own size counts; the printer finds the gap.
    private static LabelStock ReadRoll(MapNode map, string id)
    {
        map.OnlyKeys("A roll of labels", [.. Common, "gap"]);
        var (width, height) = (LabelSide(map, "width"), LabelSide(map, "height"));
        return Checked(map, Described(map, new LabelStock
        {
            Id = id,
            Name = "",
            Source = "",
            Kind = StockKind.Roll,
            Gap = map.LengthOr("gap", default),
            PageWidth = width,
            PageHeight = height,
            Rows = 1,
            Columns = 1,
            Left = default,
            Top = default,
            PitchX = width,
            PitchY = height,
            LabelWidth = width,
            LabelHeight = height,
        }));
    }

    private static LabelStock ReadSheet(MapNode map, string id)
    {
        map.OnlyKeys("Label stock", [.. Common, "page width", "page height", "rows", "columns", "left", "top", "pitch x", "pitch y"]);
        return Checked(map, Described(map, new LabelStock
        {
            Id = id,
            Name = "",
            Source = "",
            PageWidth = PageSide(map, "page width"),
            PageHeight = PageSide(map, "page height"),
            Rows = Count(map, "rows"),
            Columns = Count(map, "columns"),
            Left = map.RequiredLength("left"),
            Top = map.RequiredLength("top"),
            PitchX = map.RequiredLength("pitch x"),
            PitchY = map.RequiredLength("pitch y"),
            LabelWidth = LabelSide(map, "width"),
            LabelHeight = LabelSide(map, "height"),
        }));
    }

    private static LabelStock Described(MapNode map, LabelStock stock) => stock with
    {
        Name = map.Required("name", "US Letter, 10 labels of 4 x 2 in").Text,
        FrenchName = map.OptionalText("name fr")?.Text,
        Source = map.Required("source", "measured on a sheet").Text,
        Basis = map.Choice("basis", "stated geometry", ["stated geometry", "common practice", "from memory", "measured"]) switch
        {
            "common practice" => StockBasis.CommonPractice,
            "from memory" => StockBasis.FromMemory,
            "measured" => StockBasis.Measured,
            _ => StockBasis.StatedGeometry,
        },
        CornerRadius = map.LengthOr("corner", default),
        Shape = map.Choice("shape", "rectangle", ["rectangle", "round", "oval"]) == "rectangle" ? StockShape.Rectangle : StockShape.Round,
    };

    private static LabelStock Checked(MapNode map, LabelStock s)
    {
        if (map.OptionalText("shape") is { Text: "round" } shape && s.LabelWidth != s.LabelHeight)
            throw shape.Refuse("stock-sheet.not-round", ("label-width", s.LabelWidth), ("label-height", s.LabelHeight));
        if (s.Columns > 1 && s.PitchX.Millimetres < s.LabelWidth.Millimetres - Tolerance)
            throw At(map, "pitch x", "stock-sheet.overlap-sideways", ("label-width", s.LabelWidth), ("pitch-x", s.PitchX));
        if (s.Rows > 1 && s.PitchY.Millimetres < s.LabelHeight.Millimetres - Tolerance)
            throw At(map, "pitch y", "stock-sheet.overlap-downward", ("label-height", s.LabelHeight), ("pitch-y", s.PitchY));
        var (x, y) = s.CornerOf(s.PerSheet);
        if (x.Millimetres + s.LabelWidth.Millimetres > s.PageWidth.Millimetres + Tolerance)
            throw At(map, "columns", "stock-sheet.last-column",
                ("from-millimetres", Length.FromMillimetres(x.Millimetres + s.LabelWidth.Millimetres - s.PageWidth.Millimetres)));
        if (y.Millimetres + s.LabelHeight.Millimetres > s.PageHeight.Millimetres + Tolerance)
            throw At(map, "rows", "stock-sheet.last-row",
                ("from-millimetres", Length.FromMillimetres(y.Millimetres + s.LabelHeight.Millimetres - s.PageHeight.Millimetres)));
        if (2 * s.CornerRadius.Millimetres > Math.Min(s.LabelWidth.Millimetres, s.LabelHeight.Millimetres))
            throw At(map, "corner", "stock-sheet.corner");
        return s;
    }

    private static InputException At(MapNode map, string key, string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        (map[key] ?? map).Refuse(code, arguments);

    private static Length LabelSide(MapNode map, string key) => map.RequiredLength(key) is { Millimetres: >= 5m } side
        ? side
        : throw At(map, key, "stock-sheet.label-side", ("key", key));

    // Larger than a printer at a table takes; it would be a slip in the unit.
    private static Length PageSide(MapNode map, string key) => map.RequiredLength(key) is { Millimetres: >= 25m and <= 1500m } side
        ? side
        : throw At(map, key, "stock-sheet.sheet-side", ("key", key));

    private static int Count(MapNode map, string key)
    {
        var node = map.Required(key, "10");
        return int.TryParse(node.Text, out var count) && count is >= 1 and <= 100
            ? count
            : throw node.Refuse("stock-sheet.not-a-number", ("key", key), ("text", node.Text));
    }
}
