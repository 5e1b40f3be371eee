using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using SkiaSharp;

namespace LabelForge.Print.Arrangements;

/// <summary>
/// Moves words of a front from where the arrangement has them, as far as may be: they stay on the ground they stand on and inside the
/// margin, keep clear of ornaments and of other words, and leave the net quantity the clear space that the law gives it. Where they
/// meet something on their way they slide along it.
/// </summary>
internal sealed class MovedWords
{
    /// <summary>What may be moved: words that run straight across.</summary>
    public static readonly ImmutableArray<Role> May =
        [Role.Business, Role.Name, Role.ScentLine, Role.Claim, Role.Words, Role.Price, Role.Identity, Role.NetQuantity];

    // A quarter of a millimetre: no drag is finer, and nothing thinner than a line's width is jumped over.
    private static readonly double Step = Points.OfMillimetres(0.25m);

    // Kept from the edge of the ground, from a drawing, and from other words. By eye, but for the ornament's, which the tests hold.
    private static readonly double Edge = Points.OfMillimetres(1.5m);
    private static readonly double FromDrawing = Points.OfMillimetres(0.6m);
    private static readonly double FromWords = Points.OfMillimetres(0.7m);

    // Never less, however close the arrangement itself sets words: a cut may be a hair off.
    private static readonly double FromCut = Points.OfMillimetres(0.71m);

    private readonly FrontFace _face;
    private readonly ImmutableArray<PlacedDrawing> _drawings;
    private readonly ImmutableArray<SKRect> _pictures;
    private ImmutableArray<FrontText> _texts;

    // Where the arrangement itself sets words closer than a drag may, they keep the distance that they have.
    private double _ease = 1;

    private MovedWords(FrontFace face, ArrangedFront front) =>
        (_face, _drawings, _texts, _pictures) = (face, [.. front.Drawings], front.Texts,
            [.. front.Pictures.Select(p => Rect((p.X, p.Y, p.Width, p.Width * p.Art.UnitsHigh / p.Art.UnitsWide)))]);

    /// <summary>A front with its words moved, and how far each was, in points.</summary>
    public static ArrangedFront Of(FrontFace face, ArrangedFront front)
    {
        if (face.Look.Moved.IsEmpty)
            return front;
        var moving = new MovedWords(face, front);
        var moved = ImmutableDictionary<Role, (double X, double Y)>.Empty;
        foreach (var role in May.Where(face.Look.Moved.ContainsKey))
        {
            if (moving.Move(role, face.Look.Moved[role]) is { } by)
                moved = moved.Add(role, by);
        }
        return front with
        {
            Texts = moving._texts,
            Drawn = [.. moving._drawings.Select(d => (Func<PlacedDrawing>)(() => d))],
            Moved = moved,
        };
    }

    private (double X, double Y)? Move(Role role, (double X, double Y) by)
    {
        var at = _texts.ToList().FindIndex(t => t.Report.Role == role && t.Lines.All(l => !l.Upright && l.Radius == 0));
        if (at < 0)
            return null;
        var (text, ground) = (_texts[at], GroundOf(BoxOf(_texts[at])));
        if (Eases.FirstOrDefault(e => IsFree(at, ground, (0, 0), e)) is not (> 0 and var ease))
            return null;
        _ease = ease;
        // Where the law wants it low, the net quantity is not moved up.
        if (role == Role.NetQuantity)
            by.Y = Math.Max(0, by.Y);
        var (x, y) = Along((0, 0), by);
        (x, y) = Along((x, y), (by.X, y));
        (x, y) = Along((x, y), (x, by.Y));
        _texts = _texts.SetItem(at, Shifted(text, x, y));
        return (x, y);

        (double X, double Y) Along((double X, double Y) from, (double X, double Y) to)
        {
            var steps = (int)Math.Ceiling(Math.Max(Math.Abs(to.X - from.X), Math.Abs(to.Y - from.Y)) / Step);
            var last = from;
            for (var i = 1; i <= steps; i++)
            {
                var next = (from.X + (to.X - from.X) * i / steps, from.Y + (to.Y - from.Y) * i / steps);
                if (!IsFree(at, ground, next, _ease))
                    break;
                last = next;
            }
            return last;
        }
    }

    private static readonly double[] Eases = [1, 0.6, 0.3, 0.05];

    private bool IsFree(int at, int ground, (double X, double Y) by, double ease)
    {
        _ease = ease;
        var box = BoxOf(_texts[at]);
        box.Offset((float)by.X, (float)by.Y);
        if (!Holds(ground, box))
            return false;
        for (var i = 0; i < _drawings.Length; i++)
        {
            // What is under the ground is covered by it; what has no clip is a line round words.
            if (i > ground && _drawings[i].Clip is not null && Meets(Rect(_drawings[i].Box), box, FromDrawing * _ease))
                return false;
        }
        return _pictures.All(p => !Meets(p, box, FromDrawing * _ease))
            && Enumerable.Range(0, _texts.Length).Where(i => i != at)
                .All(i => AreClear(_texts[at], box, _texts[i], BoxOf(_texts[i])));
    }

    // The net quantity's space is above, below and beside it, and not at its corners (21 CFR 701.13(e)(2)).
    private bool AreClear(FrontText one, SKRect oneBox, FrontText other, SKRect otherBox)
    {
        if (Meets(oneBox, otherBox, FromWords * _ease))
            return false;
        if (one.Report.Role != Role.NetQuantity && other.Report.Role != Role.NetQuantity)
            return true;
        var (net, netBox, near) = one.Report.Role == Role.NetQuantity ? (one, oneBox, otherBox) : (other, otherBox, oneBox);
        var letters = net.Lines[0].Text;
        var (above, beside) = (_face.ClearHeights * Points.Of(net.Report.LetterHeight) + 0.05,
            _face.ClearBeside * letters.Face.WidthOfN * letters.Size + 0.05);
        var (tall, wide) = (netBox, netBox);
        tall.Inflate(0, (float)above);
        wide.Inflate((float)beside, 0);
        return !tall.IntersectsWith(near) && !wide.IntersectsWith(near);
    }

    // The last ground painted that holds the words; -1 for the stock.
    private int GroundOf(SKRect box)
    {
        for (var i = _drawings.Length - 1; i >= 0; i--)
        {
            if (_drawings[i].IsGround && IsInside(_drawings[i], box))
                return i;
        }
        return -1;
    }

    private bool Holds(int ground, SKRect box)
    {
        // A plate may run over the cut of a round label; words may not.
        if (_face.Round && !IsInBounds(box, (_face.Left + FromCut, _face.Top + FromCut, _face.Width - 2 * FromCut,
            _face.Height - 2 * FromCut), round: true))
            return false;
        var with = box;
        with.Inflate((float)(Edge * _ease), (float)(Edge * _ease));
        // A frame or a ring round the words is a bound too.
        foreach (var line in _drawings.Where(d => d.Clip is null && Rect(d.Box).Contains(box)))
        {
            if (!IsInBounds(with, line.Box, IsDisc(ground) && (ground < 0 || line.Box.Width == line.Box.Height)))
                return false;
        }
        return ground >= 0
            ? IsInside(_drawings[ground], with)
            : IsInBounds(with, (_face.Left, _face.Top, _face.Width, _face.Height), _face.Round);
    }

    private bool IsDisc(int ground) => ground < 0 ? _face.Round : _drawings[ground].Paths[0].Data.Contains('A', StringComparison.Ordinal)
        && Math.Abs(_drawings[ground].Box.Width - _drawings[ground].Box.Height) < 1;

    private static bool IsInBounds(SKRect box, (double Left, double Top, double Width, double Height) bounds, bool round)
    {
        if (!round)
            return Rect(bounds).Contains(box);
        var (across, down) = (bounds.Width / 2, bounds.Height / 2);
        var (x, y) = (bounds.Left + across, bounds.Top + down);
        return Corners(box).All(c => Math.Pow((c.X - x) / across, 2) + Math.Pow((c.Y - y) / down, 2) <= 1);
    }

    private static bool IsInside(PlacedDrawing ground, SKRect box)
    {
        using var path = SKPath.ParseSvgPathData(ground.Paths[0].Data);
        path.Transform(SKMatrix.CreateScaleTranslation((float)ground.Scale, (float)ground.Scale, (float)ground.X, (float)ground.Y));
        return Corners(box).All(c => path.Contains(c.X, c.Y));
    }

    private static SKPoint[] Corners(SKRect r) =>
        [new(r.Left, r.Top), new(r.Right, r.Top), new(r.Right, r.Bottom), new(r.Left, r.Bottom)];

    private static bool Meets(SKRect one, SKRect other, double gap)
    {
        one.Inflate((float)gap, (float)gap);
        return one.IntersectsWith(other);
    }

    private static SKRect BoxOf(FrontText text) => SKRect.Create((float)Points.Of(text.Report.X), (float)Points.Of(text.Report.Y),
        (float)Points.Of(text.Report.Width), (float)Points.Of(text.Report.Height));

    private static SKRect Rect((double Left, double Top, double Width, double Height) box) =>
        SKRect.Create((float)box.Left, (float)box.Top, (float)box.Width, (float)box.Height);

    private static FrontText Shifted(FrontText text, double x, double y) => new(
        [.. text.Lines.Select(l => l with { X = l.X + x, Y = l.Y + y })],
        text.Report with
        {
            X = Points.ToLength(Points.Of(text.Report.X) + x),
            Y = Points.ToLength(Points.Of(text.Report.Y) + y),
        });
}
