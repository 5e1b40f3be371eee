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

        public static IEnumerable<Market> All => MarketBook.Shipped.All;

        public static Market Named(string id) => MarketBook.Shipped.Find(id).OrRefuse();
    }
}
