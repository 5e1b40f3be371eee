using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Fitting;

/// <summary>What few designs have a place for: further barcodes by what they say, and the maker's art by its file.</summary>
public sealed record LabelExtras(ImmutableDictionary<Role, InkBlock> Symbols, ImmutableDictionary<string, ArtBlock> Art)
{
    /// <summary>The key of the look's logo among the art.</summary>
    public const string Logo = "look/logo";

    /// <summary>The key of the product's own picture among the art.</summary>
    public const string Picture = "look/picture";

    /// <summary>Nothing.</summary>
    public static LabelExtras None { get; } = new(ImmutableDictionary<Role, InkBlock>.Empty, ImmutableDictionary<string, ArtBlock>.Empty);
}
