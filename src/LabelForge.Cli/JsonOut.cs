using System.Text.Encodings.Web;
using System.Text.Json;
using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Fragrances;

namespace LabelForge.Cli;

/// <summary>The JSON that other programs read; its shapes are fixed.</summary>
internal static class JsonOut
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(JsonNode answer) => Console.Out.WriteLine(answer.ToJsonString(Options));

    /// <summary>
    /// Writes the same answer for each of several products: the first one's at the top, and all of them under
    /// <c>products</c> with their names. Where there are several, each finding says which product it is about.
    /// </summary>
    public static void Write(IReadOnlyList<(string Product, JsonObject Answer)> answers)
    {
        var whole = answers[0].Answer.DeepClone().AsObject();
        whole["products"] = answers.ToJson(a => Named(a.Product, a.Answer, answers.Count > 1));
        Write(whole);
    }

    /// <summary>A list of answers or words.</summary>
    public static JsonArray ToJson<T>(this IEnumerable<T> items, Func<T, JsonNode?> of) => new([.. items.Select(of)]);

    /// <summary>A list of words.</summary>
    public static JsonArray ToJson(this IEnumerable<string?> words) => words.ToJson(w => (JsonNode?)w);

    /// <summary>A day.</summary>
    public static string ToJson(this DateOnly day) => day.ToIso();

    private static JsonObject Named(string product, JsonObject answer, bool isOneOfSeveral)
    {
        var named = new JsonObject { ["name"] = product };
        foreach (var (key, value) in answer)
            named[key] = value?.DeepClone();
        if (isOneOfSeveral && named["findings"] is JsonArray findings)
        {
            foreach (var finding in findings.OfType<JsonObject>())
                finding["product"] = product;
        }
        return named;
    }

    public static JsonObject Of(Declaration declaration, Assortment? assortment = null) => new JsonObject
    {
        ["market"] = declaration.Market.Id,
        ["statement"] = declaration.Statement,
        ["ingredients"] = declaration.Ingredients.ToJson(i => new JsonObject
        {
            ["name"] = i.Name,
            ["percent"] = Range(i.Low, i.High),
            ["tight"] = declaration.Composition?.Proof.Ingredients.FirstOrDefault(p => p.Name == i.Name)?.IsTight ?? true,
            ["estimate"] = Round(i.Estimate),
            ["part"] = PartName(i.Part),
            ["placed"] = i.Placed.ToString().ToLowerInvariant(),
            ["active"] = i.IsActive,
            ["allergen"] = i.IsAllergen,
            ["itself"] = i.Besides is null || i.IsAllergen ? null : Range(i.Itself.Low, i.Itself.High),
            ["inFragrance"] = i.Besides is { } besides && !i.IsAllergen ? Range(besides.Low, besides.High) : null,
        }),
        ["absent"] = declaration.Composition?.Proof.Absent.ToJson(a => new JsonObject
        {
            ["name"] = a.Name,
            ["why"] = a.IsLost ? "lost" : "none",
        }),
        ["mayContain"] = declaration.MayContain.ToJson(),
        ["proved"] = declaration.IsProved,
        ["unproven"] = declaration.Unsettled
            .ToJson(u => new JsonObject
            {
                ["first"] = u.First,
                ["second"] = u.Second,
                ["rests"] = u.Rests.ToString().ToLowerInvariant(),
                ["ask"] = u.Ask,
            }),
        ["findings"] = declaration.Findings.ToJson(Of),
        ["variants"] = assortment?.Variants.ToJson(v => new JsonObject
        {
            ["name"] = v.Variant.Name,
            ["item"] = v.Variant.Item,
            ["declaration"] = Of(v.Declaration),
        }),
        ["common"] = assortment is null ? null : new JsonObject
        {
            ["lawful"] = assortment.Common.Declaration is not null,
            ["statement"] = assortment.Common.Declaration?.Statement,
            ["why"] = assortment.Common.Why,
            ["source"] = assortment.Common.Source,
        },
    };

    public static JsonObject Of(CheckReport report) => new JsonObject
    {
        ["market"] = report.Market,
        ["findings"] = report.Findings.ToJson(Of),
        ["found"] = new JsonObject
        {
            ["identity"] = report.Found.Identity,
            ["netQuantity"] = report.Found.NetQuantity,
            ["ingredients"] = report.Found.Ingredients.ToJson(),
            ["business"] = report.Found.Business,
            ["place"] = report.Found.Place,
            ["contact"] = report.Found.Contact,
            ["lot"] = report.Found.Lot,
        },
    };

    public static JsonObject Of(FragranceBudget budget, IEnumerable<AllergenTotal> allergens, AllergenRule? rule,
        IEnumerable<Finding> findings) => new JsonObject
        {
            ["category"] = budget.Kind.IfraCategory,
            ["finishedGrams"] = Round(budget.Finished.Grams),
            ["oils"] = budget.Oils.ToJson(o => new JsonObject
            {
                ["name"] = o.Material.Name,
                ["grams"] = Round(o.Mass.Grams),
                ["percent"] = Round(o.Share.Percent),
                ["limitPercent"] = o.Limit?.Percent,
                ["partOfLimit"] = o.PartOfLimit is { } part ? Round(part) : (decimal?)null,
            }),
            ["most"] = budget.Lines
                .ToJson(l => new JsonObject
                {
                    ["name"] = l.Material.Name,
                    ["grams"] = l.Most?.Grams,
                    ["drops"] = l.MostDrops,
                    ["binds"] = l.Binds?.Name,
                }),
            ["together"] = budget.Together is { } sum ? Round(sum) : (decimal?)null,
            ["mostTogetherGrams"] = budget.MostTogether?.Grams,
            ["allergens"] = allergens.ToJson(a => new JsonObject
            {
                ["name"] = a.Name,
                ["percent"] = Range(a.Low, a.High),
                ["named"] = rule is not null && a.Entry is { } entry && rule.Lists(entry) && a.High > rule.Threshold.Percent,
                ["sources"] = a.Sources.ToJson(s => new JsonObject
                {
                    ["material"] = s.Material,
                    ["low"] = Round(s.Low),
                    ["high"] = Round(s.High),
                }),
            }),
            ["findings"] = findings.ToJson(Of),
        };

    public static JsonObject Of(Finding finding) => new JsonObject
    {
        ["rule"] = finding.Rule,
        ["severity"] = finding.Severity.ToString().ToLowerInvariant(),
        ["message"] = finding.Message,
        ["fix"] = finding.Fix,
        ["source"] = finding.Source,
        ["where"] = finding.Where,
        ["basis"] = BasisText.Of(finding.Basis),
        ["unless"] = finding.Unless.IsEmpty ? null : finding.Unless.ToJson(),
    };

    private static JsonObject Range(decimal low, decimal high) => new() { ["low"] = Round(low), ["high"] = Round(high) };

    private static decimal Round(decimal percent) => Math.Round(percent, 10, MidpointRounding.ToEven);

    private static string PartName(Part part) => part.ToString().ToLowerInvariant();
}
