using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Ornaments;

namespace LabelForge.Print.Looks;

/// <summary>A look by chance: the same for the same seed, on every machine, so that one that pleases can be kept and told.</summary>
/// <param name="Arrangement">Where things stand on the front.</param>
/// <param name="Frame">The frame's id, or <c>none</c>.</param>
/// <param name="Ornament">The ornament's family.</param>
/// <param name="Hue">The palette's hue, 0 to 359 degrees.</param>
/// <param name="Strength">How colourful, 0.4 to 1.1.</param>
/// <param name="Types">The pair of types.</param>
public sealed record SurpriseLook(string Arrangement, string Frame, string Ornament, int Hue, double Strength, string Types)
{
    /// <summary>The look of a seed.</summary>
    /// <param name="seed">Any text.</param>
    public static SurpriseLook Of(string seed)
    {
        var chance = new SeededNumbers("surprise/" + seed);
        // Each drawn in turn, so that a family added at the end of a list changes as little as may be.
        var arrangement = ArrangementFile.Known[chance.Below(ArrangementFile.Known.Count)];
        var ornament = OrnamentFamily.All[chance.Below(OrnamentFamily.All.Length)].Id;
        var hue = chance.Below(360);
        var strength = Math.Round(chance.Between(0.4, 1.1), 2);
        var types = DesignStyle.Known[chance.Below(DesignStyle.Known.Count)];
        // A frame beside an ornament is much: one in three.
        var frame = chance.Happens(1 / 3.0) ? FrameFamily.All[chance.Below(FrameFamily.All.Length)].Id : "none";
        return new(arrangement, frame, ornament, hue, strength, types);
    }
}
