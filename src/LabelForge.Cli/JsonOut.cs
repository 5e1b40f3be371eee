using System.Text.Encodings.Web;
using System.Text.Json;
using LabelForge.Checks;
using LabelForge.Composition;
using LabelForge.Declarations;

namespace LabelForge.Cli;

/// <summary>The JSON that other programs read; its shapes are fixed.</summary>
internal static class JsonOut
{
    private static readonly JsonSerializerOptions Options = new()
    {
        WriteIndented = true,
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    public static void Write(object value) => Console.Out.WriteLine(JsonSerializer.Serialize(value, Options));

    public static object Of(Declaration declaration) => new
    {
        market = declaration.Market,
        statement = declaration.Statement,
        ingredients = declaration.Ingredients.Select(i => new
        {
            name = i.Name,
            percent = new { low = Round(i.Low), high = Round(i.High) },
            estimate = Round(i.Estimate),
            part = PartName(i.Part),
            active = i.IsActive,
            allergen = i.IsAllergen,
        }),
        mayContain = declaration.MayContain,
        proved = declaration.IsProved,
        unproven = declaration.Unsettled.Select(u => new { first = u.First, second = u.Second, ask = u.Ask }),
        findings = declaration.Findings.Select(Of),
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

    private static object Of(Finding finding) => new
    {
        rule = finding.Rule,
        severity = finding.Severity.ToString().ToLowerInvariant(),
        message = finding.Message,
        fix = finding.Fix,
        source = finding.Source,
        where = finding.Where,
    };

    private static decimal Round(decimal percent) => Math.Round(percent, 10, MidpointRounding.ToEven);

    private static string PartName(Part part) => part.ToString().ToLowerInvariant();
}
