using System.Numerics;

namespace LabelForge.Records.Money;

/// <summary>
/// Whole numbers in place of a material's masses: all of them times one factor, which loses nothing where a common
/// denominator is small enough for the solver.
/// </summary>
/// <param name="Factor">What a gram, or a piece, is multiplied by.</param>
/// <param name="IsExact">Whether nothing is rounded.</param>
internal sealed record BuyScale(BigInteger Factor, bool IsExact)
{
    // A hundred thousand pieces, or ten thousand of each of many packs, times this stays far inside 64 bits.
    private static readonly BigInteger Largest = 2_000_000_000_000;

    /// <summary>The factor for one material.</summary>
    public static BuyScale Of(BuyProblem problem, BuyMaterial material)
    {
        (decimal Amount, int Over)[] amounts =
        [
            (material.Stock, 1),
            .. material.Packs.Select(p => (p.Amount, 1)),
            .. problem.Products.Select(p => (p.PerBatch.GetValueOrDefault(material.Id), p.Pieces)),
        ];
        var factor = amounts.Select(a => Fraction(a.Amount, a.Over).Under)
            .Aggregate(BigInteger.One, (all, next) => all / BigInteger.GreatestCommonDivisor(all, next) * next);
        var most = amounts.Max(a => Math.Abs(a.Amount / a.Over));
        if (new BigInteger(Math.Ceiling(most)) * factor <= Largest)
            return new BuyScale(factor, true);
        return new BuyScale(BigInteger.Max(1, Largest / (new BigInteger(Math.Ceiling(most)) + 1)), false);
    }

    /// <summary>An amount over so many pieces as a whole number, rounded up or down where it is none.</summary>
    public long Whole(decimal amount, int over, bool up)
    {
        var (top, under) = Fraction(amount, over);
        var whole = BigInteger.DivRem(top * Factor, under, out var rest);
        return (long)(up && rest > 0 ? whole + 1 : whole);
    }

    private static (BigInteger Top, BigInteger Under) Fraction(decimal amount, int over)
    {
        // A decimal is a whole number over a power of ten.
        var under = BigInteger.Pow(10, amount.Scale);
        var top = Unscaled(amount);
        under *= over;
        var common = BigInteger.GreatestCommonDivisor(top, under);
        return common.IsZero ? (0, 1) : (top / common, under / common);
    }

    private static BigInteger Unscaled(decimal amount)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(amount, bits);
        var whole = new BigInteger((uint)bits[2]) << 64 | new BigInteger((uint)bits[1]) << 32 | (uint)bits[0];
        return bits[3] < 0 ? -whole : whole;
    }
}
