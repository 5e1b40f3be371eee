using LabelForge.Print.Designs;
using LabelForge.Print.Output;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Sheets;

/// <summary>Reads and writes what is remembered of a printer, <c>printers/ID.yaml</c> in a workshop.</summary>
public static class PrinterFile
{
    private const string Room = "printers";

    /// <summary>A printer of a workshop, or null where none of that id is remembered.</summary>
    /// <exception cref="InputException">The id is no name for a file, or the file cannot be used; the message names the line.</exception>
    public static Printer? Find(string workshopFolder, string id)
    {
        var path = PathOf(workshopFolder, id);
        return File.Exists(path) ? Read(YamlFile.Read(path, $"{Room}/{id}.yaml"), id) : null;
    }

    /// <summary>A printer of a workshop.</summary>
    /// <exception cref="InputException">None of that id is remembered, or its file cannot be used.</exception>
    public static Printer Load(string workshopFolder, string id)
    {
        if (Find(workshopFolder, id) is { } found)
            return found;
        var known = Known(workshopFolder);
        throw new InputException("printer.unknown", ("id", id),
            ("advice", known.Count == 0 ? "None is yet." : $"There are: {string.Join(", ", known)}."));
    }

    /// <summary>The ids of the printers remembered.</summary>
    public static IReadOnlyList<string> Known(string workshopFolder)
    {
        var folder = Path.Combine(workshopFolder, Room);
        return Directory.Exists(folder)
            ? [.. Directory.EnumerateFiles(folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)!)
                .Order(StringComparer.Ordinal)]
            : [];
    }

    /// <summary>Remembers a printer; whatever was remembered of it is replaced.</summary>
    /// <exception cref="InputException">The id is no name for a file, or the file cannot be written.</exception>
    public static void Save(string workshopFolder, Printer printer)
    {
        var path = PathOf(workshopFolder, printer.Id);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        var (c, b) = (printer.Registration, printer.Blank);
        var text = FormattableString.Invariant($"""
            # How prints on this printer are moved (millimetres to the right and down) and stretched (percent wider and higher).
            nudge: {c.NudgeXMm:0.###},{c.NudgeYMm:0.###}
            stretch: {c.StretchXPercent:0.####},{c.StretchYPercent:0.####}
            # What it cannot print on at the edges of a sheet. Where you have not measured it: 4.2 mm, common practice.
            margins:
              left: {b.Left}
              top: {b.Top}
              right: {b.Right}
              bottom: {b.Bottom}

            """);
        AtomicFile.Write(path, text);
    }

    private static Printer Read(MapNode map, string id)
    {
        map.OnlyKeys("A printer", "nudge", "stretch", "margins");
        var (nudge, stretch) = (Pair(map, "nudge", Registration.ParseNudge), Pair(map, "stretch", Registration.ParseStretch));
        var margins = map.OptionalMap("margins")?.OnlyKeys("Margins", "left", "top", "right", "bottom");
        var usual = BlankEdges.Usual;
        var blank = margins is null ? usual : new BlankEdges(
            margins.LengthOr("left", usual.Left), margins.LengthOr("top", usual.Top), margins.LengthOr("right", usual.Right),
            margins.LengthOr("bottom", usual.Bottom));
        return new Printer(id, new Registration(nudge.X, nudge.Y, stretch.X, stretch.Y), blank);
    }

    private static (decimal X, decimal Y) Pair(MapNode map, string key, Func<string, Parsed<(decimal X, decimal Y)>> parse)
    {
        if (map.OptionalText(key) is not { } node)
            return default;
        var read = parse(node.Text);
        return read.IsValue ? read.Value : throw node.Refuse("printer.file-pair", ("inner", read.Problem), ("key", key));
    }

    private static string PathOf(string workshopFolder, string id) =>
        id.Length is > 0 and <= 60 && id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_')
            ? Path.Combine(workshopFolder, Room, id + ".yaml")
            : throw new InputException("printer.unnameable", ("id", id));
}
