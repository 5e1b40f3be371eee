using System.Numerics;

namespace LabelForge.Measures;

/// <summary>
/// A quotient of two whole numbers, without rounding: for the few places where a law draws a line and a repeating decimal
/// must not decide. The default value is 0.
/// </summary>
public readonly record struct Fraction : IComparable<Fraction>
{
    private readonly BigInteger _underLessOne;

    private Fraction(BigInteger top, BigInteger under)
    {
        var common = BigInteger.GreatestCommonDivisor(top, under) * under.Sign;
        (Top, _underLessOne) = (top / common, under / common - 1);
    }

    /// <summary>What stands over the line, in lowest terms; it carries the sign.</summary>
    public BigInteger Top { get; }

    /// <summary>What stands under the line, in lowest terms; 1 or more.</summary>
    public BigInteger Under => _underLessOne + 1;

    /// <summary>A decimal as the quotient that it is: a whole number over a power of ten.</summary>
    public static Fraction Of(decimal figure)
    {
        Span<int> bits = stackalloc int[4];
        decimal.GetBits(figure, bits);
        var whole = new BigInteger((uint)bits[2]) << 64 | new BigInteger((uint)bits[1]) << 32 | (uint)bits[0];
        return new Fraction(bits[3] < 0 ? -whole : whole, BigInteger.Pow(10, figure.Scale));
    }

    /// <summary>One decimal over another.</summary>
    /// <exception cref="DivideByZeroException">The second is 0.</exception>
    public static Fraction Of(decimal top, decimal under) => Of(top) / Of(under);

    /// <inheritdoc/>
    public int CompareTo(Fraction other) => (Top * other.Under).CompareTo(other.Top * Under);

    /// <summary>The sum.</summary>
    public static Fraction operator +(Fraction a, Fraction b) => new(a.Top * b.Under + b.Top * a.Under, a.Under * b.Under);

    /// <summary>The difference.</summary>
    public static Fraction operator -(Fraction a, Fraction b) => new(a.Top * b.Under - b.Top * a.Under, a.Under * b.Under);

    /// <summary>The product.</summary>
    public static Fraction operator *(Fraction a, Fraction b) => new(a.Top * b.Top, a.Under * b.Under);

    /// <summary>The quotient.</summary>
    /// <exception cref="DivideByZeroException">The second is 0.</exception>
    public static Fraction operator /(Fraction a, Fraction b) =>
        b.Top.IsZero ? throw new DivideByZeroException() : new(a.Top * b.Under, a.Under * b.Top);

    /// <summary>Whether the first is less.</summary>
    public static bool operator <(Fraction a, Fraction b) => a.CompareTo(b) < 0;

    /// <summary>Whether the first is more.</summary>
    public static bool operator >(Fraction a, Fraction b) => a.CompareTo(b) > 0;

    /// <summary>Whether the first is not more.</summary>
    public static bool operator <=(Fraction a, Fraction b) => a.CompareTo(b) <= 0;

    /// <summary>Whether the first is not less.</summary>
    public static bool operator >=(Fraction a, Fraction b) => a.CompareTo(b) >= 0;
}
