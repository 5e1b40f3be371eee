using LabelForge.Print.Ornaments;
using LabelForge.Print.Palettes;

namespace LabelForge.Print.Designs;

/// <summary>An ornament as a look names it.</summary>
/// <param name="Family">The family.</param>
/// <param name="Seed">Any text; another seed is another drawing of the family.</param>
/// <param name="Density">From 0.4 to 2.5.</param>
/// <param name="Weight">From 0.4 to 2.5.</param>
public sealed record OrnamentChoice(OrnamentFamily Family, string Seed, double Density = 1, double Weight = 1);

/// <summary>How a label looks apart from its words and its size, all of it settled.</summary>
public sealed record Look
{
    /// <summary>Where things stand on the front.</summary>
    public required string Arrangement { get; init; }

    /// <summary>The frame; null for none.</summary>
    public FrameFamily? Frame { get; init; }

    /// <summary>The ornament; null for none.</summary>
    public OrnamentChoice? Ornament { get; init; }

    /// <summary>The colours.</summary>
    public required Palette Palette { get; init; }

    /// <summary>The pair of types, by its style's id.</summary>
    public required string Types { get; init; }

    /// <summary>Whether the printer lays white ink under what it prints, as the maker says.</summary>
    public bool WhiteInk { get; init; }

    /// <summary>How large the name is, as a part of what there is room for: 0.5 to 1. It never falls below its least.</summary>
    public double NameSize { get; init; } = 1;

    /// <summary>How high the ornament's window is wanted, in times of what the arrangement wants: 0.5 to 2.</summary>
    public double OrnamentSize { get; init; } = 1;

    /// <summary>Whether the window stands above the name or below it; null as the arrangement has it.</summary>
    public bool? OrnamentAbove { get; init; }

    /// <summary>How far words of the front are wanted from where the arrangement has them, in points to the right and down. They go
    /// as far as the rules and what else stands there let them.</summary>
    public System.Collections.Immutable.ImmutableDictionary<Role, (double X, double Y)> Moved { get; init; } =
        System.Collections.Immutable.ImmutableDictionary<Role, (double X, double Y)>.Empty;

    /// <summary>Whether a name may take a line more than usual, where it has no room else.</summary>
    public bool LongName { get; init; }

    /// <summary>
    /// The most that letters of the front may grow to, by role: what the narrowest name of a range leaves room for, so that all the
    /// range stands at one size. Empty where the label is fitted by itself.
    /// </summary>
    public System.Collections.Immutable.ImmutableDictionary<Role, Length> Most { get; init; } =
        System.Collections.Immutable.ImmutableDictionary<Role, Length>.Empty;

    /// <summary>Whether what may stand at the two ends of one row stands one under the other, since
    /// it does so in another of the range.</summary>
    public bool PairsParted { get; init; }

    /// <summary>
    /// How the letters of each panel beside the front are set, by the panel's id, so that a range is read at one size on its backs too.
    /// Empty where the label is fitted by itself.
    /// </summary>
    public System.Collections.Immutable.ImmutableDictionary<string, BackSetting> Backs { get; init; } =
        System.Collections.Immutable.ImmutableDictionary<string, BackSetting>.Empty;
}

/// <summary>How the letters of a back are held.</summary>
/// <param name="Step">The most that they are enlarged: 0 for every letter at its least, 1 for every letter at its most.</param>
/// <param name="Strip">Whether there is room for a strip of the ornament in each back of the range.</param>
/// <param name="Turned">Whether codes too wide for the strip stand in it turned by a quarter.</param>
/// <param name="Band">How high a band of the ornament stands over the foot where there is no strip, in points; 0 for none.</param>
public sealed record BackSetting(double Step, bool Strip, double Band = 0, bool Turned = false);
