namespace LabelForge.Ingredients.Supplied;

/// <summary>Reads a declaration as suppliers write it. Pure: the same text and the same known names give the same list.</summary>
public static class SuppliedText
{
    /// <summary>The longest text read, in characters: some fifty printed pages.</summary>
    public const int MostCharacters = 100_000;

    /// <summary>What is longer is no name, and is not looked up.</summary>
    internal const int MostCharactersOfAName = 300;

    private const int LettersThatTell = 24;

    /// <summary>Reads the names of a text with what it says of each.</summary>
    /// <param name="text">The declaration, copied as it stands, with or without its heading.</param>
    /// <param name="knows">Whether a text is a known name as it stands: such a name is not split.</param>
    /// <exception cref="InputException">There is no name in it, it is too long, or a figure cannot be a share.</exception>
    public static SuppliedList Read(string text, Func<string, bool> knows)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(knows);
        if (text.Length > MostCharacters)
            throw new InputException("supplied.too-long", ("count", text.Length), ("most-characters", MostCharacters));
        bool IsName(string piece) => piece.Length < MostCharactersOfAName && knows(NamePiece.Of(piece, knows).Name);
        var notes = Footnotes.Of(PaperText.Of(text), IsName);
        var parts = PaperParts.Of(notes.Text, IsName);
        var leftOut = parts.LeftOut.ToBuilder();
        leftOut.AddRange(notes.Notes.Where(n => n.Meaning.Length > 0).Select(n => $"{n.Sign} {n.Meaning}"));
        var splitter = new ListSplitter(knows);
        var names = ImmutableArray.CreateBuilder<SuppliedName>();
        foreach (var (segment, bound, mayContain) in GroupBound.Parts(parts.List).Select(p => (p.Text, p.Bound, false))
            .Append((parts.MayContain, null, true)))
        {
            var (list, after) = splitter.Split(segment);
            leftOut.AddRange(after);
            foreach (var piece in list)
            {
                if (NameOf(piece, names.Count + 1, mayContain, notes, knows) is { } name)
                    names.Add(bound is { } most && name.Share == ShareRange.Unknown ? name with { Share = most } : name);
            }
        }
        return names.Count > 0
            ? new SuppliedList(names.ToImmutable(), leftOut.ToImmutable()) { LeftOutLines = [.. leftOut.Select(l => LineOf(text, l))] }
            : throw new InputException("supplied.no-ingredient");
    }

    // By its letters and figures alone: spaces, hyphens and line ends are not what they were.
    private static int LineOf(string text, string left)
    {
        var wanted = string.Concat(left.Where(char.IsLetterOrDigit).Take(LettersThatTell));
        if (wanted.Length == 0)
            return 0;
        var (places, letters) = (new List<int>(), new StringBuilder(text.Length));
        for (var at = 0; at < text.Length; at++)
        {
            if (char.IsLetterOrDigit(text[at]))
            {
                letters.Append(text[at]);
                places.Add(at);
            }
        }
        var found = letters.ToString().LastIndexOf(wanted, StringComparison.OrdinalIgnoreCase);
        return found < 0 ? 0 : text.AsSpan(0, places[found]).Count('\n') + 1;
    }

    /// <summary>Reads one cell or line that holds one name, with what is said beside it; null where no name is in it.</summary>
    internal static SuppliedName? NameOf(string piece, int position, bool mayContain, Footnotes notes, Func<string, bool> knows)
    {
        var read = NamePiece.Of(piece, knows);
        if (!read.Name.Any(char.IsLetterOrDigit))
            return null;
        string[] unexplained = [.. read.Signs.Where(s => !notes.Explains(s)).Select(s => $"the sign {s} is not explained")];
        return new SuppliedName(
            position, read.Name, read.Share, read.SaysOrganic || read.Signs.Any(notes.IsOrganic), mayContain, read.Cas,
            [.. read.Remarks, .. unexplained]);
    }
}
