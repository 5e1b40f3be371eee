using LabelForge.Markets;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Proofs;
using UglyToad.PdfPig;

namespace LabelForge.Print.Tests;

public sealed class ProofTests : IDisposable
{
    private static readonly LabelLayout Label = LabelFitter.Fit(LabelDesign.Load("bar-2x4"), Samples.Bar, Samples.Block()).OrRefuse();

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_proof_names_every_rule_with_its_source_and_what_the_label_measures()
    {
        using var pdf = Written(Label, Market.Us);
        var text = Text(pdf);
        Assert.NotEmpty(Label.Constraints);
        foreach (var rule in Label.Constraints)
        {
            Assert.Contains(rule.Source.Split(' ', ';')[0], text);
            Assert.Contains(FormattableString.Invariant($"{rule.Measured:0.##} {rule.Unit}"), text);
        }
        Assert.Contains("21 CFR 701.13(i)", text);
    }

    [Fact]
    public void The_label_stands_on_its_proof_at_actual_size_and_enlarged()
    {
        using var pdf = Written(Label, Market.Us);
        var name = Label.Lines.First(l => l.Text.Text.StartsWith("Fen", StringComparison.Ordinal));
        var heights = pdf.GetPages().SelectMany(p => p.Letters)
            .Where(l => l.Value == "F" && l.FontName!.Contains("SemiBold", StringComparison.Ordinal))
            .Select(l => l.BoundingBox.Height / (name.Text.Face.CapitalHeight * name.Text.Size)).ToList();
        Assert.Contains(heights, h => Math.Abs(h - 1) < 0.01);
        Assert.Contains(heights, h => h > 1.5 && Math.Abs(h * 10 - Math.Round(h * 10)) < 0.1);
    }

    [Fact]
    public void A_label_as_large_as_the_paper_is_drawn_smaller_on_its_proof()
    {
        var large = Label with
        {
            Design = Label.Design with { Width = Measures.Length.FromInches(8.5m), Height = Measures.Length.FromInches(11m) },
        };
        using var pdf = Written(large, Market.Us);
        Assert.DoesNotContain("Actual size", Text(pdf));
        Assert.All(pdf.GetPages().SelectMany(p => p.Letters), l => Assert.InRange(l.StartBaseLine.Y, 20, 792));
    }

    [Theory]
    [InlineData("us", 612, 792)]
    [InlineData("eu", 595.28, 841.89)]
    public void A_proof_is_on_the_paper_of_its_market(string market, double width, double height)
    {
        using var pdf = Written(Label, Market.Named(market));
        Assert.Equal((width, height), (Math.Round(pdf.GetPage(1).Width, 2), Math.Round(pdf.GetPage(1).Height, 2)));
    }

    private static string Text(PdfDocument pdf) => string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));

    private PdfDocument Written(LabelLayout label, Market market)
    {
        var path = Path.Combine(_folder, "proof.pdf");
        ProofSheet.WritePdf(path, [label], market, new DateOnly(2026, 11, 25), Samples.Info);
        return PdfDocument.Open(path);
    }
}
