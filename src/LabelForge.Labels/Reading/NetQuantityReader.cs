using LabelForge.Quantities;

namespace LabelForge.Checks.Reading;

/// <summary>A quantity in one system: one measure, or several that add up (1 lb 2 oz).</summary>
/// <param name="Measures">Its measures, largest unit first.</param>
/// <param name="IsVolume">Whether it is a volume.</param>
public sealed record ReadQuantity(ImmutableArray<ReadMeasure> Measures, bool IsVolume)
{
    /// <summary>The system.</summary>
    public MeasureSystem System => Measures[0].System;

    /// <summary>The smallest unit in it, in which its rounding shows.</summary>
    public string LastUnit => IsVolume && Measures[^1].Unit == "oz" ? "fl oz" : Measures[^1].Unit;

    /// <summary>Grams, or millilitres.</summary>
    public decimal Metric => Measures.Sum(m => m.Figure * ReadMeasure.SizeOf(IsVolume && m.Unit == "oz" ? "fl oz" : m.Unit));

    /// <summary>The amount in its smallest unit.</summary>
    public decimal InLastUnit => Measures.Length == 1 ? Measures[0].Figure : Math.Round(Metric / ReadMeasure.SizeOf(LastUnit), 12);
}

/// <summary>A net quantity statement as it stands on a label.</summary>
/// <param name="Span">Its place, words before it included.</param>
/// <param name="Written">Its text.</param>
/// <param name="Quantities">What it states, in order.</param>
/// <param name="SaysNet">Whether it says net.</param>
/// <param name="SaysWeight">Whether it says weight.</param>
/// <param name="OuncesAreFluid">Whether plain ounces were taken for fluid ounces because millilitres stand beside them.</param>
public sealed record NetQuantityRead(TextSpan Span, string Written, ImmutableArray<ReadQuantity> Quantities, bool SaysNet, bool SaysWeight,
    bool OuncesAreFluid)
{
    /// <summary>The first quantity of a system, or null.</summary>
    public ReadQuantity? In(MeasureSystem system) => Quantities.FirstOrDefault(q => q.System == system);
}

/// <summary>Finds the net quantity statements of a label, the likeliest first.</summary>
public static partial class NetQuantityReader
{
    /// <summary>The statements; empty where none is found.</summary>
    /// <param name="text">The label's text, the ingredient list blanked.</param>
    public static ImmutableArray<NetQuantityRead> Read(string text)
    {
        var found = new List<(NetQuantityRead Read, int Score)>();
        var measures = MeasureReader.Read(text);
        for (var i = 0; i < measures.Length;)
        {
            var group = new List<ReadMeasure> { measures[i++] };
            while (i < measures.Length && Joins(text[group[^1].Span.End..measures[i].Span.Start]))
                group.Add(measures[i++]);
            var read = Of(text, group);
            found.Add((read, Score(text, read)));
        }
        return [.. found.Where(f => f.Score > 0).OrderByDescending(f => f.Score).Select(f => f.Read)];
    }

    private static bool Joins(string between) => between.Length <= 24 && between.Count(c => c == '\n') <= 2 && Between().IsMatch(between);

    private static NetQuantityRead Of(string text, List<ReadMeasure> group)
    {
        var start = group[0].Span.Start;
        var lead = Lead().Match(text[Math.Max(0, start - 40)..start]);
        var from = lead.Success ? start - lead.Length : start;
        var end = group[^1].Span.End;
        if (end < text.Length && text[end] == ')')
            end++;
        var written = text[from..end];
        var weight = Weight().IsMatch(written) || Weight().IsMatch(text[end..Math.Min(text.Length, end + 12)]);
        var fluid = !weight
            && group.Any(m => m.Unit is "mL" or "L")
            && !group.Any(m => m.Unit == "fl oz")
            && group.Any(m => m.Unit == "oz");
        return new(new TextSpan(from, end - from), Spaces().Replace(written, " ").Trim(), Quantities(text, group, fluid),
            Net().IsMatch(written) || Net().IsMatch(text[end..Math.Min(text.Length, end + 12)]), weight, fluid);
    }

    // Measures of one system add up where only space stands between and the units fall: 1 lb 2 oz, 1 qt 1 pt.
    private static ImmutableArray<ReadQuantity> Quantities(string text, List<ReadMeasure> group, bool fluid)
    {
        var quantities = new List<List<ReadMeasure>>();
        foreach (var measure in group)
        {
            if (quantities.Count > 0
                && quantities[^1][^1] is var last
                && last.System == MeasureSystem.Customary
                && measure.System == last.System
                && measure.Size < last.Size && AddUp().IsMatch(text[last.Span.End..measure.Span.Start])
                && (last.Unit != "lb" || measure.Unit == "oz") && (last.Unit == "lb" || measure.Unit != "oz"))
                quantities[^1].Add(measure);
            else
                quantities.Add([measure]);
        }
        return [.. quantities.Select(q => new ReadQuantity([.. q], q.Any(m => m.IsVolume) || (fluid && q[0].Unit == "oz")))];
    }

    private static int Score(string text, NetQuantityRead read)
    {
        var lineStart = text.LastIndexOf('\n', Math.Max(0, read.Span.Start - 1)) + 1;
        var lineEnd = text.IndexOf('\n', read.Span.End) is var e && e < 0 ? text.Length : e;
        // After a dash or a bar begins another part: "Pour cheveux gras – 70 g".
        var begins = new[] { ". ", " – ", " — ", " - ", "|", "•", "·" }
            .Max(b => text.LastIndexOf(b, read.Span.Start, StringComparison.Ordinal));
        var sentence = text[Math.Clamp(begins + 1, lineStart, read.Span.Start)..read.Span.Start];
        var score = 1;
        if (read.SaysNet)
            score += 6;
        else if (read.SaysWeight)
            score += 2;
        if (read.Quantities.Select(q => q.System).Distinct().Count() == 2)
            score += 3;
        if (text[lineStart..lineEnd].Trim().Length <= read.Span.Length + 6)
            score += 2;
        // "Add 2 oz to the bath" tells how to use it, and "5 g per pound" is a share.
        if (!read.SaysNet && (Use().IsMatch(sentence) || Share().IsMatch(text[read.Span.End..Math.Min(text.Length, read.Span.End + 14)])))
            score -= 8;
        return score;
    }

    [GeneratedRegex(@"^[\s()\[\]/|,;:•·~=≈–—\-+]*(?:(?:net|wt|weight|or|and|e|℮|approx)\.?[\s()\[\]/|,;:•·~=≈–—\-+]*){0,3}$",
        RegexOptions.IgnoreCase)]
    private static partial Regex Between();

    [GeneratedRegex(@"(?:\b(?:net(?:\s*\.?\s*(?:wt|weight|contents?|cont|vol(?:ume)?|qty|quantity))?|contents?|weight|wt|volume|℮|e)\s*[.:]{0,2}\s*(?:(?:of|approx(?:imately)?|about|min(?:imum)?)\.?\s*)?[(\s]*)$", RegexOptions.IgnoreCase)]
    private static partial Regex Lead();

    [GeneratedRegex(@"\bnet\b|\bnetwt\b|℮", RegexOptions.IgnoreCase)]
    private static partial Regex Net();

    [GeneratedRegex(@"w(?:eigh)?t\b", RegexOptions.IgnoreCase)]
    private static partial Regex Weight();

    [GeneratedRegex(@"^[\s,]*(?:and\s+)?$", RegexOptions.IgnoreCase)]
    private static partial Regex AddUp();

    [GeneratedRegex(@"\b(?:use|add|pour|dissolve|apply|mix|sprinkle|take|massage|per|every|up to|holds|over|above)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex Use();

    [GeneratedRegex(@"^[^\S\n]*(?:per|of|to|into|for every)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Share();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
