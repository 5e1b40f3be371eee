using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Reads the <c>facts:</c> of a recipe.</summary>
internal static class FactsFile
{
    /// <summary>What the maker has settled; nothing where the recipe has no facts.</summary>
    /// <exception cref="InputException">A fact is not known, or its answer is neither yes nor no.</exception>
    public static ProductFacts Read(MapNode recipe)
    {
        var facts = ProductFacts.None;
        foreach (var entry in recipe.OptionalMap("facts")?.Entries ?? [])
        {
            var fact = ProductFact.Find(entry.Key);
            if (!fact.IsValue)
                throw entry.Name.Refuse(fact.Problem);
            facts = facts.With(entry.Key, entry.Value is TextNode { Text: var text } && ProductFacts.Answer(text) is { } so
                ? so
                : throw entry.Value.Refuse("recipe.fact-no-answer", ("asks", fact.Value.Asks), ("name", entry.Key)));
        }
        return facts;
    }
}
