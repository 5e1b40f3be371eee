namespace LabelForge.Ingredients.Supplied;

/// <summary>A piece of a list taken apart: the name, its share, its footnote marks, its CAS number.</summary>
internal sealed partial record NamePiece(string Name, ShareRange Share, ImmutableArray<string> Signs, bool SaysOrganic, CasNumber? Cas,
    ImmutableArray<string> Remarks)
{
    /// <summary>Takes a piece apart; the name may turn out empty.</summary>
    /// <exception cref="InputException">The figures beside the name cannot be a share.</exception>
    public static NamePiece Of(string piece, Func<string, bool> knows)
    {
        var remarks = ImmutableArray.CreateBuilder<string>();
        var text = Spaces().Replace(PaperText.Whole(piece.Replace('\n', ' '), knows), " ").Trim();
        var signs = Signs_().Matches(text).Select(m => m.Value.Trim()).ToImmutableArray();
        text = Signs_().Replace(text, " ").Trim();
        text = Scanned()
            .Replace(text,
                m => m.Value.Any(char.IsAsciiDigit)
                    ? m.Value.Replace('O', '0').Replace('o', '0').Replace('l', '1').Replace('I', '1')
                    : m.Value);
        var asides = Asides.Of(text);
        text = Spaces().Replace(asides.Name, " ").Trim();
        var cas = asides.Cas;
        if (cas is null
            && CasText().Match(text) is { Success: true } number
            && CasNumber.Parse(number.Groups["cas"].Value) is { IsValue: true, Value: var read })
        {
            cas = read;
            text = (text[..number.Index] + " " + text[(number.Index + number.Length)..]).Trim();
        }
        remarks.AddRange(asides.Notes);
        var (rest, share, remark) = ShareWords.Take(text);
        if (share == ShareRange.Unknown && asides.Share is { } bare)
            share = Asides.Range(bare);
        if (remark is not null)
            remarks.Add(remark);
        rest = Tidy(Spaces().Replace(rest, " "));
        // What it is for may stand between the name and its share.
        if (Asides.Of(rest) is { Notes.Length: > 0 } again)
        {
            remarks.AddRange(again.Notes);
            rest = Tidy(Spaces().Replace(again.Name, " "));
        }
        var plain = Tidy(OrganicWord().Replace(rest, " "));
        return plain.Length > 0 && plain != rest
            ? new NamePiece(plain, share, signs, true, cas, remarks.ToImmutable())
            : new NamePiece(rest, share, signs, false, cas, remarks.ToImmutable());
    }

    private static string Tidy(string text) =>
        FullStop().Replace(text.Trim(' ', ',', ';', ':', PaperText.Parting, PaperText.NoteWas), "").Trim();

    // Letters among the figures before a percent sign are a scanner's.
    [GeneratedRegex(@"(?<=[\s(<>=\[-]|^)[0-9OolI]{1,3}(?:[.,][0-9OolI]{1,3})?(?=\s*(?:%|-\s*[0-9OolI]{1,3}(?:[.,][0-9OolI]+)?\s*%))")]
    private static partial Regex Scanned();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex(@"\s*(?:\*+|\u2020+|\u2021+|[\u00B9\u00B2\u00B3]+)\s*")]
    private static partial Regex Signs_();

    [GeneratedRegex(@"[(\[]?\s*(?:CAS(?:\s*(?:no|number|nr)?)\.?\s*[:#]?\s*)?(?<![0-9-])(?<cas>[0-9]{2,7}-[0-9][0-9]-[0-9])(?![0-9-])\s*[)\]]?",
        RegexOptions.IgnoreCase)]
    private static partial Regex CasText();

    [GeneratedRegex(@"^\s*(?:certified\s+)?organic(?:ally grown)?\s+|\s*[(\[]\s*(?:certified\s+)?(?:organic|bio)\s*[)\]]",
        RegexOptions.IgnoreCase)]
    private static partial Regex OrganicWord();

    [GeneratedRegex(@"(?<![A-Z]\.[A-Z])\.\s*$")]
    private static partial Regex FullStop();
}
