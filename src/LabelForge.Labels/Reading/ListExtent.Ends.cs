using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>What ends a list within a line: a full stop, and words behind a dash.</summary>
internal sealed partial class ListExtent
{
    // "CI 77742 — those are the ingredients": what begins small behind a dash, after a whole name, is no name.
    private bool IsAside(int start, int dash)
    {
        var rest = Lines.At(text, Math.Min(text.Length, dash + 1));
        return text[dash - 1] == ' ' && rest is [' ', var first, ..] && char.IsLower(first)
            && IsFormal(ListNames.OneLine(ListNames.Split(text[start..dash]).LastOrDefault() ?? ""))
            && !ListNames.Split(rest).Any(IsKnown);
    }

    // A full stop ends the list where a new sentence or a new line follows; "No. 40" and "C.I. 77491" go on, and so does a
    // list whose names are parted by full stops.
    private bool EndsSentence(int start, int dot)
    {
        var before = text[Math.Max(0, dot - 3)..dot];
        if (BeginsWithNumber().IsMatch(text[(text.LastIndexOf('\n', dot - 1) + 1)..(dot + 1)])
            || (AtNumber().IsMatch(before) && ListNames.IsNumbered(text[start..Math.Min(dot, start + LongestNumber)])))
            return false;
        if (before.EndsWith("No", StringComparison.OrdinalIgnoreCase)
            || before.EndsWith("C.I", StringComparison.OrdinalIgnoreCase)
            || before.EndsWith(".I", StringComparison.Ordinal)
            || before is [.., ' ' or ',', 'C' or 'c'] || before.EndsWith("Ext", StringComparison.OrdinalIgnoreCase))
            return false;
        var rest = text[(dot + 1)..Math.Min(text.Length, dot + 160)];
        if (rest.Length == 0 || rest[0] is not (' ' or '\n'))
            return rest.Trim().Length == 0;
        // "Alcohol Denat. · Parfum": what parts names follows.
        if (rest.TrimStart(' ') is ['·' or '•' or '|' or ',' or ';' or '/' or '(', ..]
            || rest.TrimStart() is ['·' or '|' or ',' or ';', ..])
            return false;
        return !MayContain().IsMatch(FoldedText.Of(rest)) && !PartsByDots(start, dot, rest);
    }

    // "Tocopherol. Parfum. Limonene.": the name before is one by itself, and so is the next, or the one after it.
    private bool PartsByDots(int start, int dot, string rest)
    {
        var body = text[start..dot];
        if (body.Contains(',') || body.Contains(';') || rest.StartsWith("\n\n", StringComparison.Ordinal))
            return false;
        // A name may go over to the next line, or a line end it.
        return new[] { DotOrEnd(), Dot() }.Any(ends =>
        {
            var next = ends.Split(rest.Trim()).Select(n => n.Replace('\n', ' ').Trim()).Where(n => n.Length > 0).Take(2).ToArray();
            return next.Length > 0
                && (IsKnown(next[0])
                    || (next.Length > 1 && body.Contains(". ", StringComparison.Ordinal) && IsShort(next[0]) && IsKnown(next[1])));
        });
    }
}
