using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>A workshop with a base of glycerin and water, and a recipe checked for a market.</summary>
internal sealed class CheckedRecipe : IDisposable
{
    private readonly BenchFolder _folder = new();
    private readonly List<string> _uses = [];

    public string Kind { get; init; } = "body-lotion";

    public string Identity { get; init; } = "Thing for the body";

    public string More { get; init; } = "";

    public DateOnly On { get; init; } = new(2026, 11, 25);

    public void Dispose() => _folder.Dispose();

    public CheckedRecipe File(string file, string text)
    {
        _folder.Write(file, text);
        return this;
    }

    /// <summary>A material and its grams; contains is one name or several lines of a supplier's list.</summary>
    public CheckedRecipe Add(decimal grams, string contains, string kind = "additive", string more = "")
    {
        var id = $"material-{_uses.Count + 1}";
        var lines = contains.Split(", ");
        _folder.Write($"materials/{id}.yaml",
            $"name: Material {_uses.Count + 1}\nkind: {kind}\ncontains:\n{string.Concat(lines.Select(l => $"  - {l}\n"))}{more}");
        _uses.Add($"  - {{ use: {id}, amount: {grams.ToString(System.Globalization.CultureInfo.InvariantCulture)} g }}\n");
        return this;
    }

    /// <summary>A material of the number, m1, or the same from another pack, n1.</summary>
    public CheckedRecipe Material(int number, string contains, string kind, string more, bool copy = false) =>
        File($"materials/{(copy ? 'n' : 'm')}{number}.yaml", $"name: Material m{number}\nkind: {kind}\ncontains:\n  - {contains}\n{more}");

    /// <summary>So many grams of a material; nothing where there are none.</summary>
    public CheckedRecipe Use(decimal grams, string id)
    {
        if (grams > 0)
            _uses.Add($"  - {{ use: {id}, amount: {grams.ToString(System.Globalization.CultureInfo.InvariantCulture)} g }}\n");
        return this;
    }

    public CheckReport In(Market market) => RecipeCheck.Run(Facts(market));

    /// <summary>The findings of these rules as <c>rule severity</c>.</summary>
    public string[] Found(Market market, params string[] rules) =>
        [.. In(market).Findings.Where(f => rules.Contains(f.Rule)).Select(f => $"{f.Rule} {f.Severity.ToString().ToLowerInvariant()}")];

    /// <summary>What is said of substances, as <c>rule severity</c>.</summary>
    public string[] Substances(Market market) => Found(market, "substance.prohibited", "substance.over-limit", "colour.not-permitted");

    private string Net => ProductKinds.Find(Kind).Value!.QuantityBy == QuantityBy.Volume ? "200 mL" : "200 g";

    public RecipeFacts Facts(Market market)
    {
        _folder.Write("recipes/thing.yaml",
            $"name: Thing\nidentity: {Identity}\nproduct: {Kind}\npieces: 1\nnet: {Net}\n{More}materials:\n{string.Concat(_uses)}");
        return FactsOf(Workshop.Open(_folder.Path), "thing", market, On);
    }

    /// <summary>What the checks read of a recipe in a workshop.</summary>
    public static RecipeFacts FactsOf(Workshop workshop, string recipe, Market market, DateOnly on)
    {
        var batch = BatchFormula.Of(workshop, workshop.Recipe(recipe));
        var kind = ProductKindOf.Recipe(batch.Recipe);
        var declaration = DeclarationBuilder.Build(workshop, batch, kind, market, on);
        var content = LabelContentBuilder.Build(workshop, batch, kind, declaration,
            Panel.Rectangle(Length.FromInches(2), Length.FromInches(4)), null, on);
        return new RecipeFacts(workshop, batch, kind, declaration, content, []) { On = on };
    }
}
