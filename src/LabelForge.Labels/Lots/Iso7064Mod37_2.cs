namespace LabelForge.Lots;

/// <summary>The check character of ISO/IEC 7064, MOD 37-2: one character that makes the whole weigh 1 modulo 37.</summary>
/// <remarks>
/// Each character has the value of its place in <see cref="Alphabet"/>; the weights are powers of 2 from the right.
/// Because 37 is prime and 2 is a primitive root of it, every single substitution and every transposition of two
/// neighbours changes the sum. Source: ISO/IEC 7064:2003, pure system MOD 37-2 (from memory).
/// </remarks>
public static class Iso7064Mod37_2
{
    /// <summary>The characters in order of value, 0 to 36. The last, *, stands only as a check character.</summary>
    public const string Alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

    private const int Modulus = 37;

    /// <summary>The check character for a text.</summary>
    /// <param name="body">One or more of 0-9 and A-Z; small letters are not taken.</param>
    /// <returns>One of 0-9, A-Z and *.</returns>
    /// <exception cref="ArgumentException">Empty, or holds another character.</exception>
    public static char CheckCharacter(string body)
    {
        ArgumentException.ThrowIfNullOrEmpty(body);
        var sum = 0;
        foreach (var character in body)
        {
            var value = Alphabet.IndexOf(character);
            if (value is < 0 or Modulus - 1)
                throw new ArgumentException($"'{character}' is not one of 0-9 and A-Z.", nameof(body));
            sum = (sum + value) * 2 % Modulus;
        }

        return Alphabet[(Modulus + 1 - sum) % Modulus];
    }

    /// <summary>Whether a text with its check character at the end is right; false also where it holds other characters.</summary>
    public static bool Verifies(string whole)
    {
        ArgumentNullException.ThrowIfNull(whole);
        if (whole.Length < 2)
            return false;
        var sum = 0;
        for (var i = 0; i < whole.Length; i++)
        {
            var value = Alphabet.IndexOf(whole[i]);
            var mayBeStar = i == whole.Length - 1;
            if (value < 0 || (value == Modulus - 1 && !mayBeStar))
                return false;
            sum = (sum * 2 + value) % Modulus;
        }

        return sum == 1;
    }
}
