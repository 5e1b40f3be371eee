namespace LabelForge.Lots;

/// <summary>
/// A lot: the day a batch was made and its number on that day, with a check character, as in <c>26R25-072</c>.
/// The default value is batch 1 of 1 January 2000.
/// </summary>
/// <remarks>
/// Written: two digits of the year, a letter for the month (A C E F H J K M N P R T), two digits of the day, a hyphen,
/// two digits of the batch, and the check character of ISO/IEC 7064 MOD 37-2 over all of it but the hyphen. Where that
/// character would be * or a letter that can be misread, a letter (X, else Y, ...) takes the hyphen's place and is part
/// of what is checked. So each lot has exactly one code, each code is nine characters as written, and each verifies by
/// plain MOD 37-2. Codes sort by date as text.
/// </remarks>
public readonly record struct LotCode : IComparable<LotCode>
{
    /// <summary>The first day that a code can carry; the year is written with two digits.</summary>
    public static readonly DateOnly FirstDay = new(2000, 1, 1);

    /// <summary>The last day that a code can carry.</summary>
    public static readonly DateOnly LastDay = new(2099, 12, 31);

    /// <summary>The highest batch number of a day.</summary>
    public const int MostBatches = 99;

    // Both are counted from their first value, so that the default is a lot and not nonsense.
    private readonly ushort days;
    private readonly byte batchesBefore;

    /// <summary>The lot of a batch.</summary>
    /// <param name="made">The day it was made, from 2000 to 2099.</param>
    /// <param name="batch">Its number on that day, 1 to 99.</param>
    /// <exception cref="ArgumentOutOfRangeException">A day or a number outside these.</exception>
    public LotCode(DateOnly made, int batch)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(made, FirstDay);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(made, LastDay);
        ArgumentOutOfRangeException.ThrowIfLessThan(batch, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(batch, MostBatches);
        days = (ushort)(made.DayNumber - FirstDay.DayNumber);
        batchesBefore = (byte)(batch - 1);
    }

    /// <summary>The day the batch was made.</summary>
    public DateOnly Made => FirstDay.AddDays(days);

    /// <summary>The batch's number on that day, 1 to 99.</summary>
    public int Batch => batchesBefore + 1;

    /// <summary>The code without the hyphen, 8 or 9 characters: what MOD 37-2 verifies.</summary>
    public string Compact => Written().Replace("-", "", StringComparison.Ordinal);

    /// <summary>The check character, the last of the code.</summary>
    public char CheckCharacter => Written()[^1];

    /// <summary>The code in words to read over the phone: "two six Romeo two five, zero seven two".</summary>
    public string Spoken
    {
        get
        {
            var written = Written();
            static string Say(IEnumerable<char> part) => string.Join(' ', part.Select(LotAlphabet.Word));
            var joint = written[5] == '-' ? "" : $" {LotAlphabet.Word(written[5])},";
            return $"{Say(written[..5])},{joint} {Say(written[6..])}";
        }
    }

    /// <summary>Reads a lot code as a person writes it: small or capital letters, with or without
    /// spaces, hyphens and the word "Lot" before it.</summary>
    /// <returns>The lot, or what is wrong with the text; a code with one wrong character or two
    /// neighbours swapped is always refused.</returns>
    public static Parsed<LotCode> Parse(string text) => LotCodeReader.Read(text);

    /// <inheritdoc/>
    public int CompareTo(LotCode other) => (Made, Batch).CompareTo((other.Made, other.Batch));

    /// <summary>The code as written on a bag, nine characters: <c>26R25-072</c>.</summary>
    public override string ToString() => Written();

    private string Written()
    {
        var date = string.Create(CultureInfo.InvariantCulture, $"{Made.Year % 100:00}{LotAlphabet.Months[Made.Month - 1]}{Made.Day:00}");
        var batch = Batch.ToString("00", CultureInfo.InvariantCulture);
        var check = Iso7064Mod37_2.CheckCharacter(date + batch);
        if (LotAlphabet.Allows(check))
            return $"{date}-{batch}{check}";

        foreach (var joint in LotAlphabet.Joints)
        {
            check = Iso7064Mod37_2.CheckCharacter(date + joint + batch);
            if (LotAlphabet.Allows(check))
                return $"{date}{joint}{batch}{check}";
        }

        throw new InvalidOperationException($"No letter gives {date} {batch} a check character that reads well.");
    }
}
