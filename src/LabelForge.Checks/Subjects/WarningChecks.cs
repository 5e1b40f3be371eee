using LabelForge.Checks.Words;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>Warnings that a product's kind or ingredients call for, the languages they stand in,
/// and substances named that may not be used at all.</summary>
internal static partial class WarningChecks
{
    public static void Check(CheckCase label)
    {
        var text = label.Label.Own is null ? label.Label.Text.Text : label.Label.Rest;
        var words = new ClaimText(text);
        foreach (var warning in SafetyLists.WarningsOf(label.Market))
        {
            if (label.Binding(warning.Rule) is not { } rule)
                continue;
            var shown = warning.Ingredients is null ? null : label.Names.FirstOrDefault(n => Fits(warning.Ingredients, n)).Name;
            var called = shown is not null
                || warning.Words?.Matches(text).Any(m => !WordContext.IsLacking(words.At(m.Index, m.Length))) == true
                || (label.Kind is { } kind && (rule.Products.Contains(kind.Id) || warning.Kinds.Contains(kind.Id)
                    || (warning.WithKinds.Contains(kind.Id) && label.Names.Any(n => Fits(warning.WithIngredients!, n)))));
            if (!called)
                continue;
            var missing = warning.Parts.Where(p => IsWanted(p, text, label) && !p.Words.IsMatch(text)).Select(p => p.Says).ToArray();
            if (missing.Length > 0)
                label.Tell(warning.Rule, "warnings", warning.SaysIngredient ? shown! : string.Join("; ", missing));
            else
                SetByLaw(label, warning, text, rule.Source);
        }
        if (NotDetermined().IsMatch(text))
            label.Tell("safety.not-determined", "warnings");
        if (label.Label.Own is null && ProfessionalUse().IsMatch(text))
            label.Tell("professional.ingredients", label.Where);
        var cautions = label.Label.Own is null ? text : label.Label.Cautions;
        if (label.Market.Ways.EachLanguage && FrenchWords.WarningAlone(cautions) is { } warned)
            label.Tell("warning.one-language", "warnings", warned.Trim(' ', ':'));
    }

    // All is said: in the law's own words?
    private static void SetByLaw(CheckCase label, RequiredWarning warning, string text, string citation)
    {
        var said = new SetWords(text);
        string[] other =
        [
            .. warning.Signal is { } signal && !said.Have(signal) ? [$"{signal}:"] : Array.Empty<string>(),
            .. warning.Parts.Where(p => IsWanted(p, text, label) && !p.Exact.IsEmpty && !p.Exact.Any(said.Have))
                .Select(p => $"{p.Exact[0]}."),
        ];
        if (other.Length > 0)
            label.Tell("warning.missing/set-words", "warnings", string.Join(" ", other), citation);
    }

    private static bool IsWanted(WarningPart part, string text, CheckCase label) =>
        part.Unless?.IsMatch(text) != true && !part.Facts.Any(f => f.Frees(label.IsSo(f.Fact)) == true)
        && (part.OnlyWith is null || label.Names.Count == 0 || label.Names.Any(n => Fits(part.OnlyWith, n)));

    private static bool Fits(Regex pattern, (string Name, Ingredient? Known) name) =>
        pattern.IsMatch(name.Name) || (name.Known is not null && pattern.IsMatch(name.Known.Us));

    [GeneratedRegex(@"safety\s+of\s+this\s+product\s+has\s+not\s+been\s+determined", RegexOptions.IgnoreCase)]
    private static partial Regex NotDetermined();

    [GeneratedRegex(@"\bfor\s+professional\s+(?:salon\s+)?use\b|\bprofessional\s+use\s+only\b|\blicensed\s+professionals?\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex ProfessionalUse();
}
