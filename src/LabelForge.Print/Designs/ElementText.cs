using LabelForge.Declarations;
using LabelForge.Print.Lettering;
using LabelForge.Quantities;

namespace LabelForge.Print.Designs;

/// <summary>The words of one element, the heights they may have, and how they become lines at a size.</summary>
/// <param name="Element">The element.</param>
/// <param name="Text">The words.</param>
/// <param name="Heading">Words set before them in bold.</param>
/// <param name="Names">The names of a list; empty for running text.</param>
/// <param name="Floor">The letter height that the fitter keeps to: the rule's or the design's, whichever is higher.</param>
/// <param name="Required">What the rule asks for; the design's least where there is no rule.</param>
internal sealed record ElementText(DesignElement Element, string Text, string Heading, ImmutableArray<string> Names, Length Floor,
    LetterFloor Required)
{
    /// <summary>The languages that its words may be of, the likeliest first; none where they are not known.</summary>
    public ImmutableArray<string> Languages { get; init; } = [];

    private const string EnglishNames = "en";

    /// <summary>The letter height it is not enlarged beyond.</summary>
    public Length Most => Element.Most.CompareTo(Floor) > 0 ? Element.Most : Floor;

    /// <summary>The words of an element, or null where the content has none for it.</summary>
    public static ElementText? From(DesignElement element, LabelContent content, string designId)
    {
        if (WordsOf(element.Role, content) is not { } text)
            return null;
        var floors = content.Floors;
        var law = element.Role switch
        {
            Role.NetQuantity => floors.NetQuantity,
            Role.Ingredients => floors.Ingredients,
            Role.Warnings => floors.Warnings,
            Role.Identity or Role.Responsible or Role.Directions => floors.Required,
            _ => LetterFloor.None,
        };
        var required = law.Source.Length > 0 ? law : new LetterFloor(element.Least, $"the design {designId} (common practice)");
        var floor = required.Height.CompareTo(element.Least) > 0 ? required.Height : element.Least;
        var words = element.Before.Length > 0 ? $"{element.Before} {text}" : text;
        var set = element.Role == Role.Ingredients
            ? new ElementText(element, text, content.IngredientHeading.Trim(), content.Ingredients, floor, required)
            : new ElementText(element, element.Capitals ? words.ToUpperInvariant() : words, "", [], floor, required);
        // Ingredients bear English and Latin names wherever they are sold; only what is not written so is of the label's language.
        return set with { Languages = element.Role == Role.Ingredients ? [EnglishNames, .. content.Languages] : content.Languages };
    }

    /// <summary>What a label says of a part in words; null where it says nothing of it, or nothing in words.</summary>
    public static string? WordsOf(Role role, LabelContent content) => role switch
    {
        Role.Business => content.BusinessName,
        Role.Name => content.ProductName,
        Role.Identity => content.Identity,
        Role.NetQuantity => content.NetQuantity,
        Role.Ingredients => string.Join(", ", content.Ingredients),
        Role.Directions => content.Directions,
        Role.Warnings => string.Join(' ', content.Warnings),
        Role.Responsible => content.Responsible,
        Role.Contact => content.Contact,
        Role.Lot => content.Lot,
        Role.BestBefore => content.BestBefore,
        Role.Origin => content.Origin,
        Role.Count => content.CartonCount,
        Role.ScentLine => content.ScentLine,
        Role.Words => content.OwnWords,
        Role.Price => content.Price,
        Role.Claim => content.Claim,
        _ => null,
    } is { } text && !string.IsNullOrWhiteSpace(text) ? text : null;

    /// <summary>Sets the words in a width, with letters of a height.</summary>
    public SetText Set(Length letterHeight, double width)
    {
        var size = Element.Face.SizeFor(Names.IsEmpty ? Text : Heading + Text, letterHeight);
        var items = Hyphenated(Items(width / size), size, width, out var hyphenated);
        // What it is in two languages begins each on a line of its own where there are lines enough for that.
        var lines = ByLanguage(items) is { Length: > 1 } parts
            && Lines(parts, size, width) is { TooWide: null } apart
            && (Element.Lines == 0 || apart.Lines.Length <= Element.Lines)
            ? apart
            : Lines([items], size, width);
        if (lines.TooWide is { } wide)
            return new SetText(this, size, [], wide.Width * size - width, wide.Text);
        // One line that must not break is too wide by what it lacks, not by a line.
        if (Element.Lines > 0 && lines.Lines.Length > Element.Lines)
            return new SetText(this, size, lines.Lines, TooWideBy(items, size, width), Text);
        return new SetText(this, size, lines.Lines, 0, null) { Hyphenated = hyphenated };
    }

    // Where a word is wider than the line even with its letters at their least, it has to be broken. A name is broken at that height
    // alone: smaller letters are better than a hyphen, and a hyphen better than no label.
    private ParagraphItem[] Hyphenated(ParagraphItem[] items, double size, double width, out bool broken)
    {
        broken = false;
        var least = Element.Face.SizeFor(Names.IsEmpty ? Text : Heading + Text, Floor);
        var isName = Element.Role is Role.Name or Role.Business or Role.NetQuantity;
        if (!items.Any(i => i.Width * least > width) || Element.Role == Role.NetQuantity || (isName && size > least * 1.001))
            return items;
        ParagraphItem[] all = [.. items.SelectMany(i => Paragraph.Hyphenated(i, width / size, Languages))];
        broken = all.Length > items.Length;
        return all;
    }

    private (ImmutableArray<ImmutableArray<MeasuredText>> Lines,
        ParagraphItem? TooWide) Lines(IEnumerable<ParagraphItem[]> parts, double size, double width)
    {
        var lines = ImmutableArray.CreateBuilder<ImmutableArray<MeasuredText>>();
        foreach (var part in parts)
        {
            var broken = Paragraph.Break(part, width / size,
                Element.Align == Align.Centre
                    || Element.Role is Role.Responsible or Role.Name or Role.Identity or Role.Words or Role.Claim, noLoneWord: true);
            if (broken.TooWide is { } wide)
                return ([], wide);
            lines.AddRange(broken.Lines.Select(range => LineOf([.. part.Take(range)], size)));
        }
        return (lines.ToImmutable(), null);
    }

    // The words of an identity up to each stroke that parts two languages.
    private ParagraphItem[][] ByLanguage(ParagraphItem[] items)
    {
        if (Element.Role != Role.Identity)
            return [items];
        var parts = new List<ParagraphItem[]>();
        var from = 0;
        for (var at = 0; at < items.Length - 1; at++)
        {
            if (!items[at].Text.EndsWith(" /", StringComparison.Ordinal))
                continue;
            parts.Add(items[from..(at + 1)]);
            from = at + 1;
        }
        return [.. parts, items[from..]];
    }

    private double TooWideBy(IReadOnlyList<ParagraphItem> items, double size, double width) =>
        Math.Max(0.1, items.Sum(i => i.Width + i.Space) * size / Element.Lines - width);

    private ParagraphItem[] Items(double lineWidth)
    {
        // An address breaks after its commas, not inside a street or between a region and its postcode.
        if (Element.Role == Role.Responsible)
            return [.. Paragraph.OfChunks(Commas(Text.Split(", ")), Element.Face, lineWidth)];
        // A figure stays with its unit: "Net Wt 4 oz" and "(113 g)" may part, not "4" and "oz".
        if (Element.Role == Role.NetQuantity)
            return [.. Paragraph.OfAmounts(Text.Replace(" (", "\n(", StringComparison.Ordinal)
                .Replace(") ", ")\n", StringComparison.Ordinal)
                .Split('\n'), Element.Face, lineWidth)];
        // A name is broken where a reader would pause: "Bramble" and "& Shea".
        if (Element.Role is Role.Name or Role.Identity or Role.ScentLine or Role.Words or Role.Claim)
            return [.. Paragraph.OfPieces(SenseBreaks.Of(Text), Element.Face, lineWidth, Element.Tracking)];
        if (Element.Role == Role.Contact)
            return [.. Paragraph.OfPieces(Dotted(Text), Element.Face, lineWidth, Element.Tracking)];
        if (Names.IsEmpty)
            return [.. Paragraph.OfWords(Text, Element.Face, Element.Tracking)];
        return [.. Paragraph.OfWords(Heading, BundledFaces.SemiBold), .. Paragraph.OfNames(Names, Element.Face)];
    }

    private static IEnumerable<string> Commas(IReadOnlyList<string> parts) =>
        parts.Select((part, i) => i == parts.Count - 1 ? part : part + ",");

    // Each way to reach the business with the dot after it, which a line's end does without.
    private static IReadOnlyList<string> Dotted(string text)
    {
        var ways = text.Split(" · ");
        return [.. ways.Select((way, i) => i == ways.Length - 1 ? way : way + " ·")];
    }

    private static ImmutableArray<MeasuredText> LineOf(ParagraphItem[] items, double size)
    {
        var parts = ImmutableArray.CreateBuilder<MeasuredText>();
        for (var at = 0; at < items.Length;)
        {
            var face = items[at].Face;
            var run = items.Skip(at).TakeWhile(i => i.Face == face).ToArray();
            at += run.Length;
            parts.Add(MeasuredText.OfWords(face, size,
                [.. run.Select((item, i) => at == items.Length && i == run.Length - 1 ? item.Text.TrimEnd('·', ' ') : item.Text)],
                run[0].Tracking, at < items.Length));
        }
        return parts.ToImmutable();
    }
}

/// <summary>An element's words as lines at a size; each line is one part, or more where the face changes.</summary>
/// <param name="Of">The words.</param>
/// <param name="Size">The type size in points.</param>
/// <param name="Lines">The lines.</param>
/// <param name="TooWide">By how many points it is too wide; 0 where it fits.</param>
/// <param name="Culprit">What is too wide, or null.</param>
internal sealed record SetText(ElementText Of, double Size, ImmutableArray<ImmutableArray<MeasuredText>> Lines, double TooWide,
    string? Culprit)
{
    /// <summary>Whether a word is broken, a hyphen at its line's end.</summary>
    public bool Hyphenated { get; init; }

    /// <summary>What the lines say: joined by spaces, and broken words whole.</summary>
    public string Said => Hyphenated
        ? (Of.Heading.Length > 0 ? $"{Of.Heading} {Of.Text}" : Of.Text)
        : string.Join(' ', Lines.Select(l => string.Concat(l.Select(p => p.Text))));

    public double Top => Lines[0].Max(p => p.Shape.Top) * Size;

    public double Bottom => Lines[^1].Max(p => p.Shape.Bottom) * Size;

    public double Height => Lines.IsEmpty ? 0 : Top + Bottom + (Lines.Length - 1) * Of.Element.Leading * Size;

    public double Width => Lines.IsEmpty ? 0 : Lines.Max(WidthOf);

    public Length LetterHeight => Lines.SelectMany(l => l).Select(p => Points.ToLength(p.Face.LetterHeight(Of.Text) * (float)Size)).Min();

    public static double WidthOf(ImmutableArray<MeasuredText> line) => line.Sum(p => p.Width);
}
