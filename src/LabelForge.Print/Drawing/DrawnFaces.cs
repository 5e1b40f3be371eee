using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Drawing;

/// <summary>The fonts of one document, each cut down to the letters that the document holds.</summary>
internal sealed class DrawnFaces : IDisposable
{
    private readonly Dictionary<TypeFace, SKTypeface> _cut = new(ReferenceEqualityComparer.Instance);

    private DrawnFaces()
    {
    }

    /// <summary>The fonts for these texts; a text not among them is drawn with the whole font.</summary>
    public static DrawnFaces Of(IEnumerable<MeasuredText> texts)
    {
        var faces = new DrawnFaces();
        foreach (var used in texts.GroupBy(t => t.Face))
        {
            if (used.Key
                .CutTo(used.SelectMany(t => t.Shape.Glyphs).Distinct().Order(),
                    used.SelectMany(t => t.Text.EnumerateRunes()).Select(r => r.Value).Distinct().Order()) is { } cut)
                faces._cut.Add(used.Key, cut);
        }
        return faces;
    }

    /// <summary>The font to draw a face with.</summary>
    public SKTypeface this[TypeFace face] => _cut.TryGetValue(face, out var cut) ? cut : face.Typeface;
    public void Dispose()
    {
        foreach (var cut in _cut.Values)
            cut.Dispose();
    }
}
