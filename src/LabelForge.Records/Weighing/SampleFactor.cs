using MathNet.Numerics.Distributions;

namespace LabelForge.Records.Weighing;

/// <summary>The factor that a sample's standard deviation is multiplied by to allow for chance:
/// Student's t over the root of the number.</summary>
/// <remarks>
/// At 97.5 % these are the sample correction factors of NIST Handbook 133, Table 2-1 (0.635 at 12, 0.422 at 24); at 99.5 % the
/// factors of Directive 76/211/EEC, Annex II, 2.3 (0.503 at 30, 0.379 at 50).
/// </remarks>
public static class SampleFactor
{
    /// <summary>The confidence, one-sided, of the US average test.</summary>
    public const double Us = 0.975;

    /// <summary>The confidence, one-sided, of the directive's average test.</summary>
    public const double Eu = 0.995;

    /// <summary>The factor for a sample.</summary>
    /// <param name="pieces">How many were weighed, at least 2.</param>
    /// <param name="confidence">One-sided, between 0.5 and 1.</param>
    public static decimal Of(int pieces, double confidence)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pieces, 2);
        return (decimal)(StudentT.InvCDF(0, 1, pieces - 1, confidence) / Math.Sqrt(pieces));
    }
}
