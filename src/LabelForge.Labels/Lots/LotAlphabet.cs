namespace LabelForge.Lots;

/// <summary>Which letters a lot code may use, and how they are said.</summary>
/// <remarks>
/// Left out because a hand makes them look like a digit or like one another: B (8), D (0), G (6), I (1), L (1),
/// O (0), Q (0), S (5), U (V), V (U), Z (2). Common practice; no standard lists exactly these.
/// </remarks>
internal static class LotAlphabet
{
    /// <summary>The letters that may stand in a lot code.</summary>
    public const string Letters = "ACEFHJKMNPRTWXY";

    /// <summary>January to December, in alphabetical order so that written codes sort by date.</summary>
    public const string Months = "ACEFHJKMNPRT";

    /// <summary>Letters that take the hyphen's place, tried in this order, where the check
    /// character would be one that can be misread.</summary>
    public const string Joints = "XYWTRPNM";

    // ICAO Annex 10, volume II, 5.2.1.3 (from memory); figures are said as plain English.
    private static readonly Dictionary<char, string> Words = new()
    {
        ['0'] = "zero",
        ['1'] = "one",
        ['2'] = "two",
        ['3'] = "three",
        ['4'] = "four",
        ['5'] = "five",
        ['6'] = "six",
        ['7'] = "seven",
        ['8'] = "eight",
        ['9'] = "nine",
        ['A'] = "Alfa",
        ['C'] = "Charlie",
        ['E'] = "Echo",
        ['F'] = "Foxtrot",
        ['H'] = "Hotel",
        ['J'] = "Juliett",
        ['K'] = "Kilo",
        ['M'] = "Mike",
        ['N'] = "November",
        ['P'] = "Papa",
        ['R'] = "Romeo",
        ['T'] = "Tango",
        ['W'] = "Whiskey",
        ['X'] = "X-ray",
        ['Y'] = "Yankee",
    };

    /// <summary>Whether a character, already in capitals, may stand in a lot code.</summary>
    public static bool Allows(char character) => char.IsAsciiDigit(character) || Letters.Contains(character);

    /// <summary>How a character of a lot code is said over the phone.</summary>
    public static string Word(char character) => Words[character];

    /// <summary>The digit that a letter left out was most likely meant for, if any.</summary>
    public static char? LikelyDigit(char letter) => letter switch
    {
        'I' or 'L' => '1',
        'O' or 'Q' or 'D' => '0',
        'S' => '5',
        'Z' => '2',
        'B' => '8',
        'G' => '6',
        _ => null,
    };
}
