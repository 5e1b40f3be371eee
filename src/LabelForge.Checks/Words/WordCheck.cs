using System.Text.RegularExpressions;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Checks.Words;

/// <summary>Checks what a label's words claim and deny.</summary>
public static partial class WordCheck
{
    /// <summary>The findings.</summary>
    /// <param name="text">The words that may claim something; no ingredient list, no address.</param>
    /// <param name="names">The ingredients, each with what the dictionary knows it as.</param>
    /// <param name="soldAs">How it is sold; null where a soap's label leaves it open.</param>
    /// <param name="where">Where the words stand.</param>
    /// <param name="market">The market to judge for.</param>
    public static IEnumerable<Finding> Find(string text, IReadOnlyList<(string Name, Ingredient? Known)> names, SoldAs? soldAs, string where, Market market) =>
        WordLists.Claims.Where(c => c.HoldsIn(market)).SelectMany(c => Claimed(text, c, soldAs, where, market)).Concat(WordLists.Denials.SelectMany(d => Denied(text, d, names, where, RuleBook.For(market))));

    /// <summary>Whether the words claim anything of this weight.</summary>
    public static bool Claims(string text, Makes makes) => WordLists.Claims.Where(c => c.Makes == makes).Any(c => Hits(text, c).Any());

    private static IEnumerable<Finding> Claimed(string text, ClaimWords claim, SoldAs? soldAs, string where, Market market)
    {
        var rule = (claim.Makes, soldAs) switch
        {
            (Makes.Drug, _) => "claim.drug",
            (Makes.Cosmetic, SoldAs.Soap) when market == RuleBook.MarketUs => "claim.makes-soap-a-cosmetic",
            (Makes.Cosmetic, null) when market == RuleBook.MarketUs => "claim.makes-soap-a-cosmetic/unsaid",
            (Makes.Proof, _) => "claim.needs-proof",
            (Makes.Unfair, _) => "claim.unfair",
            _ => null,
        };
        if (rule is null)
            yield break;
        var hits = Hits(text, claim).DistinctBy(h => h.ToLowerInvariant()).ToArray();
        if (hits.Length > 0)
            yield return RuleBook.For(market)[rule].Find(where, string.Join("\", \"", hits), claim.Says, claim.Instead, Source(claim.Makes));
    }

    private static string Source(Makes makes) => makes == Makes.Drug
        ? "FD&C Act section 201(g)(1) (21 U.S.C. 321(g)(1)); FDA, \"Is It a Cosmetic, a Drug, or Both? (Or Is It Soap?)\", from memory"
        : "FD&C Act section 602(a) (21 U.S.C. 362(a)); FTC Act section 5, substantiation of advertising";

    private static IEnumerable<string> Hits(string text, ClaimWords claim)
    {
        foreach (Match match in claim.Words.Matches(text))
        {
            var sentence = WordContext.SentenceAt(text, match.Index, match.Length, out var offset);
            if (claim.Unless?.IsMatch(sentence) != true && !WordContext.ClaimsNothing(sentence, offset, match.Length))
                yield return Plain(match.Value);
        }
    }

    private static IEnumerable<Finding> Denied(string text, DenialWords denial, IReadOnlyList<(string Name, Ingredient? Known)> names, string where, RuleBook rules)
    {
        var match = denial.Words.Matches(text).FirstOrDefault(m => !IsNot(text, m.Index));
        if (match is null)
            yield break;
        var against = names.Where(n => denial.IsContradictedBy(n.Name, n.Known)).Select(n => n.Name).ToArray();
        var instead = denial.Instead.Length > 0 ? denial.Instead : "or keep it out of the product";
        if (against.Length > 0)
            yield return rules["claim.contradicted"].Find(where, Plain(match.Value), string.Join(", ", against), instead);
        else if (names.Where(n => denial.IsDoubtfulWith(n.Name, n.Known)).Select(n => n.Name).ToArray() is { Length: > 0 } doubtful)
            yield return rules["claim.doubtful"].Find(where, Plain(match.Value), string.Join(", ", doubtful));
    }

    // "Not vegan" denies nothing.
    private static bool IsNot(string text, int at) => NotBefore().IsMatch(text[Math.Max(0, at - 12)..at]);

    private static string Plain(string words) => Spaces().Replace(words, " ").Trim();

    [GeneratedRegex(@"\b(?:not|isn['’]t|non)[\s-]+(?:a\s+)?$", RegexOptions.IgnoreCase)]
    private static partial Regex NotBefore();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
