using System.Globalization;
using System.Text;
using SkiaSharp;

namespace LabelForge.Benchmarks.Floor;

/// <summary>
/// The file written by hand: Skia draws the label once; its bytes stay as they are, and after them, as a later version
/// of the same file (ISO 32000-1, 7.5.6), stand a form with that drawing and pages that place it.
/// </summary>
public static class FormFile
{
    /// <summary>So many full sheets.</summary>
    public static void WriteSheets(Ink ink, int sheets, string path)
    {
        var temporary = path + ".label";
        SkiaLoop.WriteLabel(ink, temporary);
        var label = File.ReadAllBytes(temporary);
        File.Delete(temporary);
        var text = Encoding.Latin1.GetString(label);
        var page = text[text.IndexOf("<</Type /Page\n", StringComparison.Ordinal)..];
        var resources = page[page.IndexOf("/Resources ", StringComparison.Ordinal)..page.IndexOf("/MediaBox", StringComparison.Ordinal)];
        var content = Number(page, "/Contents ");
        var at = text.IndexOf($"\n{content} 0 obj\n", StringComparison.Ordinal);
        var stream = text[at..text.IndexOf("\nendstream", at, StringComparison.Ordinal)];
        var bytes = stream[(stream.IndexOf(" stream\n", StringComparison.Ordinal) + 8)..];
        var size = Number(text[text.LastIndexOf("/Size ", StringComparison.Ordinal)..], "/Size ");
        var previous = Number(text[text.LastIndexOf("startxref", StringComparison.Ordinal)..], "startxref\n");

        using var file = File.Create(path);
        file.Write(label);
        var places = new List<long>();
        void Write(string body)
        {
            places.Add(file.Position);
            file.Write(Encoding.Latin1
                .GetBytes(string.Create(CultureInfo.InvariantCulture, $"{size + places.Count - 1} 0 obj\n{body}\nendobj\n")));
        }
        Write(string.Create(CultureInfo.InvariantCulture,
            $"<</Type/XObject/Subtype/Form/BBox[0 0 {ink.Width} {ink.Height}]/Filter/FlateDecode/Length {bytes.Length}{resources}>>\nstream\n{bytes}\nendstream"));
        var tree = size + 1 + 2 * sheets;
        for (var sheet = 0; sheet < sheets; sheet++)
        {
            var places30 = new StringBuilder();
            foreach (var (x, y) in ink.Corners)
                places30.Append(CultureInfo.InvariantCulture, $"q 1 0 0 1 {x:0.###} {ink.PageHeight - y - ink.Height:0.###} cm/L Do Q\n");
            Write($"<</Length {places30.Length}>>\nstream\n{places30}\nendstream");
            Write(string.Create(CultureInfo.InvariantCulture,
                $"<</Type/Page/Parent {tree} 0 R/MediaBox[0 0 {ink.PageWidth} {ink.PageHeight}]/Contents {size + places.Count - 1} 0 R/Resources<</XObject<</L {size} 0 R>>>>>>"));
        }
        Write(
            $"<</Type/Pages/Count {sheets}/Kids[{string.Join(' ', Enumerable.Range(0, sheets).Select(s => $"{size + 2 + 2 * s} 0 R"))}]>>");
        Write($"<</Type/Catalog/Pages {tree} 0 R>>");
        var start = file.Position;
        var table = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"xref\n{size} {places.Count}\n"));
        foreach (var place in places)
            table.Append(CultureInfo.InvariantCulture, $"{place:D10} 00000 n \n");
        table.Append(CultureInfo.InvariantCulture,
            $"trailer\n<</Size {size + places.Count}/Root {tree + 1} 0 R/Prev {previous}>>\nstartxref\n{start}\n%%EOF\n");
        file.Write(Encoding.Latin1.GetBytes(table.ToString()));
    }

    private static int Number(string text, string after)
    {
        var from = text.IndexOf(after, StringComparison.Ordinal) + after.Length;
        var to = from;
        while (char.IsAsciiDigit(text[to]))
            to++;
        return int.Parse(text.AsSpan(from, to - from), CultureInfo.InvariantCulture);
    }
}
