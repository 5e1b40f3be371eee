using System.Collections.Concurrent;
using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Tests.Checks.Claims;

/// <summary>How much of what must come of sentences does come, and how much of what comes must.</summary>
/// <param name="Wanted">What had to be told.</param>
/// <param name="Told">Of it, what was.</param>
/// <param name="False">What was told beside.</param>
internal readonly record struct ClaimScore(int Wanted, int Told, int False)
{
    /// <summary>Of what had to be told, the part that was.</summary>
    public double Recall => Wanted == 0 ? 1 : (double)Told / Wanted;

    /// <summary>Of what was told, the part that had to be.</summary>
    public double Precision => Told + False == 0 ? 1 : (double)Told / (Told + False);

    /// <summary>Both counts together.</summary>
    public static ClaimScore operator +(ClaimScore a, ClaimScore b) => new(a.Wanted + b.Wanted, a.Told + b.Told, a.False + b.False);

    /// <summary>As the pages show it.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Wanted} | {Recall:0.000} | {Precision:0.000}");
}

/// <summary>What came of a sentence in a market under one rule.</summary>
internal sealed record ClaimOutcome(ClaimSentence Sentence, string Market, string Rule, ClaimScore Score)
{
    /// <summary>The rules that sentences are judged by.</summary>
    public static readonly ImmutableArray<string> Rules =
        ["claim.drug", "claim.makes-soap-a-cosmetic", "claim.needs-proof", "claim.unfair", "claim.contradicted", "claim.doubtful"];

    private static readonly ConcurrentDictionary<(string Corpus, string Language), Lazy<ImmutableArray<ClaimOutcome>>> Judged = new();

    /// <summary>What comes of a corpus in a language; judged once for all tests.</summary>
    public static ImmutableArray<ClaimOutcome> OfAll(string corpus, string language) =>
        Judged.GetOrAdd((corpus, language), key => new(() => [.. ClaimSentence.Read(key.Language, key.Corpus).SelectMany(Of)])).Value;

    /// <summary>Judges a sentence everywhere.</summary>
    public static IEnumerable<ClaimOutcome> Of(ClaimSentence sentence)
    {
        var findings = new ClaimFindings(sentence.Text, sentence.Names);
        return MarketBook.Shipped.All.SelectMany(m => In(sentence, m, Told(findings, m)));
    }

    private static IEnumerable<ClaimOutcome> In(ClaimSentence sentence, Market market, HashSet<string> told)
    {
        var wanted = sentence.Wanted.Where(w => w.HoldsIn(market.Id) && Exists(w.Rules[0], market)).ToArray();
        foreach (var must in wanted.Where(w => !w.Optional))
            yield return new(sentence, market.Id, must.Rules[0], new(1, must.Rules.Any(told.Contains) ? 1 : 0, 0));
        // Of a drug nobody need be told that it is no mere soap either; saying so is not wrong.
        var right = wanted.SelectMany(w => w.Rules)
            .Concat(wanted.Any(w => w.Rules.Contains("claim.drug")) ? ["claim.makes-soap-a-cosmetic"] : []);
        foreach (var rule in Rules.Where(told.Contains).Except(right))
            yield return new(sentence, market.Id, rule, new(0, 0, 1));
    }

    private static bool Exists(string rule, Market market) => market.On(Day).Rule(rule) is not null;

    private static DateOnly Day => new(2026, 11, 25);

    private static HashSet<string> Told(ClaimFindings findings, Market market)
    {
        var told = findings.In(market, SoldAs.Cosmetic).Select(f => f.Rule).ToHashSet();
        told.UnionWith(findings.In(market, SoldAs.Soap).Select(f => f.Rule).Where(r => r == "claim.makes-soap-a-cosmetic"));
        return told;
    }
}
