using LabelForge.Papers;
using LabelForge.Quantities;
using LabelForge.Records.Weighing;

namespace LabelForge.UseCases;

/// <summary>What weighed pieces say of their declared net quantity.</summary>
/// <param name="Test">Whether they meet it.</param>
/// <param name="Largest">The largest that could be declared.</param>
/// <param name="Notes">What the sample cannot say, in sentences.</param>
public sealed record WeighedPieces(NetContentTest Test, LargestDeclaration Largest, IReadOnlyList<string> Notes)
{
    /// <summary>Whether the average and each piece pass.</summary>
    public bool Passes => Test.AveragePasses && Test.IndividualPasses;
}

/// <summary>Holds weighed pieces against what their label declares.</summary>
public static class WeighPieces
{
    /// <summary>Judges a sample.</summary>
    /// <param name="market">The market by whose tests.</param>
    /// <param name="declared">What the label declares.</param>
    /// <param name="sample">The weighed pieces, what empty packages weigh taken off.</param>
    /// <param name="lotSize">How many pieces the whole lot has; null where it is not known.</param>
    /// <param name="on">The day to judge by.</param>
    /// <param name="words">The language of what is said; English where none is given.</param>
    /// <exception cref="Measures.InputException">The market has no test of net contents, or the sample is not one of masses.</exception>
    public static WeighedPieces Judge(Market market, NetAmount declared, WeighedSample sample, int? lotSize, DateOnly on,
        PaperWords? words = null)
    {
        var test = NetContentTest.Of(market, declared, sample, lotSize);
        return new(test, LargestDeclaration.Of(market, sample, on, declared.System, lotSize, words),
            SampleNotes.Of(test, lotSize, words));
    }
}
