using LabelForge.Checks;
using LabelForge.Composition;

namespace LabelForge.Declarations;

/// <summary>One ingredient as a market's declaration names it.</summary>
/// <param name="Name">The name that stands on the label.</param>
/// <param name="Low">The least it can be of the finished product, mass percent.</param>
/// <param name="High">The most it can be of the finished product, mass percent.</param>
/// <param name="Estimate">The best estimate, mass percent: of all that the data allow, what is nearest to usual.</param>
/// <param name="Part">Its part of the declaration.</param>
public sealed record DeclaredIngredient(string Name, decimal Low, decimal High, decimal Estimate, Part Part)
{
    /// <summary>On what its place rests.</summary>
    public Placed Placed { get; init; }

    /// <summary>Whether it is an active drug ingredient, declared apart and first (21 CFR 701.3(d)).</summary>
    public bool IsActive { get; init; }

    /// <summary>Whether it is a fragrance allergen named only besides the fragrance that brings it.</summary>
    public bool IsAllergen { get; init; }

    /// <summary>What of it is an ingredient by itself, mass percent of the finished product.</summary>
    public PercentRange Itself { get; init; } = new(Low, High);

    /// <summary>What of it is a part of a fragrance or an oil; it counts for the place in the order. Null where nothing is.</summary>
    public PercentRange? Besides { get; init; }
}

/// <summary>The least and the most that something can be, mass percent.</summary>
public sealed record PercentRange(decimal Low, decimal High);

/// <summary>Two ingredients whose order the data does not settle, as they stand on the label, and what would settle it.</summary>
public sealed record UnsettledPair(string First, string Second, string Ask)
{
    /// <summary>The figure to ask for, as data; null where only the sentence is known.</summary>
    public Ask? Wanted { get; init; }

    /// <summary>On what their order rests: published usual levels, or a guess.</summary>
    public Placed Rests { get; init; } = Placed.Guess;
}

/// <summary>A market's ingredient declaration of a finished product.</summary>
/// <param name="Market">The market.</param>
/// <param name="Heading">What stands before the names.</param>
/// <param name="Ingredients">The ingredients in label order, active drug ingredients first.</param>
/// <param name="Unsettled">The pairs whose order is not proved.</param>
/// <param name="Findings">What was noticed in making it.</param>
public sealed record Declaration(
    Market Market, string Heading, ImmutableArray<DeclaredIngredient> Ingredients, ImmutableArray<UnsettledPair> Unsettled,
    ImmutableArray<Finding> Findings)
{
    /// <summary>What the order rests on; null for a declaration of several products together.</summary>
    public BatchComposition? Composition { get; init; }

    /// <summary>Colours that not every product or batch under this label holds, as they stand on it; empty where there are none.</summary>
    public ImmutableArray<string> MayContain { get; init; } = [];

    /// <summary>The words before <see cref="MayContain"/>: <c>May contain:</c> or <c>+/-</c>.</summary>
    public string MayContainWords { get; init; } = "May contain:";

    /// <summary>The names that stand after <see cref="Heading"/>, in label order: without the
    /// active drug ingredients, which the heading holds.</summary>
    public ImmutableArray<string> Names
    {
        get
        {
            var names = Ingredients.Where(i => !i.IsActive).Select(i => i.Name).ToImmutableArray();
            if (MayContain.IsEmpty)
                return names;
            var may = $"{MayContainWords} {string.Join(", ", MayContain)}";
            return names.Add(MayContainWords.StartsWith('+') ? $"[{may}]" : may);
        }
    }

    /// <summary>The whole declaration as it reads on the label.</summary>
    public string Statement => $"{Heading} {string.Join(", ", Names)}.";

    /// <summary>Whether every order in it is proved from the suppliers' data.</summary>
    public bool IsProved => Unsettled.IsEmpty;
}
