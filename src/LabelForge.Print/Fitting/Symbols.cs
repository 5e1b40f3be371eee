using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Fitting;

/// <summary>Symbols of the law, drawn here from their description.</summary>
internal static class Symbols
{
    /// <summary>
    /// The open jar with the period after opening: Regulation (EC) No 1223/2009, Annex VII, 2: a jar of cream with its lid
    /// lifted, the months inside it or beside it.
    /// </summary>
    public static ArtBlock OpenJar(string period) => new(100, 100)
    {
        Paths =
        [
            new ArtPath("M14 48 V86 Q14 95 23 95 H77 Q86 95 86 86 V48", null, Colour.Black, 5, Ink: true),
            new ArtPath("M9 36 H91 V48 H9 Z", null, Colour.Black, 5, Ink: true),
            new ArtPath("M12 24 L86 4 L90 16 L15 34 Z", null, Colour.Black, 5, Ink: true),
        ],
        Inside = period,
    };
}
