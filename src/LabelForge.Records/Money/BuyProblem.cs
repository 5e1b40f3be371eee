namespace LabelForge.Records.Money;

/// <summary>A pack that can be bought whole.</summary>
/// <param name="Size">As the shop writes it.</param>
/// <param name="Amount">Grams or pieces.</param>
/// <param name="Cents">Its price in hundredths of the currency.</param>
public sealed record BuyPack(string Size, decimal Amount, long Cents);

/// <summary>A material: what is there, and in what packs more can be had.</summary>
public sealed record BuyMaterial(string Id, decimal Stock, IReadOnlyList<BuyPack> Packs);

/// <summary>A product: what so many pieces of it take of each material, and how many are wanted at least.</summary>
/// <param name="Id">The recipe.</param>
/// <param name="PerBatch">Grams or pieces of each material that a batch takes.</param>
/// <param name="Pieces">How many pieces a batch makes, above 0.</param>
/// <param name="Least">How many are wanted at least.</param>
public sealed record BuyProduct(string Id, IReadOnlyDictionary<string, decimal> PerBatch, int Pieces, int Least)
{
    /// <summary>What so many pieces take of a material, divided last of all so that a whole batch takes what it takes.</summary>
    public decimal Takes(string material, long pieces) => pieces * PerBatch.GetValueOrDefault(material) / Pieces;
}

/// <summary>A thing that pouring needs and no batch uses up.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">What it is.</param>
/// <param name="Cents">What one costs, in hundredths of the currency; null where nobody says, and none is bought.</param>
/// <param name="IsGuess">Whether that is the upper end of what is usual, because the maker has written no price.</param>
/// <param name="For">The products that cannot be made without one, as their places in the list.</param>
public sealed record BuyTool(string Id, string Name, long? Cents, bool IsGuess, IReadOnlyList<int> For)
{
    /// <summary>How many there are already.</summary>
    public int Have { get; init; }

    /// <summary>How many pieces one makes at a time; null where one is enough for any number of pieces.</summary>
    public int? Pieces { get; init; }

    /// <summary>How many pieces those that are there make at a time.</summary>
    public int PiecesHad { get; init; }
}

/// <summary>What to buy: the cheapest packs for the wanted pieces, or the most pieces that a budget makes.</summary>
/// <param name="Materials">The materials.</param>
/// <param name="Products">The products.</param>
/// <param name="BudgetCents">The budget; null for none.</param>
/// <param name="Most">Whether as many pieces as possible are wanted (needs a budget), not only the least.</param>
public sealed record BuyProblem(IReadOnlyList<BuyMaterial> Materials, IReadOnlyList<BuyProduct> Products, long? BudgetCents, bool Most)
{
    /// <summary>The things that pouring needs besides; empty where they are not counted.</summary>
    public IReadOnlyList<BuyTool> Tools { get; init; } = [];

    /// <summary>What pouring needs besides and has no price, by name: it is left out.</summary>
    public IReadOnlyList<string> WithoutPrice { get; init; } = [];

    /// <summary>How often a mould is filled at most; null for as often as it takes.</summary>
    public int? Fillings { get; init; }

    /// <summary>The materials of which there is not enough and no pack to buy more: while there
    /// are any, nothing can be reckoned.</summary>
    public IReadOnlyList<string> NotToBeHad =>
        [.. Materials.Where(m => m.Packs.Count == 0 && m.Stock < Products.Sum(p => p.Takes(m.Id, Math.Max(1, p.Least))))
            .Select(m => m.Id)];
}

/// <summary>The answer.</summary>
/// <param name="Packs">How many of which pack.</param>
/// <param name="Pieces">How many of which product.</param>
/// <param name="Cents">What it costs.</param>
/// <param name="Left">What is left of each material afterwards.</param>
/// <param name="Optimal">Whether it is proved that there is no better.</param>
public sealed record BuyPlan(IReadOnlyList<(string Material, BuyPack Pack, long Count)> Packs, IReadOnlyDictionary<string, long> Pieces,
    long Cents, IReadOnlyDictionary<string, decimal> Left, bool Optimal)
{
    /// <summary>How many of which thing that no batch uses up.</summary>
    public IReadOnlyList<(BuyTool Tool, long Count)> Tools { get; init; } = [];

    /// <summary>How many pieces all together.</summary>
    public long Made => Pieces.Values.Sum();
}
