using LabelForge.Ingredients;
using LabelForge.Recipes;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Declarations;

/// <summary>
/// The mass balance of a batch, done once: what was weighed in, what reacted, what left, and what the finished product holds.
/// Whatever is said of a product's composition asks it: the declaration, allergens, limits, colours, fragrance and soap.
/// </summary>
/// <remarks>Two batches that end as the same product answer alike, whatever left them and however their materials were mixed.</remarks>
public sealed class FinishedProduct
{
    private readonly Lazy<ImmutableArray<ExplodedShare>> _charged;
    private readonly Lazy<ImmutableArray<FinishedMaterial>> _materials;
    private readonly Lazy<ImmutableArray<AllergenTotal>> _allergens;
    private readonly Lazy<ImmutableArray<SubstanceShare>> _substances;
    private readonly Lazy<SoapCharge?> _soap;

    private FinishedProduct(Workshop workshop, BatchFormula batch)
    {
        (Workshop, Batch) = (workshop, batch);
        _charged = new(() => ExplodedFormula.Of(workshop, batch));
        _materials = new(() => [.. Charged.Select(c => new FinishedMaterial(c.Material, Of(c.Share)))]);
        _allergens = new(() => AllergenSum.Of(Materials, workshop));
        _substances = new(() => SubstanceShares.Of(this));
        _soap = new(() => SoapCharge.In(workshop, batch));
    }

    /// <summary>Where the materials are described.</summary>
    public Workshop Workshop { get; }

    /// <summary>What was weighed in and what left.</summary>
    public BatchFormula Batch { get; }

    /// <summary>What the finished batch weighs.</summary>
    public Mass Mass => Batch.Yield;

    /// <summary>The bought materials as shares of what was weighed in; blends made in the shop are opened up.</summary>
    /// <exception cref="InputException">A material is made from itself.</exception>
    public ImmutableArray<ExplodedShare> Charged => _charged.Value;

    /// <summary>The same as shares of the finished product. Where something left they come to more than 1 together.</summary>
    /// <exception cref="InputException">A material is made from itself.</exception>
    public ImmutableArray<FinishedMaterial> Materials => _materials.Value;

    /// <summary>What left, each as a share of what was weighed in.</summary>
    public IEnumerable<(BatchLoss Loss, ChargeShare Share)> Lost =>
        Batch.Losses.Select(l => (l, new ChargeShare(l.Mass.Grams / Batch.Total.Grams)));

    /// <summary>The oils and the lye that reacted; null where no soap is made.</summary>
    /// <exception cref="InputException">A lye or an oil does not say what is needed to count it.</exception>
    public SoapCharge? Soap => _soap.Value;

    /// <summary>The fragrance allergens in the finished product, over every source, greatest first.</summary>
    /// <exception cref="InputException">A material's figures contradict themselves.</exception>
    public ImmutableArray<AllergenTotal> Allergens => _allergens.Value;

    /// <summary>Every substance that can be in the finished product, and its bounds: declared by name, or inside a fragrance.</summary>
    /// <exception cref="InputException">The suppliers' data contradict themselves.</exception>
    public ImmutableArray<SubstanceShare> Substances => _substances.Value;

    /// <summary>The balance of a batch.</summary>
    public static FinishedProduct Of(Workshop workshop, BatchFormula batch) => new(workshop, batch);

    /// <summary>The balance of a product.</summary>
    public static FinishedProduct Of(Product product) => new(product.Workshop, product.Batch);

    /// <summary>What a share of the charge is of the finished product, where nothing of it left.</summary>
    public FinishedShare Of(ChargeShare share) => new(share.Fraction / Batch.Left);

    /// <summary>What a mass that was weighed in is of the finished product, where nothing of it left.</summary>
    public FinishedShare Of(Mass mass) => new(mass.Grams / Mass.Grams);

    /// <summary>What was weighed in for a share of the finished product.</summary>
    public ChargeShare Charge(FinishedShare share) => new(share.Fraction * Batch.Left);

    /// <summary>What it is made of and what of its order is proved, under the names of a label.</summary>
    /// <param name="dictionary">The names known.</param>
    /// <param name="rules">The law of the label, which says where the order by weight ends.</param>
    /// <param name="nameOf">The name on the label of a dictionary key; null where each key is a name of its own.</param>
    /// <param name="named">Allergens that are named besides what holds them.</param>
    /// <exception cref="InputException">The suppliers' data contradict themselves, or soap that
    /// is to be declared as formed cannot be worked out or named.</exception>
    public BatchComposition Composition(IngredientDictionary dictionary, RulesOf rules, Func<string, string>? nameOf = null,
        ImmutableArray<AllergenTotal> named = default) =>
        BatchComposition.Of(this, dictionary, rules, nameOf, named);
}
