namespace LabelForge.Composition;

/// <summary>Where in a declaration an ingredient belongs.</summary>
public enum Part
{
    /// <summary>Can exceed 1 % of the product: stands in descending order of weight.</summary>
    Main,

    /// <summary>Cannot exceed 1 %: follows in any order.</summary>
    Minor,

    /// <summary>A colour additive: stands last, in any order.</summary>
    Colour,
}

/// <summary>What the data proves about the order of two ingredients.</summary>
public enum PairOrder
{
    /// <summary>Either order will do, whatever the true composition.</summary>
    SafeBothWays,

    /// <summary>Only the first before the second is right for every composition.</summary>
    FirstForced,

    /// <summary>Only the second before the first is right for every composition.</summary>
    SecondForced,

    /// <summary>Each order is wrong for some composition that the data allows.</summary>
    Unproven,
}

/// <summary>An ingredient of the finished product.</summary>
/// <param name="Name">Its canonical name.</param>
/// <param name="Low">Its least possible share of the finished product, a fraction from 0 to 1.</param>
/// <param name="High">Its greatest possible share, a fraction from 0 to 1.</param>
/// <param name="Estimate">
/// Its share where every material has its middle composition: on the straight line from all the least shares that the
/// material's list allows to all the greatest, the point that sums to 100 %.
/// </param>
/// <param name="Part">Where in the declaration it belongs.</param>
public sealed record IngredientShare(string Name, decimal Low, decimal High, decimal Estimate, Part Part)
{
    /// <summary>
    /// Whether both bounds are reached by some composition. After a loss of what several materials hold they may not be: the
    /// share is never outside them, and may be held closer than they say.
    /// </summary>
    public bool IsTight { get; init; } = true;
}

/// <summary>The one figure to ask for.</summary>
/// <param name="Material">The material whose supplier to ask.</param>
/// <param name="Constituent">The constituent to ask for.</param>
/// <param name="TurnsAt">
/// The constituent's share of the material, a fraction, at which the two ingredients weigh the same if everything else is
/// as estimated; null where no figure for this constituent alone would turn the estimate.
/// </param>
/// <param name="Other">The ingredient whose place against it is in doubt.</param>
/// <param name="IsExact">Whether the figure alone settles it: nothing else about the two is unknown.</param>
public sealed record Ask(string Material, string Constituent, decimal? TurnsAt, string Other, bool IsExact)
{
    /// <summary>The same in plain words.</summary>
    public string Sentence => SentenceWith(name => name);

    /// <summary>The figure to ask for where it is not the constituent's own share, and how to
    /// write it, in plain words; null where it is the share.</summary>
    public string? OtherFigure { get; init; }

    /// <summary>A share as the sentence has it: three figures that count.</summary>
    /// <param name="fraction">The share, a fraction.</param>
    public static string Percent(decimal fraction) => Question.Percent(fraction);

    /// <summary>The same in plain words, with the ingredients under other names than the canonical ones.</summary>
    public string SentenceWith(Func<string, string> name) =>
        OtherFigure is { } figure ? $"Ask the suppliers of {Material} for {figure}; it narrows {name(Constituent)}."
        : TurnsAt is { } share
        ? $"Ask the supplier of {Material} for the share of {name(Constituent)}: above {(IsExact ? "" : "about ")}{Question.Percent(share)} it stands before {name(Other)}, below it after."
        : $"Ask the supplier of {Material} for the share of {name(Constituent)}; alone it may not settle whether it "
            + $"stands before {name(Other)}.";
}

/// <summary>What some list names and the finished product cannot hold.</summary>
/// <param name="Name">Its canonical name.</param>
/// <param name="IsLost">Whether all of it left the batch; else the lists leave no room for any of it.</param>
public sealed record AbsentIngredient(string Name, bool IsLost);

/// <summary>Two ingredients, in the order they stand in, whose order the data does not settle.</summary>
public sealed record UnprovenPair(string First, string Second, Ask Ask)
{
    /// <summary>On what their order rests: <see cref="Placed.Usual"/> or <see cref="Placed.Guess"/>.</summary>
    public Placed Rests { get; init; } = Placed.Guess;
}

/// <summary>The order of a product's ingredients, and what of it is proved.</summary>
public sealed class CompositionProof
{
    private readonly bool[,] _safe;

    internal CompositionProof(ImmutableArray<IngredientShare> ingredients, bool[,] safe, ImmutableArray<UnprovenPair> unproven) =>
        (Ingredients, _safe, Unproven) = (ingredients, safe, unproven);

    /// <summary>The ingredients in label order: main, then minor, then colour.</summary>
    public ImmutableArray<IngredientShare> Ingredients { get; }

    /// <summary>What is provably not in the finished product, so that it is not declared.</summary>
    public ImmutableArray<AbsentIngredient> Absent { get; init; } = [];

    /// <summary>The pairs whose order the data does not settle, in label order.</summary>
    public ImmutableArray<UnprovenPair> Unproven { get; }

    /// <summary>Whether every pair stands in an order that is right for every composition the data allows.</summary>
    public bool IsProved => Unproven.IsEmpty;

    /// <summary>What was proved about; null where nothing further is to be asked of it.</summary>
    internal ProductModel? Model { get; init; }

    /// <summary>On what an ingredient's place rests, by its name: on its weakest pair.</summary>
    public Placed PlacedOf(string name) =>
        Unproven.Where(u => u.First == name || u.Second == name).Select(u => u.Rests).DefaultIfEmpty(Placed.Proved).Max();

    /// <summary>The same proof where some pairs are certain, as they stand, for a reason beyond
    /// the lists, and the rest have other questions.</summary>
    public CompositionProof Knowing(Func<UnprovenPair, bool> isCertain, Func<UnprovenPair, Ask> ask)
    {
        var place = Ingredients.Select((ingredient, at) => (ingredient.Name, at)).ToDictionary(p => p.Name, p => p.at);
        var safe = (bool[,])_safe.Clone();
        foreach (var pair in Unproven.Where(isCertain))
            safe[place[pair.First], place[pair.Second]] = true;
        return new CompositionProof(Ingredients, safe, [.. Unproven.Where(u => !isCertain(u)).Select(u => u with { Ask = ask(u) })])
        {
            Absent = Absent,
            Model = Model,
        };
    }

    /// <summary>
    /// Whether ingredient <paramref name="first"/> may stand before <paramref name="second"/> whatever the true composition;
    /// places in <see cref="Ingredients"/>, from 0. Colours may stand in any order among themselves, and only after the rest.
    /// </summary>
    public bool MayPrecede(int first, int second) => _safe[first, second];

    /// <summary>What is proved of two ingredients, by their places in <see cref="Ingredients"/>, from 0.</summary>
    public PairOrder Pair(int first, int second) => (_safe[first, second], _safe[second, first]) switch
    {
        (true, true) => PairOrder.SafeBothWays,
        (true, false) => PairOrder.FirstForced,
        (false, true) => PairOrder.SecondForced,
        _ => PairOrder.Unproven,
    };
}
