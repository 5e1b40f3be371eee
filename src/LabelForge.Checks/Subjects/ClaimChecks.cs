using LabelForge.Checks.Words;

namespace LabelForge.Checks.Subjects;

/// <summary>What the label's words claim and deny.</summary>
internal static class ClaimChecks
{
    public static void Check(CheckCase label) => Check(label, new ClaimText(label.Label.Rest));

    /// <summary>Checks words that may have been looked through for another market already.</summary>
    internal static void Check(CheckCase label, ClaimText text)
    {
        var where = label.Label.Own is null ? "words" : label.Where;
        foreach (var (claim, words) in Made(text, label))
        {
            if (Rule(claim.Makes, label.MeantAs) is { } rule)
                label.Tell(rule, where, string.Join("\", \"", words), Says(claim), Instead(claim));
        }
        var treats = WordLists.Claims.First(c => c.Id == "treats");
        string[] elsewhere = [.. OtherLanguageClaims.In(text, label.Label.Text.Text).Distinct(StringComparer.OrdinalIgnoreCase)];
        if (elsewhere.Length > 0)
            label.Tell("claim.drug", where, string.Join("\", \"", elsewhere), Says(treats), Instead(treats));
        var unfair = WordLists.Claims.FirstOrDefault(c => c.Id == "denigrates-eu" && c.HoldsIn(label.Market));
        if (unfair is not null
            && OtherLanguageClaims.Unfair(text).Distinct(StringComparer.OrdinalIgnoreCase).ToArray() is { Length: > 0 } said)
            label.Tell("claim.unfair", where, string.Join("\", \"", said), Says(unfair), Instead(unfair));
        foreach (var denial in WordLists.Denials)
            Denied(label, text, denial, where);
        foreach (var denied in DictionaryDenials.Of(text, label.Dictionary).DistinctBy(d => d.Denied))
        {
            if (label.Names.Where(n => denied.IsIn(n.Name, n.Known)).Select(n => n.Name).ToArray() is { Length: > 0 } against)
                label.Tell("claim.contradicted", where, denied.Written, string.Join(", ", against), KeepOut);
        }
    }

    // What is found by its meaning is told where no words of the same weight tell it already: "Moisturizes dry skin" once.
    private static IEnumerable<(ClaimWords Claim, string[] Words)> Made(ClaimText text, CheckCase label)
    {
        var all = WordLists.Claims.Where(c => c.HoldsIn(label.Market)).Select(c => (Claim: c, Hits: text.Hits(c)))
            .Where(c => c.Hits.Length > 0).ToArray();
        var told = all.SelectMany(c => c.Hits.Where(h => !h.ByMeaning).Select(h => (c.Claim.Makes, h.Span))).ToList();
        foreach (var (claim, hits) in all)
        {
            ClaimHit[] anew = [.. hits.Where(h => !h.ByMeaning || !told.Any(t => t.Makes == claim.Makes && t.Span.Overlaps(h.Span)))];
            told.AddRange(anew.Where(h => h.ByMeaning).Select(h => (claim.Makes, h.Span)));
            if (anew.Length > 0)
            {
                // Words that two patterns end or begin apart are quoted once, at their longest.
                yield return (claim, [.. anew.Where(h => !anew.Any(o => o.Span != h.Span && o.Span.Covers(h.Span)))
                    .Select(h => h.Words).DistinctBy(w => w.ToLowerInvariant())]);
            }
        }
    }

    private static ClaimSaid KeepOut { get; } = new("without", "instead", "or keep it out of the product");

    private static ClaimSaid Says(ClaimWords claim) => new(claim.Id, "says", claim.Says);

    private static ClaimSaid Instead(ClaimWords claim) => new(claim.Id, "instead", claim.Instead);

    private static string? Rule(Makes makes, SoldAs? meantAs) => (makes, meantAs) switch
    {
        (Makes.Drug, _) => "claim.drug",
        (Makes.Cosmetic, SoldAs.Soap) => "claim.makes-soap-a-cosmetic",
        (Makes.Cosmetic, null) => "claim.makes-soap-a-cosmetic/unsaid",
        (Makes.Proof, _) => "claim.needs-proof",
        (Makes.Unfair, _) => "claim.unfair",
        _ => null,
    };

    private static void Denied(CheckCase label, ClaimText text, DenialWords denial, string where)
    {
        if (WordCheck.Denial(text, denial) is not { } words)
            return;
        var against = label.Names.Where(n => denial.IsContradictedBy(n.Name, n.Known)).Select(n => n.Name).ToArray();
        var doubtful = label.Names.Where(n => denial.IsDoubtfulWith(n.Name, n.Known)).Select(n => n.Name).ToArray();
        if (against.Length > 0)
            label.Tell("claim.contradicted", where, words, string.Join(", ", against),
                denial.Instead.Length > 0 ? new ClaimSaid($"without-{denial.Id}", "instead", denial.Instead) : KeepOut);
        else if (doubtful.Length > 0)
            label.Tell("claim.doubtful", where, words, string.Join(", ", doubtful));
    }
}
