using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Arrangements;

/// <summary>One try at a front, at one step of enlargement: heights from the words, then places from the heights.</summary>
internal sealed partial class FrontPass(FrontFace face, FrontWords words, double step, WindowLevel level, double windowSize,
    ArtBlock? picture, double windowCap)
{
    private const double RuleThickness = 0.6;
    private const double PairGap = 9;

    // Capitals have no descenders; without the air of one below them what follows would stick to them.
    private const double CapitalsFoot = 0.22;

    // The identity is half as high as the name, so that it stays in a size reasonably related to it (21 CFR 701.11(c)).
    private const decimal IdentityToName = 0.505m;

    // Beside a large net quantity a small identity looks lost; by eye.
    private const decimal IdentityToNet = 0.65m;

    private const decimal PressedName = 0.97m;

    // Small words keep to one line where they can be read so: lower letters look better than a second line.
    private static readonly Role[] OnOneLine = [Role.Business, Role.ScentLine];

    private readonly Dictionary<ArrangementBox, double> _limits = new(ReferenceEqualityComparer.Instance);
    private readonly FrontDrawings _drawings = new(face);
    private ImmutableArray<FrontText>.Builder _texts = ImmutableArray.CreateBuilder<FrontText>();
    private ImmutableArray<ArrangedPicture>.Builder _pictures = ImmutableArray.CreateBuilder<ArrangedPicture>();
    private ImmutableArray<PlacedBar>.Builder _bars = ImmutableArray.CreateBuilder<PlacedBar>();
    // How far round words on an arc go to each side of the top, in radians.
    private double _arc = Math.PI / 2;
    private decimal _name;
    private decimal _nameBefore;
    private int _broken;
    private bool _hasWindow;
    private bool? _paired;
    private decimal _net;

    /// <summary>Whether the words have no room.</summary>
    public bool Failed { get; private set; }

    /// <summary>Whether another pass would change nothing.</summary>
    public bool Settled { get; private set; }

    /// <summary>Whether all words stand inside their circles.</summary>
    public bool FitsCircles { get; private set; }

    /// <summary>Clears what the pass before left, but what it learned.</summary>
    public void Begin()
    {
        (Failed, Settled, FitsCircles, _nameBefore) = (false, true, true, _name);
        _texts.Clear();
        (_broken, _hasWindow, _paired) = (0, false, null);
        _pictures.Clear();
        _bars.Clear();
        _drawings.Clear();
    }

    /// <summary>Measures and places all boxes.</summary>
    public void Try(ArrangementBox root)
    {
        var frame = _drawings.FrameDepth;
        _net = root.All.Where(b => b.Element?.Role == Role.NetQuantity).Select(words.Of).OfType<ElementText>()
            .Select(t => t.Floor.Millimetres).FirstOrDefault();
        var (x, y, width, height) = (face.Left + frame, face.Top + frame, face.Width - 2 * frame, face.Height - 2 * frame);
        var inside = frame > 0 ? 0 : 0.8 * FrontFace.Rim;
        var circle = face.Round ? new Oval(x + width / 2, y + height / 2, width / 2 - inside, height / 2 - inside) : (Oval?)null;
        if (Natural(root, width) > height + 0.01)
            Failed = true;
        if (!Failed)
            Place(root, new Box(x, y, width, height), BoxGround.Paper, circle, null);
        if (frame > 0)
            _drawings.Frame();
        Settled &= _nameBefore == _name;
    }

    /// <summary>The front as the last pass left it.</summary>
    public ArrangedFront Result()
    {
        double? Height(Role role) =>
        _texts.FirstOrDefault(t => t.Report.Role == role)?.Report is { } r ? (double)r.LetterHeight.Millimetres : null;
        return new ArrangedFront(_texts.ToImmutable(), _drawings.All, _pictures.ToImmutable(), _bars.ToImmutable(),
            Height(Role.Name) is { } name && Height(Role.NetQuantity) is { } net ? name / net : double.PositiveInfinity)
        { Broken = _broken, HasWindow = _hasWindow, Paired = _paired };
    }

    // The height that a row takes in a width; shares of what is left over come on top.
    private double Natural(ArrangementBox box, double width) =>
        box.Size is { } fixedSize && box.Kind is not BoxKind.Columns ? fixedSize : ContentHeight(box, width);

    // A column's size is its width, and says nothing of its height.
    private double ContentHeight(ArrangementBox box, double width)
    {
        var inner = width - box.Padding.Left - box.Padding.Right;
        var content = box.Kind switch
        {
            BoxKind.Say => box.Run == Run.Across ? SetOf(box, inner) is { } set ? MetricHeight(set) : 0 : 0,
            BoxKind.Ornament => WindowHeight(box),
            BoxKind.Picture => PictureWidth(box, inner) * picture!.UnitsHigh / picture.UnitsWide,
            BoxKind.Rule => RuleThickness,
            BoxKind.Pair => PairHeight(box, inner),
            BoxKind.Rows => RowsHeight(box.Inside, inner),
            BoxKind.Columns => box.Inside.Zip(Widths(box, inner)).Select(p => ContentHeight(p.First, p.Second)).DefaultIfEmpty(0).Max(),
            _ => 0,
        };
        return content + box.Padding.Top + box.Padding.Bottom;
    }

    // As wide as its box, and no higher than the box lets it be.
    private double PictureWidth(ArrangementBox box, double width) =>
        Math.Min(Math.Min(box.Width ?? 20, width), box.Most * picture!.UnitsWide / picture.UnitsHigh);

    private double WindowHeight(ArrangementBox box) => !face.HasWindow ? 0 : level switch
    {
        WindowLevel.Want => Math.Min(MostOf(box), Math.Max(box.Want * windowSize, box.Least)),
        WindowLevel.Least => box.Least,
        _ => 0,
    };

    // Where a lower window lets what stands below it keep to one line, it does not take all that is left over.
    private double MostOf(ArrangementBox box) => Math.Min(box.Most, Math.Max(box.Least, box.Want * windowCap));

    private bool IsGone(ArrangementBox box) => box.Kind == BoxKind.Ornament && (level == WindowLevel.None || !face.HasWindow);

    private double RowsHeight(ImmutableArray<ArrangementBox> rows, double width)
    {
        double sum = 0;
        ArrangementBox? above = null;
        foreach (var row in rows)
        {
            var high = Natural(row, width);
            if (!IsGone(row))
            {
                sum += above is null ? 0 : Between(above, row, width);
                above = row;
            }
            sum += high;
        }
        return sum;
    }

    // The gap that is asked for, and the clear space of the net quantity.
    private double Between(ArrangementBox above, ArrangementBox below, double width)
    {
        if (below.Run != Run.Across || above.Run != Run.Across)
            return 0;
        return Math.Max(below.Gap, Math.Max(Clear(above, width, atFoot: true), Clear(below, width, atFoot: false)));
    }

    // What stands at the head or the foot of a box, to which a neighbour comes near.
    private IEnumerable<ArrangementBox> Edge(ArrangementBox box, double width, bool atFoot) => box.Kind switch
    {
        BoxKind.Rows when box.Inside.Length > 0 && box.Ground == BoxGround.None =>
            Edge(atFoot ? box.Inside[^1] : box.Inside[0], width, atFoot),
        BoxKind.Pair when box.Inside.Length == 2 && !OneRow(box, width) => Edge(atFoot ? box.Inside[^1] : box.Inside[0], width, atFoot),
        _ => box.All,
    };

    private double Clear(ArrangementBox box, double width, bool atFoot) => Edge(box, width, atFoot)
        .Where(b => b.Element?.Role == Role.NetQuantity)
        .Select(b => SetOf(b, width) is { } set ? face.ClearHeights * set.Of.Element.Face.CapitalHeight * set.Size + 0.4 : 0)
        .DefaultIfEmpty(0).Max();

    private double PairHeight(ArrangementBox pair, double width)
    {
        if (pair.Inside.Length < 2)
            return RowsHeight(pair.Inside, width);
        return OneRow(pair, width) ? pair.Inside.Max(b => Natural(b, width)) : RowsHeight(pair.Inside, width);
    }

    private bool OneRow(ArrangementBox pair, double width)
    {
        if (face.Look.PairsParted)
            return false;
        var sets = pair.Inside.Select(b => SetOf(b, width)).ToList();
        if (sets.Any(s => s is null || s.Lines.Length > 1))
            return false;
        var clear = pair.Inside.Zip(sets).Where(p => p.First.Element?.Role == Role.NetQuantity)
            .Select(p => face.ClearBeside * p.Second!.Of.Element.Face.WidthOfN * p.Second.Size + 0.5).DefaultIfEmpty(0).Max();
        return sets.Sum(s => s!.Width) + Math.Max(PairGap, clear) <= width;
    }

    private double[] Widths(ArrangementBox columns, double width)
    {
        var fixedOnes = columns.Inside.Where(c => !IsGone(c)).Sum(c => c.Size ?? 0) + columns.Inside.Skip(1).Sum(c => c.Gap);
        var free = columns.Inside.Count(c => c.Size is null);
        return [.. columns.Inside.Select(c => IsGone(c) ? 0 : c.Size ?? Math.Max(1, (width - fixedOnes) / Math.Max(1, free)))];
    }

    /// <summary>The words of a box in a width, at this step; null, and the pass failed, where they have no room.</summary>
    private SetText? SetOf(ArrangementBox box, double width)
    {
        if (words.Of(box) is not { } text)
            return null;
        var most = words.Most(text);
        var wanted = text.Element.Role == Role.Identity
            ? Clamped(Math.Max(Math.Ceiling(_nameBefore * IdentityToName * 1000) / 1000, _net * IdentityToNet), text.Floor.Millimetres,
                most.Millimetres)
            : text.Floor.Millimetres + (most.Millimetres - text.Floor.Millimetres) * (decimal)step;
        var room = Math.Min(width, _limits.GetValueOrDefault(box, double.PositiveInfinity));
        var set = room <= 1 ? null
            : (OnOneLine.Contains(text.Element.Role) ? words.Highest(words.OneLine(text), Length.FromMillimetres(wanted), room) : null)
            ?? words.Highest(text, Length.FromMillimetres(wanted), room);
        // A name pressed into a short chord is smaller than one that began with lower letters, whose lines stand nearer to the middle.
        if (set is null
            || (step > 0 && text.Element is { Role: Role.Name, Lines: > 1 } && room < width
                && set.LetterHeight.Millimetres < PressedName * wanted
                && words.Set(text, Length.FromMillimetres(wanted), width).Lines.Length > 1))
            Failed = true;
        else if (text.Element.Role == Role.Name)
            _name = set.LetterHeight.Millimetres;
        return set;
    }

    private static decimal Clamped(decimal value, decimal least, decimal most) => Math.Max(least, Math.Min(most, value));

    // Heights come from the face, not from the letters of the day, so that a name without a p or a d stands where the others stand.
    private static double MetricHeight(SetText set) =>
        MetricTop(set) + MetricBottom(set) + (set.Lines.Length - 1) * set.Of.Element.Leading * set.Size;

    private static double MetricTop(SetText set) =>
        (set.Of.Text.Any(char.IsLower) && set.Of.Element.Role == Role.Name
            ? Math.Max(set.Of.Element.Face.InkHeight('d'), set.Of.Element.Face.CapitalHeight)
            : set.Of.Element.Face.CapitalHeight) * set.Size;

    private static double MetricBottom(SetText set) =>
        set.Of.Text.Any(char.IsLower) ? (set.Of.Element.Face.InkHeight('p') - set.Of.Element.Face.SmallLetterHeight) * set.Size
        : set.Of.Element.Role == Role.Name ? CapitalsFoot * set.Size : 0;

    private readonly record struct Box(double X, double Y, double Width, double Height)
    {
        public Box Inside((double Left, double Top, double Right, double Bottom) p) =>
            new(X + p.Left, Y + p.Top, Width - p.Left - p.Right, Height - p.Top - p.Bottom);
    }
}
