using System.Text.RegularExpressions;

namespace LabelForge.Checks.Reading;

/// <summary>A lot code as it stands on a label.</summary>
public sealed record LotRead(TextSpan Span, string Code);

/// <summary>Finds a lot or batch code: <c>Lot 26R25-01E</c>, <c>Batch no. 12</c>, <c>L:0426</c>, <c>#1204</c>.</summary>
public static partial class LotReader
{
    /// <summary>The code, or null.</summary>
    public static LotRead? Read(string text)
    {
        foreach (var pattern in new[] { Named(), Short() })
        {
            // A code has a digit; "lot of love" and "small batch" have none.
            foreach (Match match in pattern.Matches(text))
            {
                var code = match.Groups["code"].Value.TrimEnd('.', ',', ';');
                if (code.Any(char.IsAsciiDigit))
                    return new(new TextSpan(match.Index, match.Length), code);
            }
        }
        return null;
    }

    [GeneratedRegex(@"(?<![\p{L}])(?:lotto|lote|lot|batchnummer|batch|chargen?|ch\.?[\s-]?b\.?|losnummer|los(?=\s*(?:nr|[:#.]))|partij|partia|parti|erä|šarže|šarža|serija|tétel(?:szám)?|gyártási\s+szám|партида|παρτίδα|l\s?/\s?n|b\s?/\s?n)\s*(?:no\b\.?|nr\b\.?|[-\s]?nr\b\.?|numero\b|número\b|numéro\b|n[°º]|č\.|number\b|code\b|id\b|#|nº)?\s*[:#.]?\s*(?<code>[A-Z0-9][A-Z0-9./_-]{0,24})", RegexOptions.IgnoreCase)]
    private static partial Regex Named();

    [GeneratedRegex(@"(?:(?<![\p{L}\d.])L\s?[:#]\s?|(?<=^|[\n|•·]\s{0,4})(?:#|L(?=\d{3}))\s?)(?<code>[A-Z0-9][A-Z0-9./_-]{1,24})(?![\p{L}\d])")]
    private static partial Regex Short();
}
