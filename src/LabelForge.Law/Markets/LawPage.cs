using LabelForge.Checks;

namespace LabelForge.Markets;

/// <summary>Writes down by market what is judged, from which text of which day, and what is not
/// judged; docs/law.md is this text.</summary>
public static class LawPage
{
    /// <summary>The page.</summary>
    /// <param name="known">The markets known.</param>
    public static string Markdown(MarketBook known)
    {
        var page = new StringBuilder(
            "# The law that labels are checked against\n\nWritten by `labelforge rules --law`. It says what is judged and from which "
                + "text; it is no legal advice. "
            + "text: the instrument was read in the copy named. secondary: an account of it was read, or it is guidance or common "
            + "practice. memory: nobody read it.\n");
        foreach (var market in known.All)
            Append(page, market);
        page.Append(
            "\n# The texts that were read\n\n| name | instrument | state | copy | read on | not read |\n| --- | --- | --- | --- | "
                + "--- | --- |\n");
        foreach (var text in LawTexts.All)
            page.Append(CultureInfo.InvariantCulture,
                $"| {text.Id} | {text.Instrument} | {text.Version} | {text.Copy} | {text.ReadOn:yyyy-MM-dd} | {text.NotRead ?? "-"} |\n");
        return page.ToString();
    }

    private static void Append(StringBuilder page, Market market)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n# {char.ToUpperInvariant(market.Name[0])}{market.Name[1..]}\n");
        if (market.Basis is { } other)
            page.Append(CultureInfo.InvariantCulture,
                $"\nWhere it has no rule of its own, the rules of {other.Name} stand in, and each finding says so.\n");
        page.Append("\n## Figures\n\n| what | value | from | until | by | rests on |\n| --- | --- | --- | --- | --- | --- |\n");
        foreach (var entry in market.Figures.Entries.OrderBy(e => e.Id, StringComparer.Ordinal).ThenBy(e => e.InForceFrom))
            page.Append(CultureInfo.InvariantCulture,
                $"| {entry.What} | {Shown(entry.Value)} | {entry.InForceFrom:yyyy-MM-dd} | {entry.Until?.ToIso() ?? "-"} | {entry.Citation} | {On(entry.Basis, entry.Read)} |\n");
        page.Append("\n## Papers\n\n| paper | by | rests on |\n| --- | --- | --- |\n");
        foreach (var paper in PaperDuty.Of(market))
            page.Append(CultureInfo.InvariantCulture,
                $"| {paper.Title} ({paper.Id}) | {paper.Citation} | {On(paper.Basis, paper.Read)} |\n");
        var rules = market.OwnRules.ToArray();
        if (rules.Length == 0)
            return;
        page.Append("\n## Rules\n\n| rule | weight | from | by | rests on |\n| --- | --- | --- | --- | --- |\n");
        foreach (var rule in rules.Where(r => !IsOutside(r)).OrderBy(r => r.Id, StringComparer.Ordinal))
            page.Append(CultureInfo.InvariantCulture,
                $"| {rule.Id} | {rule.Severity.ToString().ToLowerInvariant()} | {rule.InForceFrom:yyyy-MM-dd} | {rule.Source} | {On(rule.Basis, rule.Read)} |\n");
        page.Append("\n## Not judged\n\n");
        foreach (var rule in rules.Where(IsOutside).OrderBy(r => r.Id, StringComparer.Ordinal))
            page.Append(CultureInfo.InvariantCulture, $"- {rule.Message} {rule.Fix} ({rule.Source})\n");
        page.Append("- What the copies above lacked (column \"not read\" below), local law, and whether a product is safe.\n");
    }

    // Duties that no label shows: told to the maker, and judged by nothing here.
    private static bool IsOutside(Rule rule) => rule.Id.StartsWith("outside.", StringComparison.Ordinal);

    private static string On(Basis basis, string? read) => read is null ? BasisText.Of(basis) : $"{BasisText.Of(basis)}: {read}";

    private static string Shown(LawValue value) => value switch
    {
        LawFigure f => Invariant($"{f.Figure} {f.Unit}"),
        LawWord w => w.Word,
        LawSteps s =>
            string.Join("; ",
                s.Steps
                    .Select(t => Invariant($"{(t.UpTo is { } most ? $"up to {most} {s.Of}" : "above")}: {t.Gives} {s.Gives}"))),
        _ => throw new ArgumentOutOfRangeException(nameof(value)),
    };
}
