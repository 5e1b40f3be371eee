using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Declarations;

/// <summary>A workshop for declarations: materials and one recipe, named bar, written line by line.</summary>
internal sealed class MakerBench : IDisposable
{
    private readonly BenchFolder folder = new();

    public MakerBench Material(string id, string kind, string contains, string more = "")
    {
        folder.Write($"materials/{id}.yaml", $"name: {id}\nkind: {kind}\ncontains: {contains}\n{more}");
        return this;
    }

    public MakerBench Write(string file, string text)
    {
        folder.Write(file, text);
        return this;
    }

    /// <summary>A recipe of amounts in grams.</summary>
    public MakerBench Recipe(string product, string more, params (string Material, string Amount)[] materials)
    {
        var uses = string.Concat(materials.Select(m => $"  - {{ use: {m.Material}, amount: {m.Amount} }}\n"));
        folder.Write("recipes/bar.yaml", $"name: Bar\nidentity: Bar\nproduct: {product}\npieces: 1\nmaterials:\n{uses}{more}");
        return this;
    }

    public Workshop Workshop => LabelForge.Recipes.Workshop.Open(folder.Path);

    public Declaration Declare(Market market, string on = "2026-11-25", NameStyle style = NameStyle.Market)
    {
        var workshop = Workshop;
        var recipe = workshop.Recipe("bar");
        return DeclarationBuilder.Build(workshop, BatchFormula.Of(workshop, recipe), ProductKindOf.Recipe(recipe), market,
            DateOnly.ParseExact(on, "yyyy-MM-dd", null), style);
    }

    public void Dispose() => folder.Dispose();
}
