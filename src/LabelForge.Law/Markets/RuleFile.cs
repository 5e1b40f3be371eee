using LabelForge.Markets;
using LabelForge.Recipes.Files;

namespace LabelForge.Checks;

/// <summary>Reads a file of rules; refuses any without a source or a date.</summary>
public static class RuleFile
{
    /// <summary>The rules of a file.</summary>
    /// <param name="root">What the file says.</param>
    /// <param name="wordsOf">The folder whose words in other languages its rules have; null where they have none.</param>
    /// <exception cref="InputException">A rule is not whole.</exception>
    public static IEnumerable<Rule> Read(Node root, string? wordsOf = null)
    {
        var file = root as MapNode ?? throw root.Refuse("rule.file-kind", ("kind", root.Kind));
        file.OnlyKeys("A rule file", "market", "rules");
        return file.Items("rules").Select(n => ReadRule(n as MapNode ?? throw n.Refuse("rule.not-a-rule")) with { WordsOf = wordsOf });
    }

    private static Rule ReadRule(MapNode map)
    {
        map.OnlyKeys("A rule", "id", "severity", "message", "fix", "page", "source", "from", "checked", "until", "basis", "read", "products",
            "sold as", "unless");
        var severity = map.Required("severity", "must");
        var (basis, read) = BasisOf(map);
        return new Rule(
            map.Required("id", "lot.missing").Text,
            Enum.TryParse<Severity>(severity.Text, ignoreCase: true, out var grave)
                ? grave
                : throw severity.Refuse("rule.not-a-severity", ("severity", severity.Text)),
            map.Required("message", "what is wrong").Text,
            map.Required("fix", "what to do").Text,
            map.Required("source", "21 CFR 701.3(a)").Text,
            Date(map.Required("from", "1974-03-15")),
            Date(map.Required("checked", "2026-11-25")))
        {
            PageFix = map.OptionalText("page")?.Text,
            Until = map.OptionalText("until") is { } until ? Date(until) : null,
            Products = [.. map.Texts("products").Select(t => t.Text)],
            BindsCosmeticsOnly = map.OptionalText("sold as") is { } sold
                && (sold.Text == "cosmetic" ? true : throw sold.Refuse("rule.sold-as", ("sold", sold.Text))),
            Unless = [.. map.Texts("unless")
                .Select(t => Exemption.Parse(t.Text) is var e && e.IsValue ? e.Value : throw t.Refuse(e.Problem))],
            Basis = basis,
            Read = read,
        };
    }

    private static (Basis Basis, string? Read) BasisOf(MapNode map)
    {
        var node = map.Required("basis", "text");
        var basis = BasisText.Parse(node.Text);
        if (!basis.IsValue)
            throw node.Refuse(basis.Problem);
        var read = map.OptionalText("read")?.Text;
        return LawTexts.Doubt(basis.Value, read) is { } doubt ? throw node.Refuse(doubt) : (basis.Value, read);
    }

    private static DateOnly Date(TextNode node) =>
        IsoDay.Read(node.Text) is { } date
            ? date
            : throw node.Refuse("rule.not-a-date", ("text", node.Text));
}
