namespace LabelForge.Records.Books;

/// <summary>Amounts in the books: whole millionths of a gram or of a piece, so that any database sums them exactly.</summary>
/// <remarks>
/// Finer amounts come of converting ounces, not of a scale. What comes in is rounded up and what goes out down, so that the
/// parts of a bottle are never more than the bottle.
/// </remarks>
internal static class Millionths
{
    /// <summary>So many in one.</summary>
    public const decimal InOne = 1_000_000m;

    /// <summary>The largest amount of one entry: a thousand tonnes. Above it nothing is rounded, only refused.</summary>
    public const decimal Largest = 1_000_000_000m;

    /// <summary>Less than this is left on the wall of a bottle and no longer in stock: a milligram.</summary>
    public const decimal Rest = 0.001m;

    /// <summary>Up to the next whole millionth.</summary>
    public static decimal Up(decimal amount) => Math.Abs(amount) > Largest ? amount : Math.Ceiling(amount * InOne) / InOne;

    /// <summary>Down to the last whole millionth; below zero towards less.</summary>
    public static decimal Down(decimal amount) => Math.Abs(amount) > Largest ? amount : Math.Floor(amount * InOne) / InOne;
}
