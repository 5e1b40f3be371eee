using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Composition.Asking;

/// <summary>What a material's list allows once a supplier has answered.</summary>
internal static class Answer
{
    // An answer drawn at random is right to some millionths of a millionth: so much is left on either side.
    private const decimal Slack = 1e-9m;

    /// <summary>The list with the share of one constituent known; null where the answer does not fit.</summary>
    public static MaterialModel? Share(MaterialModel material, int constituent, double share)
    {
        var said = material.Part.Constituents[constituent].Share;
        var (low, high) = ((decimal)share - Slack, (decimal)share + Slack);
        return With(material, c => c == constituent
            ? new ShareRange(Clamped(Math.Max(low, said.Low.Fraction)), Clamped(Math.Min(high, said.High.Fraction)))
            : null);
    }

    /// <summary>The list with it known who is over a line; null where some share lies on it, or the answer does not fit.</summary>
    public static MaterialModel? Line(MaterialModel material, ShareLine line, double[] shares)
    {
        var list = material.Part.Constituents;
        if (shares.Any(s => s > (double)line.AtMost && s < (double)line.AtLeast))
            return null;
        return With(material, c => shares[c] <= (double)line.AtMost
            ? new ShareRange(list[c].Share.Low, Clamped(Math.Min(list[c].Share.High.Fraction, line.AtMost)))
            : new ShareRange(Clamped(Math.Max(list[c].Share.Low.Fraction, line.AtLeast)), list[c].Share.High));
    }

    private static Share Clamped(decimal fraction) => Measures.Share.FromFraction(Math.Clamp(fraction, 0, 1));

    private static MaterialModel? With(MaterialModel material, Func<int, ShareRange?> said)
    {
        var list = material.Part.Constituents;
        ImmutableArray<Constituent> answered = [.. list.Select((constituent, c) => said(c) is { } share ? constituent with { Share = share } : constituent)];
        if (answered.Any(c => c.Share.Low.Fraction > c.Share.High.Fraction))
            return null;
        return MaterialModel.TryRead(material.Part with { Constituents = answered });
    }
}
