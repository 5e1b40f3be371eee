using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Sheets;

/// <summary>Reads label stock from YAML and refuses geometry that cannot be.</summary>
internal static class StockFile
{
    // Thirds of an inch have no exact decimal; a sum of them may differ in the last places.
    private const decimal Tolerance = 0.000001m;

    public static LabelStock ReadFile(string path, string shownAs) => Read(YamlFile.Read(path, shownAs), Path.GetFileNameWithoutExtension(path));

    private static readonly string[] Common = ["name", "basis", "source", "kind", "width", "height", "corner", "shape"];

    /// <summary>A stock from what its file says.</summary>
    public static LabelStock Read(MapNode map, string id) => Choice(map, "kind", "sheet", "sheet", "roll") == "roll" ? ReadRoll(map, id) : ReadSheet(map, id);

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
        Source = map.Required("source", "measured on a sheet").Text,
        Basis = Choice(map, "basis", "stated geometry", "stated geometry", "common practice", "from memory", "measured") switch
        {
            "common practice" => StockBasis.CommonPractice,
            "from memory" => StockBasis.FromMemory,
            "measured" => StockBasis.Measured,
            _ => StockBasis.StatedGeometry,
        },
        CornerRadius = map.LengthOr("corner", default),
        Shape = Choice(map, "shape", "rectangle", "rectangle", "round", "oval") == "rectangle" ? StockShape.Rectangle : StockShape.Round,
    };

    private static LabelStock Checked(MapNode map, LabelStock s)
    {
        if (map.OptionalText("shape") is { Text: "round" } shape && s.LabelWidth != s.LabelHeight)
            throw shape.Refuse($"A round label is as wide as high, not {s.LabelWidth} by {s.LabelHeight}.", "Write shape: oval, or one diameter for both.");
        if (s.Columns > 1 && s.PitchX.Millimetres < s.LabelWidth.Millimetres - Tolerance)
            throw At(map, "pitch x", $"Labels overlap sideways: they are {s.LabelWidth} wide and {s.PitchX} apart.", "Measure pitch x from one label's left edge to the next one's.");
        if (s.Rows > 1 && s.PitchY.Millimetres < s.LabelHeight.Millimetres - Tolerance)
            throw At(map, "pitch y", $"Labels overlap downward: they are {s.LabelHeight} high and {s.PitchY} apart.", "Measure pitch y from one label's top edge to the next one's.");
        var (x, y) = s.CornerOf(s.PerSheet);
        if (x.Millimetres + s.LabelWidth.Millimetres > s.PageWidth.Millimetres + Tolerance)
            throw At(map, "columns", $"The last column ends {Length.FromMillimetres(x.Millimetres + s.LabelWidth.Millimetres - s.PageWidth.Millimetres)} beyond the sheet.", "Check left, pitch x, width and columns.");
        if (y.Millimetres + s.LabelHeight.Millimetres > s.PageHeight.Millimetres + Tolerance)
            throw At(map, "rows", $"The last row ends {Length.FromMillimetres(y.Millimetres + s.LabelHeight.Millimetres - s.PageHeight.Millimetres)} beyond the sheet.", "Check top, pitch y, height and rows.");
        if (2 * s.CornerRadius.Millimetres > Math.Min(s.LabelWidth.Millimetres, s.LabelHeight.Millimetres))
            throw At(map, "corner", "The corner's radius is more than half the label.", "Write a smaller corner, or shape: round.");
        return s;
    }

    private static InputException At(MapNode map, string key, string wrong, string write) => (map[key] ?? map).Refuse(wrong, write);

    private static Length LabelSide(MapNode map, string key) => map.RequiredLength(key) is { Millimetres: >= 5m } side
        ? side
        : throw At(map, key, $"A label's {key} is less than 5 mm.", "Write its size in mm or in: 63.5 mm, 2.5 in.");

    // Larger than a printer at a table takes; it would be a slip in the unit.
    private static Length PageSide(MapNode map, string key) => map.RequiredLength(key) is { Millimetres: >= 25m and <= 1500m } side
        ? side
        : throw At(map, key, $"A sheet's {key} is not between 25 mm and 1500 mm.", "Check the unit: 210 mm, 8.5 in.");

    private static string Choice(MapNode map, string key, string otherwise, params string[] known)
    {
        if (map.OptionalText(key) is not { } node)
            return otherwise;
        return known.Contains(node.Text)
            ? node.Text
            : throw node.Refuse($"\"{key}: {node.Text}\" is not known.", $"Write one of: {string.Join(", ", known)}.");
    }

    private static int Count(MapNode map, string key)
    {
        var node = map.Required(key, "10");
        return int.TryParse(node.Text, out var count) && count is >= 1 and <= 100
            ? count
            : throw node.Refuse($"\"{key}: {node.Text}\" is not a number of labels.", "Write a whole number from 1 to 100.");
    }
}
