using System.Globalization;
using System.Text;
using LabelForge.Checks.Reading;
using LabelForge.Print.Reading;

namespace LabelForge.Print.Tests;

/// <summary>What a label's file shows only sometimes: layers, text boxes, form fields. What
/// prints is on the label, what does not is told.</summary>
public sealed class LayersAndNotesTests
{
    private const string Layered =
        "/F1 12 Tf BT 20 200 Td (Bar Soap) Tj ET /OC /L1 BDC BT 20 150 Td (Lot 26-118) Tj ET EMC BT 20 100 Td (Net Wt 4 oz) Tj ET";

    [Theory]
    [InlineData("/OFF [6 0 R]", "", false)]
    [InlineData("/OFF []", "", true)]
    [InlineData("/BaseState /OFF", "", false)]
    [InlineData("/BaseState /OFF /ON [6 0 R]", "", true)]
    [InlineData("/AS [<< /Event /Print /Category [/Print] /OCGs [6 0 R] >>]", "/Usage << /Print << /PrintState /OFF >> >>", false)]
    [InlineData("/OFF [6 0 R] /AS [<< /Event /Print /Category [/Print] /OCGs [6 0 R] >>]", "/Usage << /Print << /PrintState /ON >> >>",
        true)]
    // Without the event a group's usage says nothing.
    [InlineData("", "/Usage << /Print << /PrintState /OFF >> >>", true)]
    public void Words_of_a_layer_are_on_the_label_where_the_layer_prints(string configuration, string group, bool prints)
    {
        var text = Read(Layered, $"/OCProperties << /OCGs [6 0 R] /D << {configuration} >> >>", "",
            $"<< /Type /OCG /Name (Lots) {group} >>");
        Assert.Contains("Net Wt 4 oz", text.Text, StringComparison.Ordinal);
        Assert.Equal(prints, text.Text.Contains("Lot 26-118", StringComparison.Ordinal));
        if (prints)
            Assert.Empty(text.Unseen);
        else
            Assert.Equal(("Lot 26-118", "in a layer that does not print"), (Assert.Single(text.Unseen).Words, text.Unseen[0].Why));
    }

    [Fact]
    public void A_membership_of_layers_prints_where_one_of_them_does() =>
        Assert.Contains("Lot 26-118",
            Read(Layered, "/OCProperties << /OCGs [6 0 R] /D << /OFF [6 0 R] >> >>", "", "<< /Type /OCG /Name (Lots) >>",
                "<< /Type /OCMD /OCGs [6 0 R] /P /AllOff >>").Text, StringComparison.Ordinal);

    [Fact]
    public void What_a_layer_paints_covers_nothing_where_it_does_not_print()
    {
        const string Covered = "/F1 12 Tf BT 20 200 Td (Bar Soap) Tj ET /OC /L1 BDC 1 g 0 190 300 40 re f EMC";
        Assert.Contains("Bar Soap",
            Read(Covered, "/OCProperties << /OCGs [6 0 R] /D << /OFF [6 0 R] >> >>", "", "<< /Type /OCG /Name (Lots) >>").Text,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/Subtype /FreeText /Contents (Lot 26-118) /F 4", true)]
    [InlineData("/Subtype /FreeText /Contents (Lot 26-118) /F 0", false)]
    [InlineData("/Subtype /FreeText /Contents (Lot 26-118) /F 6", false)]
    [InlineData("/Subtype /Widget /FT /Tx /T (lot) /V (Lot 26-118) /F 4", true)]
    [InlineData("/Subtype /Widget /FT /Tx /T (lot) /V (Lot 26-118) /F 2", false)]
    public void A_text_box_and_a_field_are_on_the_label_where_they_print(string note, bool prints)
    {
        var text = Read("/F1 12 Tf BT 20 200 Td (Bar Soap) Tj ET", "", $"/Annots [<< /Type /Annot /Rect [20 20 200 40] {note} >>]",
            "<< >>");
        Assert.Equal(prints, text.Text.Contains("Lot 26-118", StringComparison.Ordinal));
        Assert.Equal(prints ? [] : new[] { "in a note or a field that does not print" }, text.Unseen.Select(u => u.Why));
    }

    [Fact]
    public void A_remark_beside_the_label_is_no_word_of_it()
    {
        var text = Read("/F1 12 Tf BT 20 200 Td (Bar Soap) Tj ET", "",
            "/Annots [<< /Type /Annot /Subtype /Text /Rect [20 20 40 40] /Contents (change the lot) /F 4 >>]", "<< >>");
        Assert.Equal(("Bar Soap", 0), (text.Text.Trim(), text.Unseen.Length));
    }

    // A file of one page, object by object (ISO 32000-1, 7.5).
    private static LabelText Read(string drawing, string catalog, string page, string group, string? layer = null)
    {
        string[] objects =
        [
            $"<< /Type /Catalog /Pages 2 0 R {catalog} >>", "<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
            $"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 240] /Contents 5 0 R /Resources << /Font << /F1 4 0 R >> "
                + $"/Properties << /L1 {(layer is null ? 6 : 7)} 0 R >> >> {page} >>",
            "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>", $"<< /Length {drawing.Length} >>\nstream\n{drawing}\nendstream",
            group, layer ?? "<< >>",
        ];
        var file = new StringBuilder("%PDF-1.7\n");
        var at = new List<int>();
        foreach (var (body, number) in objects.Select((o, i) => (o, i + 1)))
        {
            at.Add(file.Length);
            file.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{body}\nendobj\n");
        }
        var table = file.Length;
        file.Append(CultureInfo.InvariantCulture, $"xref\n0 {objects.Length + 1}\n0000000000 65535 f \n");
        foreach (var offset in at)
            file.Append(CultureInfo.InvariantCulture, $"{offset:0000000000} 00000 n \n");
        file.Append(CultureInfo.InvariantCulture, $"trailer\n<< /Size {objects.Length + 1} /Root 1 0 R >>\nstartxref\n{table}\n%%EOF\n");
        return PdfLabelReader.Read(Encoding.ASCII.GetBytes(file.ToString()), "label.pdf");
    }
}
