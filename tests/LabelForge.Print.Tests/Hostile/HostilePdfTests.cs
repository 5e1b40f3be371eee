using System.Text;
using LabelForge.Measures;
using LabelForge.Print.Reading;

namespace LabelForge.Print.Tests.Hostile;

/// <summary>PDFs made to do harm; a packed bomb and deep nesting of lists are with the reader's own tests.</summary>
public sealed class HostilePdfTests
{
    private const string Catalog = "%PDF-1.4\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n";
    private const string End = "\ntrailer\n<< /Root 1 0 R >>\n%%EOF";

    [Fact]
    public void A_tree_of_pages_that_holds_itself_is_refused() =>
        Refused(Catalog + "2 0 obj\n<< /Type /Pages /Kids [2 0 R] /Count 1 >>\nendobj" + End);

    [Fact]
    public void Two_trees_of_pages_that_hold_each_other_are_refused() =>
        Refused(Catalog
            + "2 0 obj\n<< /Type /Pages /Kids [3 0 R] /Count 1 >>\nendobj\n3 0 obj\n<< /Type /Pages /Parent 2 0 R /Kids [2 0 R] /Count "
            + "1 >>\nendobj" + End);

    [Fact]
    public void A_claim_of_two_thousand_million_pages_is_refused() =>
        Refused(Catalog
            + "2 0 obj\n<< /Type /Pages /Kids [3 0 R] /Count 2147483647 >>\nendobj\n3 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox [0 0 "
            + "9 9] >>\nendobj" + End);

    [Fact]
    public void Ten_thousand_real_pages_are_refused()
    {
        var pdf = new StringBuilder(Catalog);
        pdf.Append("2 0 obj\n<< /Type /Pages /Count 10000 /Kids [").AppendJoin(' ', Enumerable.Range(3, 10_000).Select(n => $"{n} 0 R"))
            .Append("] >>\nendobj\n");
        for (var n = 3; n < 10_003; n++)
            pdf.Append(null, $"{n} 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] >>\nendobj\n");
        Refused(pdf + End);
    }

    [Fact]
    public void Dictionaries_inside_dictionaries_without_end_are_refused() =>
        Refused(Catalog + "2 0 obj\n" + string.Concat(Enumerable.Repeat("<< /A ", 100_000)) + "\nendobj" + End);

    [Fact]
    public void A_stream_that_claims_more_than_the_file_holds_is_refused() =>
        Refused(Catalog
            + "2 0 obj\n<< /Type /Pages /Kids [3 0 R] /Count 1 >>\nendobj\n3 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] "
            + "/Contents 4 0 R >>\nendobj\n4 0 obj\n<< /Length 2147483647 >>\nstream\nBT ET\nendstream\nendobj" + End);

    [Fact]
    public void A_length_that_names_its_own_stream_is_refused() =>
        Refused(Catalog
            + "2 0 obj\n<< /Type /Pages /Kids [3 0 R] /Count 1 >>\nendobj\n3 0 obj\n<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] "
            + "/Contents 4 0 R >>\nendobj\n4 0 obj\n<< /Length 4 0 R >>\nstream\nBT ET\nendstream\nendobj" + End);

    // Nothing to read in any of these: what must not happen is a crash, a hang, or an answer.
    private static void Refused(string pdf) =>
        Assert.StartsWith("label.pdf",
            Assert.Throws<InputException>(() => PdfLabelReader.Read(Encoding.Latin1.GetBytes(pdf), "label.pdf")).Message);
}
