using LabelForge.Formulas;
using LabelForge.Ingredients.Levels;

namespace LabelForge.Benchmarks;

/// <summary>Learns usual levels from the published formulas, and says in docs/order.md how good the estimate by them is.</summary>
internal static class EstimatePart
{
    public static void Learn()
    {
        var (families, places) = (Repository.File("ingredients/tables/family-levels.csv"),
            Repository.File("ingredients/tables/place-levels.csv"));
        var (before, beforePlaces) = (File.ReadAllText(families), File.ReadAllText(places));
        File.WriteAllText(families, Learning.FamilyTable(PublishedFormula.ToLearnFrom, IngredientDictionary.Shipped.Levels));
        File.WriteAllText(places, Learning.PlaceTable(PublishedFormula.ToLearnFrom));
        if (File.ReadAllText(families) != before || File.ReadAllText(places) != beforePlaces)
            Console.Error.WriteLine("The tables of learned levels were written anew: they are embedded at build, so run this once more.");
        var text = EstimateMeasure.Table();
        Console.WriteLine(text);
        var page = Repository.File("docs/order.md");
        File.WriteAllText(page, PerformancePage.Put(File.ReadAllText(page), "estimate", text));
    }
}
