using LabelForge.Markets;

namespace LabelForge.Ingredients;

/// <summary>How a market names ingredients. A market.yaml names one; a way that is new is one more entry here.</summary>
public sealed class IngredientNaming
{
    private static readonly Dictionary<string, IngredientNaming> Ways = new(StringComparer.Ordinal)
    {
        ["american"] = new(i => i.Us),
        ["european"] = new(i => i.Eu),
        ["canadian"] = new(i => i.Canada ?? i.Eu),
    };

    private readonly Func<Ingredient, string> name;

    private IngredientNaming(Func<Ingredient, string> name) => this.name = name;

    /// <summary>The way of a market.</summary>
    /// <exception cref="Measures.InputException">Its market.yaml names none that is known here.</exception>
    public static IngredientNaming Of(Market market) => Ways.GetValueOrDefault(market.Ways.IngredientNames) ?? throw new Measures.InputException(new Measures.Problem(
        $"{market.Id}/market.yaml", 0, $"\"{market.Ways.IngredientNames}\" is no way to name ingredients.", $"Write one of: {string.Join(", ", Ways.Keys)}."));

    /// <summary>The name that an ingredient carries.</summary>
    public string NameOf(Ingredient ingredient) => name(ingredient);
}
