namespace LabelForge.Lots;

/// <summary>Reads a lot code from what a person wrote, and says what is wrong where it cannot be one.</summary>
internal static class LotCodeReader
{
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
            return Parsed<LotCode>.Refused("lot.empty");

        foreach (var character in code)
        {
            if (!LotAlphabet.Allows(character))
                return Parsed<LotCode>.Refused(LotAlphabet.LikelyDigit(character) is { } digit
                    ? new Problem("lot.character-for-digit", ("character", character), ("digit", digit), ("letters", Letters))
                    : new Problem("lot.character", ("character", character), ("letters", Letters)));
        }

        if (code.Length is not (8 or 9))
            return Parsed<LotCode>.Refused("lot.length", ("text", text.Trim()), ("count", code.Length));

        var date = code[..5];
        var batch = code[^3..^1];
        var wrongShape = Shape(date, batch);
        if (wrongShape is not null)
            return Parsed<LotCode>.Refused(wrongShape);

        if (!Iso7064Mod37_2.Verifies(code))
        {
            return Parsed<LotCode>.Refused("lot.check-character", ("text", text.Trim()));
        }

        return Day(date, batch, code, text);
    }

    private static string Letters => string.Join(' ', LotAlphabet.Letters.AsEnumerable());

    private static Problem? Shape(string date, string batch)
    {
        if (!char.IsAsciiDigit(date[0]) || !char.IsAsciiDigit(date[1]))
            return new Problem("lot.not-a-year", ("written", date[..2]));
        if (!LotAlphabet.Months.Contains(date[2]))
            return new Problem("lot.not-a-month", ("written", date[2]),
                ("months", string.Join(' ', LotAlphabet.Months.AsEnumerable())));
        if (!char.IsAsciiDigit(date[3]) || !char.IsAsciiDigit(date[4]))
            return new Problem("lot.not-a-day", ("written", date[3..]));
        if (!char.IsAsciiDigit(batch[0]) || !char.IsAsciiDigit(batch[1]))
            return new Problem("lot.not-a-batch", ("written", batch));
        return null;
    }

    private static Parsed<LotCode> Day(string date, string batch, string code, string text)
    {
        var year = 2000 + int.Parse(date[..2], CultureInfo.InvariantCulture);
        var month = LotAlphabet.Months.IndexOf(date[2]) + 1;
        var day = int.Parse(date[3..], CultureInfo.InvariantCulture);
        if (day < 1 || day > DateTime.DaysInMonth(year, month))
        {
            return Parsed<LotCode>.Refused("lot.no-such-day", ("date", date), ("day", day), ("month", month), ("year", year));
        }

        var number = int.Parse(batch, CultureInfo.InvariantCulture);
        if (number == 0)
            return Parsed<LotCode>.Refused("lot.batch-zero");

        var lot = new LotCode(new DateOnly(year, month, day), number);
        // One lot has one code: a joint letter where none is needed (or another than the first that serves) is a mistake.
        return lot.Compact == code
            ? Parsed<LotCode>.Of(lot)
            : Parsed<LotCode>.Refused("lot.not-as-written", ("text", text.Trim()));
    }
}
