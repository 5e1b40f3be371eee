using System.Globalization;
using LabelForge.Measures;

namespace LabelForge.Lots;

/// <summary>Reads a lot code from what a person wrote, and says what is wrong where it cannot be one.</summary>
internal static class LotCodeReader
{
    private const string Form =
        "Write the two digits of the year, the month's letter, the day, a hyphen, the batch and the check character, as in 26R25-072.";

    public static Parsed<LotCode> Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        // Hyphens are also U+2010 to U+2013 and the minus sign: word processors put them in unasked.
        var code = new string([.. text.Where(c => !char.IsWhiteSpace(c) && c is not ('-' or '\u2212' or (>= '\u2010' and <= '\u2013')))])
            .ToUpperInvariant();
        // Bags and labels say "Lot 26R25-072". No code holds an L or an O, so the word cannot be part of one.
        if (code.StartsWith("LOT", StringComparison.Ordinal))
            code = code[3..].TrimStart(':', '.', '#');
        if (code.Length == 0)
            return Parsed<LotCode>.Refused("There is no lot code.", Form);

        foreach (var character in code)
        {
            if (!LotAlphabet.Allows(character))
                return Parsed<LotCode>.Refused($"'{character}' never stands in a lot code.", Instead(character));
        }

        if (code.Length is not (8 or 9))
            return Parsed<LotCode>.Refused($"'{text.Trim()}' has {code.Length} characters; a lot code has 8 or 9 beside its hyphen.", Form);

        var date = code[..5];
        var batch = code[^3..^1];
        var wrongShape = Shape(date, batch);
        if (wrongShape is not null)
            return Parsed<LotCode>.Refused(wrongShape, Form);

        if (!Iso7064Mod37_2.Verifies(code))
        {
            return Parsed<LotCode>.Refused(
                $"The check character of '{text.Trim()}' does not fit: a character is wrong, or two have changed places.",
                "Read the code again from the bag, character by character.");
        }

        return Day(date, batch, code, text);
    }

    private static string Instead(char character) => LotAlphabet.LikelyDigit(character) is { } digit
        ? $"Read it again from the bag: it may be the digit {digit}. The letters used are {string.Join(' ', LotAlphabet.Letters.AsEnumerable())}."
        : $"Read it again from the bag. The letters used are {string.Join(' ', LotAlphabet.Letters.AsEnumerable())}.";

    private static string? Shape(string date, string batch)
    {
        if (!char.IsAsciiDigit(date[0]) || !char.IsAsciiDigit(date[1]))
            return $"'{date[..2]}' is not a year: the code starts with two digits.";
        if (!LotAlphabet.Months.Contains(date[2]))
            return $"'{date[2]}' is no month: the third character is one of {string.Join(' ', LotAlphabet.Months.AsEnumerable())}, January to December.";
        if (!char.IsAsciiDigit(date[3]) || !char.IsAsciiDigit(date[4]))
            return $"'{date[3..]}' is not a day of the month: two digits stand after the month's letter.";
        if (!char.IsAsciiDigit(batch[0]) || !char.IsAsciiDigit(batch[1]))
            return $"'{batch}' is not a batch number: two digits stand before the check character.";
        return null;
    }

    private static Parsed<LotCode> Day(string date, string batch, string code, string text)
    {
        var year = 2000 + int.Parse(date[..2], CultureInfo.InvariantCulture);
        var month = LotAlphabet.Months.IndexOf(date[2]) + 1;
        var day = int.Parse(date[3..], CultureInfo.InvariantCulture);
        if (day < 1 || day > DateTime.DaysInMonth(year, month))
        {
            return Parsed<LotCode>.Refused(
                $"'{date}' would be day {day} of month {month} of {year}, which is not in the calendar.",
                "Read the date again from the bag.");
        }

        var number = int.Parse(batch, CultureInfo.InvariantCulture);
        if (number == 0)
            return Parsed<LotCode>.Refused("Batch 00 does not exist.", "Batches of a day count from 01.");

        var lot = new LotCode(new DateOnly(year, month, day), number);
        // One lot has one code: a joint letter where none is needed (or another than the first that serves) is a mistake.
        return lot.Compact == code
            ? Parsed<LotCode>.Of(lot)
            : Parsed<LotCode>.Refused(
                $"'{text.Trim()}' is not how this lot is written: the character between the day and the batch is wrong.",
                "Read the code again from the bag, character by character.");
    }
}
