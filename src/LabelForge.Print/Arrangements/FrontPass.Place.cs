using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Arrangements;

/// <content>Places boxes.</content>
internal sealed partial class FrontPass
{
    private const double DrawingInWindow = 0.86;

    // An upright name keeps so far inside its circle.
    private const double UprightMargin = 5;

    private void Place(ArrangementBox box, Box at, BoxGround ground, Oval? circle, double? arcDepth)
    {
        if (IsGone(box))
            return;
        var on = box.Ground == BoxGround.None ? ground : box.Ground;
        var inner = at.Inside(box.Padding);
        if (box is { Shape: BoxShape.Oval, Kind: BoxKind.Rows })
        {
            circle = new Oval(at.X + at.Width / 2, at.Y + at.Height / 2, at.Width / 2, at.Height / 2);
            arcDepth = ArcDepth(box);
        }
        if (box is { Shape: BoxShape.Disc, Kind: BoxKind.Rows })
        {
            var radius = Math.Min(at.Width, at.Height) / 2;
            circle = new Oval(at.X + at.Width / 2, at.Y + at.Height / 2, radius, radius);
            at = new Box(circle.Value.X - radius, circle.Value.Y - radius, 2 * radius, 2 * radius);
            inner = at.Inside(box.Padding);
            arcDepth = ArcDepth(box);
        }
        if (box.Kind != BoxKind.Ornament && (box.Ground != BoxGround.None || box.Behind))
            _drawings.Ground(box, at.X, at.Y, at.Width, at.Height, on, behind: false);
        if (box.Behind)
            Surrounding(box, at, inner, on);
        if (box.Ring > 0)
            _drawings.Ring(box, at.X, at.Y, at.Width, at.Height, on);
        switch (box.Kind)
        {
            case BoxKind.Rows:
                PlaceRows(box, inner, on, circle, arcDepth);
                break;
            case BoxKind.Columns:
                PlaceColumns(box, inner, on, circle);
                break;
            case BoxKind.Pair:
                PlacePair(box, inner, on, circle);
                break;
            case BoxKind.Say:
                Say(box, inner, on, circle, arcDepth);
                break;
            case BoxKind.Ornament:
                var wide = Math.Min(box.Width ?? inner.Width, inner.Width);
                var left = inner.X + (inner.Width - wide) * (box.Side switch { Side.Centre => 0.5, Side.Right => 1, _ => 0 });
                if (inner.Height >= Math.Min(box.Least, box.Size ?? box.Least) - 0.01)
                    Window(box, left, inner.Y, wide, inner.Height, on);
                break;
            case BoxKind.Picture:
                var pictureWide = PictureWidth(box, inner.Width);
                _pictures.Add(new(picture!, inner.X + (inner.Width - pictureWide) * (box.Side == Side.Centre ? 0.5 : 0), inner.Y,
                    pictureWide));
                break;
            case BoxKind.Rule:
                var rule = Math.Min(box.Width ?? inner.Width, inner.Width);
                _bars.Add(new PlacedBar(inner.X + (inner.Width - rule) * (box.Side == Side.Centre ? 0.5 : 0), inner.Y, rule, RuleThickness,
                    _drawings.InkOn(on, Role.Business)));
                break;
        }
    }

    // A photo fills the window, and what does not fit its outline is cut off; a drawing stands in it whole.
    private void Window(ArrangementBox box, double x, double y, double width, double height, BoxGround on)
    {
        _hasWindow = true;
        if (face.Photo is not { } photo)
        {
            _drawings.Window(box, x, y, width, height, on);
            return;
        }
        var fills = !photo.Image.IsEmpty;
        if (!fills)
            _drawings.Ground(box, x, y, width, height, on, behind: false);
        var scale = fills
            ? Math.Max(width / photo.UnitsWide, height / photo.UnitsHigh)
            : DrawingInWindow * Math.Min(width / photo.UnitsWide, height / photo.UnitsHigh);
        var (wide, high) = (photo.UnitsWide * scale, photo.UnitsHigh * scale);
        _pictures.Add(new(photo, x + (width - wide) / 2, y + (height - high) / 2, wide)
        {
            InWindow = true,
            Ink = _drawings.InkOf(on),
            Clip = fills ? _drawings.Clip(box, x, y, width, height) : null,
        });
    }

    // What is set into the ground is the one box inside it; a disc is as large as that holds.
    private void Surrounding(ArrangementBox box, Box at, Box inner, BoxGround on)
    {
        var disc = box.Inside.FirstOrDefault()?.Shape == BoxShape.Disc;
        var side = disc ? Math.Min(inner.Width, inner.Height) : 0;
        var set = disc ? new Box(inner.X + (inner.Width - side) / 2, inner.Y + (inner.Height - side) / 2, side, side) : inner;
        _drawings.Surrounding(box, at.X, at.Y, at.Width, at.Height, (set.X, set.Y, set.Width, set.Height),
            disc || box.Inside.FirstOrDefault()?.Shape == BoxShape.Oval, on);
    }

    private void PlaceRows(ArrangementBox box, Box at, BoxGround ground, Oval? circle, double? arcDepth)
    {
        var natural = RowsHeight(box.Inside, at.Width);
        var free = at.Height - natural;
        if (free < -0.01)
        {
            Failed = true;
            return;
        }
        var extra = Shared(box, free);
        var y = at.Y
            + (box.Inside.All(b => b.Share == 0) && circle is not null && (box.Shape is BoxShape.Disc or BoxShape.Oval)
                ? Math.Min(free, free / 2 + (arcDepth ?? 0) * 0.45)
                : 0);
        ArrangementBox? above = null;
        for (var i = 0; i < box.Inside.Length; i++)
        {
            var row = box.Inside[i];
            if (row.Run == Run.Arc)
            {
                Say(row, at, ground, circle, arcDepth);
                continue;
            }
            var gone = IsGone(row);
            if (!gone && above is not null)
                y += Between(above, row, at.Width);
            // Where a window has gone from a plate, the name stands in the plate's middle.
            var high = Natural(row, at.Width) + (gone && ground == BoxGround.Plate ? extra[i] / 2 : extra[i]);
            Place(row, new Box(at.X, y, at.Width, high), ground, circle, arcDepth);
            y += high;
            above = gone ? above : row;
        }
    }

    // What is left over goes to those that have a share, but no window becomes higher than it may.
    private double[] Shared(ArrangementBox box, double free)
    {
        var extra = new double[box.Inside.Length];
        var open = Enumerable.Range(0, extra.Length).Where(i => box.Inside[i].Share > 0).ToList();
        while (open.Count > 0 && free > 0.01)
        {
            var shares = open.Sum(i => box.Inside[i].Share);
            var full = open.Where(i => !IsGone(box.Inside[i]) && MostOf(box.Inside[i]) < double.PositiveInfinity
                && WindowHeight(box.Inside[i]) + free * box.Inside[i].Share / shares > MostOf(box.Inside[i])).ToList();
            if (full.Count == 0)
            {
                foreach (var i in open)
                    extra[i] = free * box.Inside[i].Share / shares;
                break;
            }
            foreach (var i in full)
            {
                extra[i] = Math.Max(0, MostOf(box.Inside[i]) - WindowHeight(box.Inside[i]));
                free -= extra[i];
                open.Remove(i);
            }
        }
        return extra;
    }

    private void PlaceColumns(ArrangementBox box, Box at, BoxGround ground, Oval? circle)
    {
        var x = at.X;
        foreach (var (column, width) in box.Inside.Zip(Widths(box, at.Width)))
        {
            x += column == box.Inside[0] ? 0 : column.Gap;
            if (ContentHeight(column, width) > at.Height + 0.01)
                Failed = true;
            Place(column, new Box(x, at.Y, width, at.Height), ground, circle, null);
            x += width;
        }
    }

    private void PlacePair(ArrangementBox box, Box at, BoxGround ground, Oval? circle)
    {
        _paired = box.Inside.Length == 2 ? OneRow(box, at.Width) : _paired;
        if (_paired == true)
        {
            // On one baseline: what is lower stands lower by the difference of their tops.
            var sets = box.Inside.Select(b => SetOf(b, at.Width)!).ToList();
            var top = sets.Max(MetricTop);
            Say(box.Inside[0] with { Side = Side.Left }, at with { Y = at.Y + top - MetricTop(sets[0]) }, ground, circle, null,
                box.Inside[0]);
            Say(box.Inside[1] with { Side = Side.Right }, at with { Y = at.Y + top - MetricTop(sets[1]) }, ground, circle, null,
                box.Inside[1]);
        }
        else
        {
            PlaceRows(box with { Kind = BoxKind.Rows }, at, ground, circle, null);
        }
    }

    private void Say(ArrangementBox box, Box at, BoxGround ground, Oval? circle, double? arcDepth, ArrangementBox? named = null)
    {
        switch (box.Run)
        {
            case Run.Up:
                SayUp(box, at, ground, circle);
                break;
            case Run.Arc:
                SayOnArc(box, ground, circle);
                break;
            default:
                SayAcross(box, at, ground, circle, arcDepth, named ?? box);
                break;
        }
    }

    private void SayAcross(ArrangementBox box, Box at, BoxGround ground, Oval? circle, double? arcDepth, ArrangementBox named)
    {
        if (SetOf(named, at.Width) is not { } set)
            return;
        var baseline = at.Y + MetricTop(set);
        var lines = new List<PlacedLine>();
        var (left, right) = (double.PositiveInfinity, double.NegativeInfinity);
        for (var i = 0; i < set.Lines.Length; i++)
        {
            var width = SetText.WidthOf(set.Lines[i]);
            var x = at.X + (at.Width - width) * (box.Side switch { Side.Centre => 0.5, Side.Right => 1, _ => 0 });
            if (circle is { } round)
                x = InCircle(named, round, arcDepth, at, x, width, baseline - set.Lines[i].Max(p => p.Shape.Top) * set.Size,
                    baseline + set.Lines[i].Max(p => p.Shape.Bottom) * set.Size, box.Side);
            (left, right) = (Math.Min(left, x), Math.Max(right, x + width));
            foreach (var part in set.Lines[i])
            {
                lines.Add(_drawings.Line(part, x, baseline, ground, set.Of.Element.Role));
                x += part.Width;
            }
            baseline += set.Of.Element.Leading * set.Size;
        }
        var top = at.Y + MetricTop(set) - set.Top;
        Report(lines, set, left, top, right - left, set.Height);
    }

    private void SayUp(ArrangementBox box, Box at, BoxGround ground, Oval? circle)
    {
        if (words.Of(box) is not { } text)
            return;
        // One line, its letters at most so much of the column, so that descenders and ascenders have room.
        var one = text with { Element = text.Element with { Lines = 1 } };
        var wanted = Math.Min(words.Most(text).Millimetres,
            Points.ToLength(at.Width * 0.62 * one.Element.Face.LetterHeight(one.Text)).Millimetres);
        // In a circle the line is no longer than the chord through the letters' far side, and its middle is the circle's.
        var middle = circle is null ? null : (double?)circle.Value.Y;
        double Room(decimal height) => circle is not { } round ? at.Height
            : 2 * round.HalfHeightAt(at.X + at.Width / 2
                - one.Element.Face.SizeFor(one.Text, Measures.Length.FromMillimetres(height)) * one.Element.Face.CapitalHeight / 2,
                UprightMargin);
        SetText? Highest(decimal height) => Room(height) is > 1 and var room
            ? words.Highest(one, Measures.Length.FromMillimetres(height), Math.Min(room, at.Height))
            : null;
        // Lower letters stand further in, where the chord is longer.
        if (wanted < one.Floor.Millimetres
            || (Highest(wanted) is { } first ? Highest((first.LetterHeight.Millimetres + wanted) / 2) is { } next
                && next.LetterHeight.CompareTo(first.LetterHeight) > 0 ? next : first : Highest(one.Floor.Millimetres)) is not { } set)
        {
            Failed = true;
            return;
        }
        _name = text.Element.Role == Role.Name ? set.LetterHeight.Millimetres : _name;
        var (top, bottom) = (one.Element.Face.CapitalHeight * set.Size, 0.0);
        // The middle of its capitals on the middle of the column.
        var baseline = at.X + (at.Width + top - bottom) / 2;
        var foot = middle is { } y ? y + set.Width / 2 : at.Y + at.Height;
        var lines = set.Lines[0].Select(part => _drawings.Line(part, baseline, foot, ground, one.Element.Role) with { Upright = true })
            .ToList();
        Report(lines, set, baseline - set.Top, foot - set.Width, set.Height, set.Width);
    }

    private void Report(List<PlacedLine> lines, SetText set, double x, double y, double width, double height)
    {
        var text = set.Said;
        // A net quantity on two lines is worse than a kind of product on two.
        _broken += set.Hyphenated ? 3 : set.Lines.Length < 2 ? 0
            : set.Of.Element.Role switch { Role.NetQuantity => 2, Role.Identity or Role.Business => 1, _ => 0 };
        _texts.Add(new FrontText([.. lines],
            new PlacedText(set.Of.Element.Role, text, Points.ToLength(x), Points.ToLength(y), Points.ToLength(width),
            Points.ToLength(height), set.LetterHeight, set.Of.Required.Height, set.Of.Required.Source)));
    }
}
