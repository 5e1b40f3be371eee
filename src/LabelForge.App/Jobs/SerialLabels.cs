using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Jobs;

/// <summary>What one label of a series has for itself: the lines with its number in them, and its barcode.</summary>
/// <param name="Lines">Lines at their places.</param>
/// <param name="Symbol">The barcode at its place; null where the label has none.</param>
public sealed record SerialPart(ImmutableArray<PlacedLine> Lines, PlacedSymbol? Symbol);

/// <summary>
/// Labels that differ in their serial number alone: after the lot, and in each label's own barcode. The label is laid out
/// once, with a number as wide as any; what all have in common is drawn once, and the number and the barcode of each are
/// made when they are asked for, one at a time.
/// </summary>
public sealed class SerialLabels
{
    private readonly LotCode _lot;
    private readonly SerialNumbers _numbers;
    private readonly string _standIn;
    private readonly (InkBlock Drawn, Func<string, SymbolPicture> Of)? _series;
    private readonly PlacedSymbol? _place;
    private readonly string? _standInCaption;
    private readonly LabelLayout _layout;
    private readonly ImmutableArray<PlacedLine> _ownLines;
    private readonly int _symbolAt;

    private SerialLabels(LabelJob job, LotCode lot, SerialNumbers numbers)
    {
        (_lot, _numbers) = (lot, numbers);
        var widest = "0123456789".MaxBy(d => BundledFaces.Regular.Shape(d.ToString()).Width);
        _standIn = new string(widest, numbers.Digits);
        _series = LotSymbol.Series(job.Workshop, job.Batch.Recipe, lot, _standIn);
        _layout = LabelFitter.Fit(job.Fit.OrRefuse().Design, job.Content with { Lot = Written(_standIn) }, _series?.Drawn,
            ExtrasOf.Design(job.Fit.OrRefuse().Design, job.Workshop, job.Batch, lot)).OrRefuse();
        (_symbolAt, _place) = PlaceOf(_layout, _series);
        _standInCaption = _symbolAt < 0 ? null : _series?.Drawn.Caption;
        _ownLines = [.. _layout.Lines
            .Where(l => l.Text.Text.Contains(Written(_standIn), StringComparison.Ordinal)
                || (_standInCaption is { } caption && l.Text.Text == caption))];
        if (_symbolAt < 0 && _ownLines.IsEmpty)
            throw new InputException("label.no-place-for-serial", ("design", _layout.Design.Id));
    }

    /// <summary>How many labels.</summary>
    public int Count => _numbers.Count;

    /// <summary>The label as laid out, with a number as wide as any: for its size and the letters it is set in.</summary>
    public LabelLayout Sample => _layout;

    /// <summary>What all the labels have in common: the sample without the lines and the barcode that are each label's own.</summary>
    public LabelLayout Common => _layout with
    {
        Lines = _layout.Lines.RemoveRange(_ownLines),
        Bars = _symbolAt < 0 ? _layout.Bars : _layout.Bars.RemoveRange(_symbolAt, _series!.Value.Drawn.Bars.Length),
    };

    /// <summary>The ink of the barcodes.</summary>
    public Colour SymbolInk => (_symbolAt < 0 ? null : _layout.Bars[_symbolAt].Ink) ?? Colour.Black;

    /// <summary>The lines of the sample that are each label's own.</summary>
    public ImmutableArray<PlacedLine> OwnLines => _ownLines;

    /// <summary>Lays the label out.</summary>
    /// <exception cref="InputException">It does not fit with the serial number, or shows neither the lot nor its barcode.</exception>
    public static SerialLabels Prepare(LabelJob job, LotCode lot, SerialNumbers numbers) => new(job, lot, numbers);

    /// <summary>What a label has for itself, made when it is asked for and not kept.</summary>
    /// <param name="index">Counted from 0.</param>
    public SerialPart Part(int index)
    {
        var serial = _numbers[index];
        return new SerialPart(
            [.. _ownLines.Select(l => l with { Text = Replaced(l.Text, serial) })],
            _place is { } place ? place with { Picture = _series!.Value.Of(serial) } : null);
    }

    // A solidus, so that no part of it can be taken for part of the lot code, which has a hyphen and ends in a check character.
    private string Written(string serial) => $"{_lot}/{serial}";

    // What stands under a symbol has the number where the symbol has it: at its end.
    private MeasuredText Replaced(MeasuredText text, string serial)
    {
        // Most labels end with the number: its figures take the places of the sample's, and nothing has to be shaped.
        if (text.Text.EndsWith(_standIn, StringComparison.Ordinal) && text.Shape.Glyphs.Length == text.Text.Length)
            return text with { Shape = text.Shape.EndingIn(serial, text.Face) };
        var written = text.Text == _standInCaption && text.Text.EndsWith(_standIn, StringComparison.Ordinal)
            ? text.Text[..^_standIn.Length] + serial
            : text.Text.Replace(Written(_standIn), Written(serial), StringComparison.Ordinal);
        return MeasuredText.OfWords(text.Face, text.Size, written.TrimEnd(' ').Split(' '), 0, written.EndsWith(' '));
    }

    private static (int At, PlacedSymbol? Place) PlaceOf(LabelLayout layout, (InkBlock Drawn, Func<string, SymbolPicture> Of)? series)
    {
        if (series is not { Drawn: var drawn })
            return (-1, null);
        // Turned by a quarter where it is too wide for its place, upside down on a panel that is folded over an edge.
        for (var quarters = 0; quarters < 4; quarters++, drawn = drawn.Turned())
        {
            if (SymbolAt(layout, drawn) is not (>= 0 and var at))
                continue;
            var bars = layout.Bars.Slice(at, drawn.Bars.Length);
            var (left, top) = (bars.Min(b => b.X), bars.Min(b => b.Y));
            return (at,
                new PlacedSymbol(default!, left, top, bars.Max(b => b.X + b.Width) - left, bars.Max(b => b.Y + b.Height) - top, quarters));
        }
        return (-1, null);
    }

    // The bars of a symbol stand one after the other in a layout, all moved by the same way.
    private static int SymbolAt(LabelLayout layout, InkBlock symbol)
    {
        for (var at = 0; at + symbol.Bars.Length <= layout.Bars.Length; at++)
        {
            var (dx, dy) = Shift(layout.Bars[at], symbol.Bars[0]);
            if (symbol.Bars.Select((b, i) => (Bar: b, Placed: layout.Bars[at + i]))
                .All(p => Near(p.Placed.Width, Points.OfMillimetres(p.Bar.WidthMm))
                && Shift(p.Placed, p.Bar) is var moved && Near(moved.X, dx) && Near(moved.Y, dy)))
                return at;
        }
        return -1;
    }

    private static (double X, double Y) Shift(PlacedBar placed, InkRectangle bar) =>
        (placed.X - Points.OfMillimetres(bar.XMm), placed.Y - Points.OfMillimetres(bar.YMm));

    private static bool Near(double a, double b) => Math.Abs(a - b) < 0.001;
}
