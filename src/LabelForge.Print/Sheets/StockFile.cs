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

    public static LabelStock ReadText(string text, string shownAs, string id) => Read(YamlFile.ReadText(text, shownAs), id);

    private static LabelStock Read(MapNode map, string id)
    {
        map.OnlyKeys("Label stock", "name", "source", "page width", "page height", "rows", "columns", "left", "top", "pitch x", "pitch y", "width", "height", "corner", "shape");
        var shape = map.OptionalText("shape");
        if (shape is not (null or { Text: "rectangle" or "round" }))
            throw shape.Refuse($"\"shape: {shape.Text}\" is not known.", "Write rectangle or round.");
        var stock = new LabelStock
        {
            Id = id,
            Name = map.Required("name", "US Letter, 10 labels of 4 x 2 in").Text,
            Source = map.Required("source", "measured on a sheet").Text,
            PageWidth = map.RequiredLength("page width"),
            PageHeight = map.RequiredLength("page height"),
            Rows = Count(map, "rows"),
            Columns = Count(map, "columns"),
            Left = map.RequiredLength("left"),
            Top = map.RequiredLength("top"),
            PitchX = map.RequiredLength("pitch x"),
            PitchY = map.RequiredLength("pitch y"),
            LabelWidth = map.RequiredLength("width"),
            LabelHeight = map.RequiredLength("height"),
            CornerRadius = map.LengthOr("corner", default),
            Shape = shape?.Text == "round" ? StockShape.Round : StockShape.Rectangle,
        };
        RefuseNonsense(map, stock);
        return stock;
    }

    private static void RefuseNonsense(MapNode map, LabelStock s)
    {
        if (s.LabelWidth.Millimetres == 0 || s.LabelHeight.Millimetres == 0)
            throw map.Refuse("A label has no width or no height.", "Write its width and height above zero.");
        if (s.Columns > 1 && s.PitchX.Millimetres < s.LabelWidth.Millimetres - Tolerance)
            throw map.Refuse($"Labels overlap sideways: they are {s.LabelWidth} wide and {s.PitchX} apart.", "Measure pitch x from one label's left edge to the next one's.");
        if (s.Rows > 1 && s.PitchY.Millimetres < s.LabelHeight.Millimetres - Tolerance)
            throw map.Refuse($"Labels overlap downward: they are {s.LabelHeight} high and {s.PitchY} apart.", "Measure pitch y from one label's top edge to the next one's.");
        var (x, y) = s.CornerOf(s.PerSheet);
        if (x.Millimetres + s.LabelWidth.Millimetres > s.PageWidth.Millimetres + Tolerance)
            throw map.Refuse("The last column reaches beyond the sheet.", "Check left, pitch x, width and columns.");
        if (y.Millimetres + s.LabelHeight.Millimetres > s.PageHeight.Millimetres + Tolerance)
            throw map.Refuse("The last row reaches beyond the sheet.", "Check top, pitch y, height and rows.");
        if (2 * s.CornerRadius.Millimetres > Math.Min(s.LabelWidth.Millimetres, s.LabelHeight.Millimetres))
            throw map.Refuse("The corner's radius is more than half the label.", "Write a smaller corner, or shape: round.");
    }

    private static int Count(MapNode map, string key)
    {
        var node = map.Required(key, "10");
        return int.TryParse(node.Text, out var count) && count is >= 1 and <= 100
            ? count
            : throw node.Refuse($"\"{key}: {node.Text}\" is not a number of labels.", "Write a whole number from 1 to 100.");
    }
}
