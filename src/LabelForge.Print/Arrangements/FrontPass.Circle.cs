using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Arrangements;

/// <content>Words in a circle, and on one.</content>
internal sealed partial class FrontPass
{
    // Words on a circle take at most so much of it, in radians.
    private const double LongestArc = 2.5;

    // On a plate a window stands close below, which a longer arc would come down to.
    private const double LongestArcOverWindow = 1.3;

    // Radians between the ends of words on an arc and what stands beside them.
    private const double BesideArc = 0.1;

    // Between words on an arc and what stands under them.
    private const double UnderArc = 2.4;

    // Words keep so far inside a circle.
    private const double CircleMargin = 3.4;

    private double ArcDepth(ArrangementBox disc) => disc.Inside.Where(b => b.Run == Run.Arc).Select(b => words.Of(b)).OfType<ElementText>()
        .Select(t => UnderArc + t.Element.Face.CapitalHeight * t.Element.Face.SizeFor(t.Text, words.Most(t))).DefaultIfEmpty(0).Max();

    // Words in a circle: where a line does not fit, the next pass gives it the chord's length.
    private double InCircle(ArrangementBox box, Oval circle, double? arcDepth, Box at, double x, double width, double top, double bottom,
        Side side)
    {
        double Half(double y)
        {
            // The arc's words take the top of the circle as far round as they go; a line that runs under their ends has all its width.
            var (clear, up) = (circle.ArcRadius - CircleMargin - (arcDepth ?? 0), circle.ArcY - y);
            return arcDepth is not null && y < circle.Y && up > clear * Math.Cos(_arc + BesideArc)
                ? Math.Sqrt(Math.Max(0, clear * clear - up * up))
                : circle.HalfWidthAt(y, CircleMargin);
        }
        var half = Math.Min(Half(top), Half(bottom));
        if (side == Side.Centre && Math.Abs(at.X + at.Width / 2 - circle.X) < 0.5)
            x = circle.X - width / 2;
        if (x + width <= circle.X + half + 0.05 && x >= circle.X - half - 0.05)
            return x;
        FitsCircles = false;
        var room = side == Side.Centre ? 2 * half : circle.X + half - Math.Max(x, circle.X - half);
        if (room < _limits.GetValueOrDefault(box, double.PositiveInfinity) - 0.2)
        {
            _limits[box] = room;
            Settled = false;
        }
        return x;
    }

    private void SayOnArc(ArrangementBox box, BoxGround ground, Oval? circle)
    {
        if (words.Of(box) is not { } text || circle is not { } round)
            return;
        var one = text with { Element = text.Element with { Lines = 1 } };
        var top = one.Element.Face.SizeFor(one.Text, words.Most(text)) * one.Element.Face.CapitalHeight;
        var radius = round.ArcRadius - 4.6 - top;
        var longest = ground == BoxGround.Plate ? Math.Min(LongestArcOverWindow, round.LongestLowArc) : LongestArc;
        if (radius < 10 || words.Highest(one, words.Most(text), radius * Math.Min(round.LongestArc, longest)) is not { } set)
        {
            Failed = true;
            return;
        }
        var lines = set.Lines[0]
            .Select(part => _drawings.Line(part, round.X, round.ArcY, ground, one.Element.Role) with { Radius = radius })
            .ToList();
        _arc = Math.Min(Math.PI / 2, set.Width / 2 / radius);
        var half = radius * Math.Sin(_arc);
        Report(lines, set, round.X - half, round.ArcY - radius - set.Top, 2 * half,
            set.Top + radius * (1 - Math.Cos(_arc)));
    }
}
