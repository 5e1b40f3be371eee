namespace LabelForge.Print.Sheets;

/// <summary>Serial numbers from a first to a last, all written with as many digits as the longer of the two.</summary>
/// <param name="First">The first, from 0.</param>
/// <param name="Last">The last, not below the first.</param>
/// <param name="Digits">How many digits each has, up to 9.</param>
public sealed record SerialNumbers(int First, int Last, int Digits)
{
    /// <summary>How many there are.</summary>
    public int Count => Last - First + 1;

    /// <summary>A number as written.</summary>
    /// <param name="index">Counted from 0.</param>
    public string this[int index] => (First + index).ToString(CultureInfo.InvariantCulture).PadLeft(Digits, '0');

    /// <summary>Reads <c>1..500</c>.</summary>
    public static Parsed<SerialNumbers> Parse(string text)
    {
        var parts = text.Split("..").Select(p => p.Trim()).ToArray();
        if (parts is not [{ Length: > 0 and <= 9 } first, { Length: > 0 and <= 9 } last] || !parts.All(p => p.All(char.IsAsciiDigit)))
            return Parsed<SerialNumbers>.Refused("sheet.not-serial-numbers", ("text", text));
        var numbers = new SerialNumbers(int.Parse(first, CultureInfo.InvariantCulture), int.Parse(last, CultureInfo.InvariantCulture),
            Math.Max(first.Length, last.Length));
        return numbers.Count is >= 1 and <= SheetWriter.MostLabels
            ? Parsed<SerialNumbers>.Of(numbers)
            : Parsed<SerialNumbers>.Refused("sheet.too-many-serials", ("text", text), ("count", numbers.Count),
                ("most-labels", SheetWriter.MostLabels));
    }
}
