using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>What takes a product out of a rule: a fact of the product that is so, or one that is not.</summary>
/// <param name="Fact">The fact.</param>
/// <param name="IfNot">Whether the rule falls where it is not so; else where it is.</param>
public sealed record Exemption(ProductFact Fact, bool IfNot)
{
    /// <summary>How a sentence says it.</summary>
    public string Words => IfNot ? Fact.IsNot : Fact.Is;

    /// <summary>Reads <c>adults-only</c>, or <c>not metal-container</c>.</summary>
    public static Parsed<Exemption> Parse(string written)
    {
        var not = written.StartsWith("not ", StringComparison.Ordinal);
        var fact = ProductFact.Find(not ? written[4..] : written);
        return fact.IsValue ? Parsed<Exemption>.Of(new(fact.Value, not)) : Parsed<Exemption>.Refused(fact.Problem);
    }

    /// <summary>Whether it takes a product out; null while nobody has said.</summary>
    /// <param name="so">Whether the fact is so, as far as it is known.</param>
    public bool? Frees(bool? so) => so is { } known ? known != IfNot : null;

    /// <summary>What is added to a finding's message while exemptions are open.</summary>
    internal static string Sentence(ImmutableArray<Exemption> open, string language) => open.IsEmpty ? ""
        : language == LawWords.English ? $" It must, unless {string.Join(", or ", open.Select(e => e.Words))}."
        : $" {Around(language, "sentence", string.Join(Say(language, "unless", "or") + " ", open.Select(e => Say(language, e.Fact.Id, e.IfNot ? "not" : "is"))))}";

    /// <summary>What is asked of the maker then.</summary>
    internal static string Question(ImmutableArray<Exemption> open, string language)
    {
        var facts = string.Join(", ", open.Select(e => e.Fact.Id));
        return open.IsEmpty ? ""
            : language == LawWords.English
            ? $" {string.Join(' ', open.Select(e => e.Fact.Asks).Distinct())} Answer by the {(open.Length == 1 ? "fact" : "facts")} {facts} (yes or no), and it is not asked again."
            : $" {string.Join(' ', open.Select(e => Say(language, e.Fact.Id, "asks")).Distinct())} {Around(language, "answer", facts)}";
    }

    private static string Around(string language, string key, string with) =>
        string.Format(CultureInfo.InvariantCulture, Say(language, "unless", key), with);

    private static string Say(string language, string id, string key) => LawWords.Of($"facts-{language}", id, key)!;
}
