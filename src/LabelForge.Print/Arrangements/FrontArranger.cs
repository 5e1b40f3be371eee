using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Arrangements;

/// <summary>
/// Arranges a front: boxes in boxes, letters as large as the room allows, ornaments in what is left. A part without words takes no
/// room. Windows shrink, and at last go, before the name falls below its proper size.
/// </summary>
internal sealed class FrontArranger
{
    /// <summary>The name is to be at least so many times as high as the net quantity, where there is room.</summary>
    public const double NameOverNet = 1.6;

    private const double NameAtLeast = 1;
    private const double SizeStep = 0.1;
    private const double Probe = 1 / 6d;
    private const int Halvings = 6;

    private const int Passes = 5;

    // The net quantity stays in the lowest 30 percent of the panel (21 CFR 701.13(f)), where it stood there.
    private const double Lowest = 0.7;

    // In times of what a window wants.
    private static readonly double[] Caps = [1.45, 1.25, 1.1, 1, 0.8, 0.6];

    private readonly FrontFace _face;
    private readonly ArrangementBox _root;
    private readonly FrontWords _words;
    private readonly ArtBlock? _picture;

    private FrontArranger(FrontFace face, ArrangementBox root, FrontWords words, ArtBlock? picture) =>
        (_face, _root, _words, _picture) = (face, root, words, picture);

    /// <summary>Arranges a front, or says by null that the words have no room in this arrangement.</summary>
    /// <param name="face">The front.</param>
    /// <param name="root">The arrangement's boxes.</param>
    /// <param name="words">The words of an element; null where there are none.</param>
    /// <param name="picture">The maker's logo or picture; null for none.</param>
    public static ArrangedFront? Arrange(FrontFace face, ArrangementBox root, Func<DesignElement, ElementText?> words,
        ArtBlock? picture = null)
    {
        var whole = Whole(face, root, words, picture);
        if (whole is { HasWindow: true } || !root.All.Any(b => b.Element?.Role == Role.ScentLine && words(b.Element) is not null))
            return whole;
        // On a front so small, a range without its ornaments looks like ten mistakes; without the line of scent it looks meant.
        return Whole(face, root, e => e.Role == Role.ScentLine ? null : words(e), picture) is { } without
            && (whole is null || without.HasWindow) ? without : whole;
    }

    private static ArrangedFront? Whole(FrontFace face, ArrangementBox root, Func<DesignElement, ElementText?> words, ArtBlock? picture)
    {
        var said = new FrontWords(words, face.Look.Most);
        var placed = face.FollowsOrnament ? WindowOrder.FarFromOrnament(root) : root;
        if (Pruned(WindowOrder.Of(placed, face.Look.OrnamentAbove), said, picture) is not { } kept)
            return null;
        var arranger = new FrontArranger(face, kept, said, picture);
        ArrangedFront? best = null;
        foreach (var level in Enum.GetValues<WindowLevel>())
        {
            if (arranger.Wanted(level) is not { } found)
                continue;
            // A window that is only smaller is worth a larger name; none at all only where the
            // name would else be less than the net quantity.
            var wanted = level == WindowLevel.None ? NameAtLeast : NameOverNet;
            if (best is null || (best.NameToNet < wanted && found.NameToNet > best.NameToNet + 0.02))
                best = found;
            if (best.NameToNet >= NameOverNet)
                break;
        }
        return best is { Broken: > 0 } && face.Round ? arranger.Unbroken(best) : best;
    }

    // A circle is wider towards its middle: a lower window lets lines that were broken at its foot stand whole.
    private ArrangedFront Unbroken(ArrangedFront best)
    {
        foreach (var cap in Caps)
        {
            if (At(WindowLevel.Want, Math.Min(1, _face.Look.OrnamentSize), cap) is { } found
                && found.Broken < best.Broken && found.NameToNet >= Math.Min(best.NameToNet - 0.02, NameOverNet)
                && NetTop(found) >= Math.Min(NetTop(best), _face.Top + Lowest * _face.Height))
                best = found;
            if (best.Broken == 0)
                break;
        }
        return best;
    }

    private static double NetTop(ArrangedFront front) =>
        front.Texts.Where(t => t.Report.Role == Role.NetQuantity).Select(t => Points.Of(t.Report.Y)).DefaultIfEmpty(0).Min();

    // A window that is asked for larger is made as large as leaves the name its proper size.
    private ArrangedFront? Wanted(WindowLevel level)
    {
        for (var size = _face.Look.OrnamentSize; level == WindowLevel.Want && size > 1; size -= SizeStep)
        {
            if (At(level, size) is { NameToNet: >= NameOverNet } found)
                return found;
        }
        return At(level, Math.Min(1, _face.Look.OrnamentSize));
    }

    private ArrangedFront? At(WindowLevel level, double windowSize, double windowCap = double.PositiveInfinity)
    {
        if (Settle(0, level, windowSize, windowCap) is not { } least)
            return null;
        var best = least;
        var (low, high) = (0.0, Probe);
        if (Settle(1, level, windowSize, windowCap) is { } most)
            return most;
        // Two lines may have room for larger letters where one of smaller letters has none: the first that fits from the top counts.
        for (var probe = 1 - Probe; probe > 0; probe -= Probe)
        {
            if (Settle(probe, level, windowSize, windowCap) is not { } large)
                continue;
            (low, high, best) = (probe, probe + Probe, large);
            break;
        }
        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            if (Settle(middle, level, windowSize, windowCap) is { } found)
                (low, best) = (middle, found);
            else
                high = middle;
        }
        return best;
    }

    // Widths in a circle depend on heights and heights on widths; a few passes settle them.
    private ArrangedFront? Settle(double step, WindowLevel level, double windowSize, double windowCap)
    {
        var state = new FrontPass(_face, _words, step, level, windowSize, _picture, windowCap);
        for (var pass = 0; pass < Passes; pass++)
        {
            state.Begin();
            state.Try(_root);
            if (state.Failed)
                return null;
            if (state.Settled)
                break;
        }
        return state.FitsCircles ? state.Result() : null;
    }

    private static ArrangementBox? Pruned(ArrangementBox box, FrontWords words, ArtBlock? picture)
    {
        switch (box.Kind)
        {
            case BoxKind.Say:
                return words.Of(box) is null ? null : box;
            case BoxKind.Picture:
                return picture is null ? null : box;
            case BoxKind.Rows or BoxKind.Columns or BoxKind.Pair:
                var inside = box.Inside.Select(b => Pruned(b, words, picture)).OfType<ArrangementBox>().ToImmutableArray();
                return inside.Any(b => b.Kind is not (BoxKind.Space or BoxKind.Rule)) || box.Behind ? box with { Inside = inside } : null;
            default:
                return box;
        }
    }
}

/// <summary>How much room windows are given.</summary>
internal enum WindowLevel
{
    /// <summary>What the arrangement wants for them.</summary>
    Want,

    /// <summary>The least that does not look like a fault.</summary>
    Least,

    /// <summary>None.</summary>
    None,
}

/// <summary>The words of a front's boxes, set once for each size and width.</summary>
internal sealed class FrontWords(Func<DesignElement, ElementText?> words, ImmutableDictionary<Role, Length> caps)
{
    private readonly Dictionary<DesignElement, ElementText?> _texts = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<(ElementText, decimal, double), SetText> _sets = [];
    private readonly Dictionary<ElementText, ElementText> _ones = new(ReferenceEqualityComparer.Instance);

    /// <summary>A box's words; null where there are none.</summary>
    public ElementText? Of(ArrangementBox box)
    {
        if (box.Element is not { } element)
            return null;
        if (!_texts.TryGetValue(element, out var text))
            _texts[element] = text = words(element);
        return text;
    }

    /// <summary>The most that a box's letters may grow to.</summary>
    public Length Most(ElementText text) => caps.TryGetValue(text.Element.Role, out var cap) && cap.CompareTo(text.Most) < 0
        ? cap.CompareTo(text.Floor) > 0 ? cap : text.Floor
        : text.Most;

    /// <summary>The same words, to be set on one line.</summary>
    public ElementText OneLine(ElementText text) => _ones.TryGetValue(text, out var one)
        ? one
        : _ones[text] = text with { Element = text.Element with { Lines = 1 } };

    /// <summary>The words at a height in a width.</summary>
    public SetText Set(ElementText text, Length height, double width)
    {
        var key = (text, height.Millimetres, Math.Round(width, 2));
        return _sets.TryGetValue(key, out var set) ? set : _sets[key] = text.Set(height, width);
    }

    /// <summary>The words as high as may be up to a height; null where even the least is too wide.</summary>
    public SetText? Highest(ElementText text, Length wanted, double width)
    {
        if (Set(text, wanted, width) is { TooWide: <= 0 } fits)
            return fits;
        var least = Set(text, text.Floor, width);
        if (least.TooWide > 0)
            return null;
        var (low, high, best) = (text.Floor.Millimetres, wanted.Millimetres, least);
        for (var i = 0; i < 9; i++)
        {
            var middle = (low + high) / 2;
            var set = Set(text, Length.FromMillimetres(middle), width);
            if (set.TooWide <= 0)
                (low, best) = (middle, set);
            else
                high = middle;
        }
        return best;
    }
}
