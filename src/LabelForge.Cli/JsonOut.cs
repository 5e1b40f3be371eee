using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization;
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
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new MarketId() },
    };

    public static void Write(object value) => Console.Out.WriteLine(JsonSerializer.Serialize(value, Options));

    /// <summary>
    /// Writes the same answer for each of several products: the first one's at the top, and all of them under
    /// <c>products</c> with their names. Where there are several, each finding says which product it is about.
    /// </summary>
    public static void Write(IReadOnlyList<(string Product, object Answer)> answers)
    {
        var all = answers.Select(a => Named(a.Product, a.Answer, answers.Count > 1)).ToArray();
        var whole = (JsonObject)JsonSerializer.SerializeToNode(answers[0].Answer, Options)!;
        whole["products"] = new JsonArray([.. all]);
        Write((object)whole);
    }

    private static JsonObject Named(string product, object answer, bool isOneOfSeveral)
    {
        var named = new JsonObject { ["name"] = product };
        foreach (var (key, value) in (JsonObject)JsonSerializer.SerializeToNode(answer, Options)!)
            named[key] = value?.DeepClone();
        if (isOneOfSeveral && named["findings"] is JsonArray findings)
        {
            foreach (var finding in findings.OfType<JsonObject>())
                finding["product"] = product;
        }
        return named;
    }

    public static object Of(Declaration declaration, Assortment? assortment = null) => new
    {
        market = MarketText.Of(declaration.Market),
        statement = declaration.Statement,
        ingredients = declaration.Ingredients.Select(i => new
        {
            name = i.Name,
            percent = new { low = Round(i.Low), high = Round(i.High) },
            tight = declaration.Composition?.Proof.Ingredients.FirstOrDefault(p => p.Name == i.Name)?.IsTight ?? true,
            estimate = Round(i.Estimate),
            part = PartName(i.Part),
            placed = i.Placed.ToString().ToLowerInvariant(),
            active = i.IsActive,
            allergen = i.IsAllergen,
            itself = i.Besides is null || i.IsAllergen ? null : new { low = Round(i.Itself.Low), high = Round(i.Itself.High) },
            inFragrance = i.Besides is { } besides && !i.IsAllergen ? new { low = Round(besides.Low), high = Round(besides.High) } : null,
        }),
        absent = declaration.Composition?.Proof.Absent.Select(a => new { name = a.Name, why = a.IsLost ? "lost" : "none" }),
        mayContain = declaration.MayContain,
        proved = declaration.IsProved,
        unproven = declaration.Unsettled
            .Select(u => new { first = u.First, second = u.Second, rests = u.Rests.ToString().ToLowerInvariant(), ask = u.Ask }),
        findings = declaration.Findings.Select(Of),
        variants = assortment?.Variants.Select(v => new { name = v.Variant.Name, item = v.Variant.Item, declaration = Of(v.Declaration) }),
        common = assortment is null ? null : new
        {
            lawful = assortment.Common.Declaration is not null,
            statement = assortment.Common.Declaration?.Statement,
            why = assortment.Common.Why,
            source = assortment.Common.Source,
        },
    };

    public static object Of(CheckReport report) => new
    {
        market = report.Market,
        findings = report.Findings.Select(Of),
        found = new
        {
            identity = report.Found.Identity,
            netQuantity = report.Found.NetQuantity,
            ingredients = report.Found.Ingredients,
            business = report.Found.Business,
            place = report.Found.Place,
            contact = report.Found.Contact,
            lot = report.Found.Lot,
        },
    };

    public static object Of(FragranceBudget budget, IEnumerable<AllergenTotal> allergens, AllergenRule? rule,
        IEnumerable<Finding> findings) => new
        {
            category = budget.Kind.IfraCategory,
            finishedGrams = Round(budget.Finished.Grams),
            oils = budget.Oils.Select(o => new
            {
                name = o.Material.Name,
                grams = Round(o.Mass.Grams),
                percent = Round(o.Share.Percent),
                limitPercent = o.Limit?.Percent,
                partOfLimit = o.PartOfLimit is { } part ? Round(part) : (decimal?)null,
            }),
            most = budget.Lines
                .Select(l => new { name = l.Material.Name, grams = l.Most?.Grams, drops = l.MostDrops, binds = l.Binds?.Name }),
            together = budget.Together is { } sum ? Round(sum) : (decimal?)null,
            mostTogetherGrams = budget.MostTogether?.Grams,
            allergens = allergens.Select(a => new
            {
                name = a.Name,
                percent = new { low = Round(a.Low), high = Round(a.High) },
                named = rule is not null && a.Entry is { } entry && rule.Lists(entry) && a.High > rule.Threshold.Percent,
                sources = a.Sources.Select(s => new { material = s.Material, low = Round(s.Low), high = Round(s.High) }),
            }),
            findings = findings.Select(Of),
        };

    public static object Of(Finding finding) => new
    {
        rule = finding.Rule,
        severity = finding.Severity.ToString().ToLowerInvariant(),
        message = finding.Message,
        fix = finding.Fix,
        source = finding.Source,
        where = finding.Where,
        basis = BasisText.Of(finding.Basis),
        unless = finding.Unless.IsEmpty ? null : finding.Unless.ToArray(),
    };

    private static decimal Round(decimal percent) => Math.Round(percent, 10, MidpointRounding.ToEven);

    private static string PartName(Part part) => part.ToString().ToLowerInvariant();

    // A market stands in answers by its id; what its folder holds is nobody's answer.
    private sealed class MarketId : JsonConverter<Market>
    {
        public override Market Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            throw new NotSupportedException("Answers are only written.");

        public override void Write(Utf8JsonWriter writer, Market value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.Id);
    }
}
