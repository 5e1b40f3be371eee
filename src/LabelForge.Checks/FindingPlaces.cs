using LabelForge.Checks.Reading;

namespace LabelForge.Checks;

/// <summary>Where in a label's text the words stand that a finding is about.</summary>
public static partial class FindingPlaces
{
    private const int MostPlaces = 40;

    /// <summary>The places; empty for what is missing, or stands outside the label.</summary>
    public static ImmutableArray<TextSpan> Of(Finding finding, LabelStatement reading)
    {
        if (finding.Rule.EndsWith(".missing", StringComparison.Ordinal) && finding.Where == reading.Text.Where)
            return [];
        return finding.Rule.Split('.')[0] switch
        {
            "net-quantity" => reading.NetQuantity is { } net ? [net.Span] : [],
            "identity" => reading.Identity is { } identity ? [identity.Span] : Occurrences(reading, finding.Where),
            "ingredients" or "colour" or "substance" or "allergen" => Ingredient(finding, reading),
            "business-name" or "business-place" or "business" or "responsible-person" or "origin" or "importer" =>
                reading.Business.Spans.IsEmpty ? [.. reading.Addresses.Select(a => a.Span)] : reading.Business.Spans,
            "claim" or "warning" or "durability" or "safety" =>
                [.. Quoted().Matches(finding.Message).SelectMany(q => Occurrences(reading, q.Groups["words"].Value)).Take(MostPlaces)],
            "lot" => reading.Lot is { } lot ? [lot.Span] : [],
            _ => [],
        };
    }

    // A name of the list is looked for in the list alone.
    private static ImmutableArray<TextSpan> Ingredient(Finding finding, LabelStatement reading)
    {
        if (reading.Ingredients is not { } list)
            return [];
        if (finding.Rule == "ingredients.type-too-small")
            return [list.Span];
        var named = finding.Where == "ingredients"
            ? []
            : Occurrences(reading, finding.Where).Where(s => s.Overlaps(list.Span)).ToImmutableArray();
        if (!named.IsEmpty)
            return named;
        var told = list.Items.Where(i => finding.Message.Contains(i.Name, StringComparison.Ordinal))
            .SelectMany(i => Occurrences(reading, i.Name)).Where(s => s.Overlaps(list.Span)).Take(MostPlaces).ToImmutableArray();
        return told.IsEmpty ? [list.Span] : told;
    }

    private static ImmutableArray<TextSpan> Occurrences(LabelStatement reading, string words)
    {
        var parts = words.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length is 0 or > 30)
            return [];
        var pattern = new Regex($@"(?<![\p{{L}}0-9]){string.Join(@"\s+", parts.Select(Regex.Escape))}(?![\p{{L}}0-9])",
            RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(2));
        return [.. pattern.Matches(reading.Text.Text).Take(MostPlaces).Select(m => new TextSpan(m.Index, m.Length))];
    }

    [GeneratedRegex("\"(?<words>[^\"]+)\"")]
    private static partial Regex Quoted();
}
