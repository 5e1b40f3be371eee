using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>Several pieces in one package: number, what each holds, and the total (16 CFR 500.27 and 500.28). A total may be off by
/// half of its last figure, and by half of the last figure of each piece.</summary>
public sealed class TotalTests
{
    [Theory]
    [InlineData("6 x 15 g = 90 g", null)]
    [InlineData("6 x 15 g = 93 g", null)]
    [InlineData("6 x 15 g = 94 g", "90 g|94 g")]
    [InlineData("6 x 15 g = 86 g", "90 g|86 g")]
    [InlineData("6 x 15 g = 87 g", null)]
    [InlineData("3 × 100 g (300 g)", null)]
    [InlineData("3 × 100 g (400 g)", "300 g|400 g")]
    [InlineData("2 x 1 kg = 2.0 kg", null)]
    [InlineData("2 x 0.50 kg = 1.00 kg", null)]
    [InlineData("2 x 0.50 kg = 1.02 kg", "1000 g|1020 g")]
    [InlineData("4 x 12.5 ml = 50 ml", null)]
    [InlineData("4 x 12.5 ml = 51 ml", "50 mL|51 mL")]
    [InlineData("4 * 12,5 ml e 50 ml", null)]
    [InlineData("2 x 1.0 L: total 2.5 L", "2000 mL|2500 mL")]
    public void Pieces_alike_make_their_total(string written, string? told) => Holds(Totals(written), told);

    [Theory]
    [InlineData("3 bars, 1.5 oz (42.5 g) each, total net wt 4.5 oz (127 g)", null)]
    [InlineData("3 bars, 1.5 oz (42.5 g) each, total net wt 4.5 oz (128 g)", null)]
    [InlineData("3 bars, 1.5 oz (42.5 g) each, total net wt 4.6 oz (129 g)", "127.5 g|129 g")]
    [InlineData("3 bars, 1.5 oz (42.5 g) each, total net wt 4.4 oz (126 g)", "127.5 g|126 g")]
    [InlineData("2 lip balms, 0.15 oz (4.2 g) each; 1 soap bar, 4 oz (113 g); total 4.3 oz (121 g)", null)]
    [InlineData("2 lip balms, 0.15 oz (4.2 g) each; 1 soap bar, 4 oz (113 g); total 4.3 oz (130 g)", "121.4 g|130 g")]
    [InlineData("2 lip balms, 0.15 oz (4.2 g) each; a surprise; total 4.3 oz (130 g)", null)]
    public void Pieces_and_each_make_their_total(string written, string? told) => Holds(Totals(written), told);

    // A soap is under 16 CFR 500.27, a cosmetic under 21 CFR 701.13(g) alone.
    [Theory]
    [InlineData(SoldAs.Soap)]
    [InlineData(SoldAs.Cosmetic)]
    public void A_total_that_is_missing_is_asked_for(SoldAs soldAs)
    {
        var found = Found("4 soap bars, 2 oz (56 g) each", soldAs).Where(f => f.Rule == "net-quantity.missing").ToArray();
        Assert.Equal(soldAs == SoldAs.Soap,
            found.Any(f => f.Message.Contains("56 g", StringComparison.Ordinal) && f.Severity == Severity.Must));
    }

    [Theory]
    [InlineData("Soap, 2 oz (56 g) each")]
    [InlineData("1 bar, 2 oz (56 g) each")]
    public void One_piece_needs_no_total(string written) =>
        Assert.DoesNotContain(Found(written, SoldAs.Soap), f => f.Rule == "net-quantity.missing");

    private static void Holds(Finding[] found, string? told)
    {
        Assert.Equal(told is null ? 0 : 1, found.Length);
        foreach (var figure in told?.Split('|') ?? [])
            Assert.Contains(figure, found[0].Message, StringComparison.Ordinal);
    }

    private static Finding[] Totals(string written) =>
        [.. Found(written, SoldAs.Cosmetic).Where(f => f.Rule == "net-quantity.overstated")];

    private static Finding[] Found(string written, SoldAs soldAs) => CheckedLabel.Found(
        $"Bar soap\n{written}\nIngredients: Sodium Palmate, Water.\nExample Works, 12 Mill Road, Fairport, ME 04999\nLot 1\n",
        Market.Us, soldAs: soldAs);
}
