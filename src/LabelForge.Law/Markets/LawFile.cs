namespace LabelForge.Markets;

/// <summary>Reads a law file. An entry without its citation or one of its dates is refused: gaps
/// get in where they may be left out.</summary>
internal static class LawFile
{
    /// <param name="records">The entries as written.</param>
    /// <param name="market">The market's id; where an entry's name ends in it, as in
    /// identity.weight.us, the name is what stands before.</param>
    public static IReadOnlyList<LawEntry> Read(IReadOnlyList<YamlRecord> records, string market) =>
        [.. records.Select(r => Entry(r, market))];

    private static LawEntry Entry(YamlRecord record, string market)
    {
        record.OnlyKeys("id", "markets", "what", "value", "word", "steps", "of", "gives", "citation",
            "in force from", "until", "published", "checked", "basis", "read", "note");
        var (basis, read) = BasisOf(record);
        var entry = new LawEntry(
            NameOf(record.Text("id", "a name, such as net-quantity.letter-height"), market),
            record.Text("what", "what it fixes, in plain words"),
            Value(record),
            record.Text("citation", "instrument and paragraph, such as 21 CFR 701.13(i)"),
            record.Date("in force from"),
            record.Has("until") ? record.Date("until") : null,
            record.Date("published"),
            record.Date("checked"),
            basis,
            read);
        if (entry.Until < entry.InForceFrom)
            throw record.RefuseAt("until", "figure.ends-early");
        return entry;
    }

    private static string NameOf(string id, string market) =>
        market.Length > 0 && id.EndsWith($".{market}", StringComparison.Ordinal) ? id[..^(market.Length + 1)] : id;

    private static LawValue Value(YamlRecord record)
    {
        if (new[] { "value", "word", "steps" }.Count(record.Has) != 1)
            throw record.RefuseAt("id", "figure.fixes-one-thing");
        if (record.Has("word"))
            return new LawWord(record.Text("word", "a word"));
        if (record.Has("value"))
        {
            var text = record.Text("value", "a figure and its unit, such as 0.0625 in");
            var parts = text.Split(' ', 2, StringSplitOptions.TrimEntries);
            return parts.Length == 2 && YamlRecord.FigureOf(parts[0]) is { } figure
                ? new LawFigure(figure, parts[1])
                : throw record.RefuseAt("value", "figure.not-a-figure", ("text", text));
        }
        return new LawSteps(record.Text("of", "the unit it is entered with"), record.Text("gives", "the unit it gives"), Steps(record));
    }

    private static IReadOnlyList<LawStep> Steps(YamlRecord record)
    {
        var rows = record.Records("steps", "[{ up to: 5, is: 0.0625 }, { is: 0.125 }]");
        var steps = new List<LawStep>();
        foreach (var row in rows)
        {
            row.OnlyKeys("up to", "is");
            var step = new LawStep(row.Has("up to") ? row.Figure("up to") : null, row.Figure("is"));
            if (steps.Count > 0 && (steps[^1].UpTo is not { } before || step.UpTo <= before))
                throw record.RefuseAt("steps", "figure.steps-do-not-rise");
            steps.Add(step);
        }
        return steps[^1].UpTo is null
            ? steps
            : throw record.RefuseAt("steps", "figure.steps-end");
    }

    /// <summary>What a record rests on, and the text that was read.</summary>
    /// <exception cref="InputException">It does not say, or names no text that was read.</exception>
    internal static (Basis Basis, string? Read) BasisOf(YamlRecord record)
    {
        var parsed = BasisText.Parse(record.Text("basis", "text, secondary or memory"));
        if (!parsed.IsValue)
            throw record.RefuseAt("basis", parsed.Problem);
        var read = record.Has("read") ? record.Text("read", "the id of an entry of texts.yaml") : null;
        return LawTexts.Doubt(parsed.Value, read) is { } doubt
            ? throw record.RefuseAt(read is null ? "basis" : "read", doubt)
            : (parsed.Value, read);
    }
}
