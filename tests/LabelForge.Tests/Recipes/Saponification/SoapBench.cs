using System.Collections.Immutable;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Tests.Recipes.Saponification;

/// <summary>A workshop with oils and lyes.</summary>
internal static class SoapBench
{
    public static BenchFolder New() => new BenchFolder()
        .Write("materials/coconut.yaml", "name: Coconut oil\nkind: oil\ncontains: coconut oil\nsaponification: 256 mg KOH/g\n")
        .Write("materials/olive.yaml", "name: Olive oil\nkind: oil\ncontains: olive oil\n")
        .Write("materials/shea.yaml", "name: Shea butter\nkind: oil\ncontains: shea butter\n")
        .Write("materials/stearic.yaml", "name: Stearic acid\nkind: oil\ncontains: Stearic Acid\n")
        .Write("materials/beeswax.yaml", "name: Beeswax\nkind: oil\ncontains: Beeswax\n")
        .Write("materials/jojoba.yaml", "name: Jojoba oil\nkind: oil\ncontains: jojoba oil\n")
        .Write("materials/water.yaml", "name: Water\nkind: water\n")
        .Write("materials/soda.yaml", "name: Caustic soda\nkind: lye\ncontains: Sodium Hydroxide\npurity: 100 %\n")
        .Write("materials/potash.yaml", "name: Potash lye\nkind: lye\ncontains: Potassium Hydroxide\npurity: 90 %\n");

    public static BenchFolder Soap(this BenchFolder bench, string keys, params string[] materials) => bench.Write("recipes/bar.yaml",
        $"name: Bar\nidentity: Bar soap\nproduct: soap-bar\npieces: 2\n{keys}\nmaterials:\n" + string.Concat(
            materials.Select(m => $"  - {{ use: {m} }}\n")));

    public static (Workshop Workshop, BatchFormula Batch) Open(this BenchFolder bench)
    {
        var workshop = Workshop.Open(bench.Path);
        return (workshop, BatchFormula.Of(workshop, workshop.Recipe("bar")));
    }

    public static SoapCharge Charge(this BenchFolder bench)
    {
        var (workshop, batch) = bench.Open();
        return SoapCharge.In(workshop, batch)!;
    }

    public static ImmutableArray<SoapSubstance> Made(this BenchFolder bench) => SoapMade.Of(bench.Charge());

    public static decimal Grams(this ImmutableArray<SoapSubstance> made, string name) =>
        decimal.Round(made.Where(s => s.Name == name).Sum(s => s.Middle), 4);
}
