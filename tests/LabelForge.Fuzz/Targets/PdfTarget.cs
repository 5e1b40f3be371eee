using LabelForge.Measures;
using LabelForge.Print.Reading;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>A PDF from anywhere. Always holds: its words are read or it is refused; every height
/// and place belongs to words that were read.</summary>
internal static class PdfTarget
{
    public static readonly string[] Words =
        ["/Type /Page", "/Kids [3 0 R]", "/Count 99999999", "/Parent 2 0 R", "3 0 R", "obj\n", "endobj\n", "stream\n", "endstream\n", "<<",
            ">>", "/Length 999999999", "/Filter /FlateDecode", "/Contents [4 0 R 4 0 R]", "BT /F1 12 Tf (soap) Tj ET", "/Rotate 90",
            "1e30 0 0 1e30 0 0 cm", "xref\n", "trailer", "startxref\n0\n", "/Encrypt 5 0 R", "/ObjStm", "/Prev 9"];

    public static void Run(byte[] input)
    {
        try
        {
            var read = PdfLabelReader.Read(input, "label.pdf");
            Holds(read.Heights.All(h => h.Span.Start >= 0 && h.Span.End <= read.Text.Length), "a height belongs to words");
            Holds(read.Places.All(p => p.Span.Start >= 0 && p.Span.End <= read.Text.Length), "a place belongs to words");
        }
        catch (InputException refused)
        {
            Holds(!refused.Message.Contains("reasonable time", StringComparison.Ordinal), "a small PDF is read or refused soon");
        }
    }
}
