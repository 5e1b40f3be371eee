using LabelForge.Declarations;
using LabelForge.Recipes;

namespace LabelForge.Fragrances;

/// <summary>A fragrance or essential oil in a finished batch, held against its own certificate.</summary>
/// <param name="Material">The oil as it was bought, blends opened up.</param>
/// <param name="Mass">How much of it is in the batch.</param>
/// <param name="Share">Its share of the finished product.</param>
/// <param name="Limit">Its certificate's limit for the product's IFRA category; null where none is written down.</param>
public sealed record FragranceOil(Material Material, Mass Mass, FinishedShare Share, Share? Limit)
{
    /// <summary>How much of its limit is used up: 1 is all of it; null where no limit is written down, or it is nothing at all.</summary>
    public decimal? PartOfLimit => Limit is { Fraction: > 0 } limit ? Share.Fraction / limit.Fraction : null;

    /// <summary>Whether it exceeds its limit.</summary>
    public bool IsOver => Limit is { } limit && Share.Fraction > limit.Fraction;
}

/// <summary>A line of a recipe that brings fragrance: an oil, or something mixed in the shop that holds oils.</summary>
/// <param name="Material">What the line adds.</param>
/// <param name="Mass">How much of it the recipe adds.</param>
/// <param name="Most">
/// The most of it that this batch can take with everything else as it is, so that no oil in it exceeds its own limit,
/// rounded down to 0.01 g; null where a limit is not written down, or none binds.
/// </param>
/// <param name="Binds">The oil whose limit is reached first; null where <paramref name="Most"/> is.</param>
public sealed record FragranceLine(Material Material, Mass Mass, Mass? Most, Material? Binds)
{
    /// <summary>The same in whole drops, rounded down; null where the density is not known, or <see cref="Most"/> is not.</summary>
    public int? MostDrops => Most is { } most && Material.GramsPerMillilitre is { } density
        ? (int)Math.Floor(most.Grams / density * Material.DropsPerMillilitre)
        : null;
}

/// <summary>All the fragrance of a batch against the limits for its IFRA category.</summary>
/// <param name="Kind">The product's kind, which has the category.</param>
/// <param name="Finished">What the finished batch weighs.</param>
/// <param name="Oils">The oils, blends opened up.</param>
/// <param name="Lines">The recipe's lines that bring them.</param>
public sealed record FragranceBudget(ProductKind Kind, Mass Finished, ImmutableArray<FragranceOil> Oils,
    ImmutableArray<FragranceLine> Lines)
{
    /// <summary>
    /// The parts of their limits that the oils use up, added together; null where an oil's limit is not written down.
    /// </summary>
    /// <remarks>
    /// A limit comes from what the oil is made of, and two oils may hold the same restricted substance. While the parts
    /// sum to no more than 1 no shared substance can exceed its own limit, whatever the oils are made of: if substance s
    /// is at most its limit L in the product at each oil's own limit, oil i brings at most L times its part. So the sum is
    /// a safe bound, not a rule of the certificates: common practice.
    /// </remarks>
    public decimal? Together => Oils.All(o => o.PartOfLimit is not null) ? Oils.Sum(o => o.PartOfLimit!.Value) : null;

    /// <summary>Whether the parts sum to more than 1 although no oil exceeds its own limit.</summary>
    public bool IsOverTogether => Together > 1 && !Oils.Any(o => o.IsOver);

    /// <summary>
    /// The most that all the fragrance of the batch may weigh, in the proportions of the recipe and with everything else as
    /// it is, so that the parts sum to 1; rounded down to 0.01 g. Null where <see cref="Together"/> is, or nothing binds.
    /// </summary>
    public Mass? MostTogether
    {
        get
        {
            if (Oils.IsEmpty || Together is null)
                return null;
            // k times all oils: sum of k * a / L = rest + k * sum of a, with a the grams of an oil and L its limit.
            var grams = Oils.Sum(o => o.Mass.Grams);
            var needed = Oils.Sum(o => o.Mass.Grams / o.Limit!.Value.Fraction);
            return needed > grams ? FragranceLimits.Floor(grams * (Finished.Grams - grams) / (needed - grams)) : null;
        }
    }
}
