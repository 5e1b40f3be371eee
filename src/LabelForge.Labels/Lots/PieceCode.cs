namespace LabelForge.Lots;

/// <summary>The lot of a piece, from whatever code is on it: the lot itself, a GS1 element
/// string, or the address in a GS1 QR code.</summary>
public static class PieceCode
{
    private const string LotIdentifier = "10";
    private const string SerialIdentifier = "21";
    private const int LotLength = 9;

    /// <summary>Reads the lot.</summary>
    /// <param name="text">As typed, or as a scanner or a camera reads it.</param>
    /// <returns>The lot, or what is wrong with the text.</returns>
    public static Parsed<LotCode> LotOf(string text)
    {
        var trimmed = text.Trim();
        var lot = LotCode.Parse(trimmed);
        if (lot.IsValue)
            return lot;
        if (Uri.TryCreate(trimmed, UriKind.Absolute, out var address) && address.Scheme is "http" or "https")
        {
            // GS1 Digital Link: /01/GTIN/10/LOT, any serial behind it.
            var parts = address.AbsolutePath.Split('/', StringSplitOptions.RemoveEmptyEntries);
            var at = Array.IndexOf(parts, LotIdentifier);
            return at >= 0 && at + 1 < parts.Length ? LotCode.Parse(Uri.UnescapeDataString(parts[at + 1])) : lot;
        }
        var elements = Gs1ElementString.Parse(trimmed);
        if (elements.IsValue)
            return elements.Value.Value(LotIdentifier) is { } within ? Within(within) : Parsed<LotCode>.Refused("lot.none-in-code");
        // What begins as an element string is told as one.
        return trimmed is ['(' or ']', ..] ? Parsed<LotCode>.Refused(elements.Problem) : lot;
    }

    // A scanner that types like a keyboard may leave out the separator, and the serial number runs on behind the lot. A lot has
    // nine characters as written, and its check character tells whether these are one.
    private static Parsed<LotCode> Within(string value)
    {
        var whole = LotCode.Parse(value);
        return !whole.IsValue
            && value.Length > LotLength
            && value.AsSpan(LotLength).StartsWith(SerialIdentifier)
            && LotCode.Parse(value[..LotLength]) is { IsValue: true } lot
            ? lot : whole;
    }
}
