using LabelForge.Checks;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Cli;

/// <summary>Soap made from oils, as a person reads it and as other programs do.</summary>
internal static class SoapReport
{
    public static void Write(BatchFormula batch, SoapCharge charge, IReadOnlyList<Finding> findings)
    {
        Console.WriteLine("What takes up lye, by saponification value:");
        foreach (var fat in charge.Fats)
            Console.WriteLine($"  {Grams(fat.Grams)} g  {fat.Name}, {Range(fat.Value.Low, fat.Value.High)} mg KOH/g {(fat.IsFromCertificate ? "from its certificate" : "from the dictionary")}");
        Console.WriteLine("\nLye:");
        foreach (var lye in charge.Lyes)
            Console.WriteLine($"  {Grams(lye.Grams)} g  {lye.Material.Name}, {lye.Purity} {lye.Alkali.Name.ToLowerInvariant()}");
        Console.WriteLine($"\n{SoapSentences.Superfat(Superfat.Of(charge))}");

        var made = SoapMade.Of(charge);
        Console.WriteLine("\nWhat comes of oils and lye (grams by the middle of the values, and between which they lie):");
        foreach (var s in made)
            Console.WriteLine($"  {Grams(s.Middle)} g  {(s.Low == s.High ? "" : Range(decimal.Round(s.Low, 1), decimal.Round(s.High, 1))),17}  {s.Name}{Says(s.Part)}");
        Console.WriteLine($"  {Grams(made.Sum(s => s.Middle))} g  in all, as much as went in");
        var rest = batch.Total.Grams - charge.Grams;
        if (rest > 0)
            Console.WriteLine($"  {Grams(rest)} g  of other materials, water among them, besides");
        foreach (var loss in batch.Losses)
            Console.WriteLine($"  {Grams(-loss.Mass.Grams)} g  {loss.Ingredient} that left");
        Console.WriteLine($"  {Grams(batch.Yield.Grams)} g  the batch when finished");
        Console.WriteLine();
        foreach (var sentence in SoapSentences.Assumptions)
            Console.WriteLine($"- {sentence}");
        foreach (var finding in findings)
            Console.WriteLine($"\n{finding.Severity.ToString().ToUpperInvariant()} {finding.Rule} [{finding.Source}]\n  {finding.Message}\n  {finding.Fix}");
        WriteCautions();
    }

    public static void WriteCautions()
    {
        Console.WriteLine("\nCautions:");
        foreach (var caution in LyeCautions.All)
            Console.WriteLine($"- {caution}");
    }

    public static JsonObject Json(BatchFormula batch, SoapCharge charge, IReadOnlyList<Finding> findings)
    {
        var superfat = Superfat.Of(charge);
        return new JsonObject
        {
            ["fats"] = charge.Fats
                .ToJson(f => new JsonObject
                {
                    ["name"] = f.Name,
                    ["grams"] = Round(f.Grams),
                    ["saponification"] = new JsonObject { ["low"] = f.Value.Low, ["high"] = f.Value.High },
                    ["fromCertificate"] = f.IsFromCertificate
                }),
            ["lyes"] = charge.Lyes
                .ToJson(l => new JsonObject
                {
                    ["material"] = l.Material.Id,
                    ["alkali"] = l.Alkali.Name,
                    ["grams"] = Round(l.Grams),
                    ["purityPercent"] = l.Purity.Percent
                }),
            ["superfatPercent"] = new JsonObject
            {
                ["low"] = Round(superfat.Least * 100),
                ["middle"] = Round(superfat.Middle * 100),
                ["high"] = Round(superfat.Most * 100)
            },
            ["made"] = SoapMade.Of(charge)
                .ToJson(s => new JsonObject
                {
                    ["name"] = s.Name,
                    ["what"] = What(s.Part),
                    ["grams"] = new JsonObject { ["low"] = Round(s.Low), ["middle"] = Round(s.Middle), ["high"] = Round(s.High) }
                }),
            ["otherMaterialsGrams"] = Round(batch.Total.Grams - charge.Grams),
            ["finishedGrams"] = Round(batch.Yield.Grams),
            ["findings"] = findings.ToJson(f => new JsonObject
            {
                ["rule"] = f.Rule,
                ["severity"] = f.Severity.ToString().ToLowerInvariant(),
                ["message"] = f.Message,
                ["fix"] = f.Fix,
                ["source"] = f.Source,
                ["where"] = f.Where
            }),
        };
    }

    private static string Says(SoapPart part) => part switch
    {
        SoapPart.Unreacted => " left without lye",
        SoapPart.Water => " from the lye and of fatty acids",
        SoapPart.SpareAlkali => " LEFT OVER",
        _ => "",
    };

    private static string What(SoapPart part) => part switch
    {
        SoapPart.SpareAlkali => "spare alkali",
        _ => part.ToString().ToLowerInvariant(),
    };

    private static string Range(decimal low, decimal high) => low == high
        ? low.ToString("0.##", CultureInfo.InvariantCulture)
        : $"{low.ToString("0.##", CultureInfo.InvariantCulture)} to {high.ToString("0.##", CultureInfo.InvariantCulture)}";

    private static string Grams(decimal grams) => grams.ToString("0.0", CultureInfo.InvariantCulture).PadLeft(9);

    private static decimal Round(decimal value) => Math.Round(value, 10);
}
