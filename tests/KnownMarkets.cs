using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Markets;

/// <summary>The markets that ship, by the names that tests give them; no code outside the tests names one.</summary>
internal static class KnownMarkets
{
    extension(Market)
    {
        public static Market Us => Market.Named("us");

        public static Market Eu => Market.Named("eu");

        public static Market Uk => Market.Named("uk");

        public static Market Ca => Market.Named("ca");

        public static IEnumerable<Market> All => Shipped.Markets.All;

        public static Market Named(string id) => Shipped.Markets.Find(id).OrRefuse();
    }
}

/// <summary>The dictionary and the markets that ship, as tests take them up.</summary>
internal static class ShippedMarkets
{
    extension(MarketBook)
    {
        public static MarketBook Shipped => LabelForge.Recipes.Shipped.Markets;
    }
}

/// <summary>The same of the dictionary.</summary>
internal static class ShippedDictionary
{
    extension(IngredientDictionary)
    {
        public static IngredientDictionary Shipped => LabelForge.Recipes.Shipped.Dictionary;
    }

    extension(Workshop)
    {
        public static Workshop Open(string folder) => LabelForge.Recipes.Shipped.Open(folder);
    }
}
