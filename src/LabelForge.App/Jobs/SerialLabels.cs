using System.Collections.Immutable;
using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Lettering;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Jobs;

/// <summary>What one label of a series has for itself: the lines with its number in them, and its barcode.</summary>
/// <param name="Lines">Lines at their places.</param>
/// <param name="Bars">Bars at their places.</param>
public sealed record SerialPart(ImmutableArray<PlacedLine> Lines, ImmutableArray<PlacedBar> Bars);

/// <summary>
/// Labels that differ in their serial number alone: after the lot, and in each label's own barcode. The label is laid out
/// once, with a number as wide as any; what all have in common is drawn once, and the number and the barcode of each are
/// made when they are asked for, one at a time.
/// </summary>
public sealed class SerialLabels
{
    private readonly LabelJob _job;
    private readonly LotCode _lot;
    private readonly SerialNumbers _numbers;
    private readonly string _standIn;
    private readonly InkBlock _standInSymbol;
    private readonly LabelLayout _layout;
    private readonly ImmutableArray<PlacedLine> _ownLines;
    private readonly int _symbolAt;
    private readonly bool _turned;

    private SerialLabels(LabelJob job, LotCode lot, SerialNumbers numbers)
    {
        (_job, _lot, _numbers) = (job, lot, numbers);
        var widest = "0123456789".MaxBy(d => BundledFaces.Regular.Shape(d.ToString()).Width);
        _standIn = new string(widest, numbers.Digits);
        _standInSymbol = Symbol(_standIn);
        _layout = LabelFitter.Fit(job.Fit.OrRefuse().Design, job.Content with { Lot = Written(_standIn) }, _standInSymbol).OrRefuse();
        (_symbolAt, _turned) = SymbolAt(_layout, _standInSymbol, turned: false) is var upright and >= 0 ? (upright, false) : (SymbolAt(_layout, _standInSymbol, turned: true), true);
        _ownLines = [.. _layout.Lines.Where(l => l.Text.Text.Contains(Written(_standIn), StringComparison.Ordinal) || (_symbolAt >= 0 && l.Text.Text == _standInSymbol.Caption))];
        if (_symbolAt < 0 && _ownLines.IsEmpty)
            throw new InputException(new Problem(null, 0, $"The design {_layout.Design.Id} shows neither the lot nor its barcode, so that a serial number has no place on it.", "Choose a design that shows the lot."));
    }

    /// <summary>How many labels.</summary>
    public int Count => _numbers.Count;

    /// <summary>The label as laid out, with a number as wide as any: for its size and the letters it is set in.</summary>
    public LabelLayout Sample => _layout;

    /// <summary>What all the labels have in common: the sample without the lines and the barcode that are each label's own.</summary>
    public LabelLayout Common => _layout with
    {
        Lines = _layout.Lines.RemoveRange(_ownLines),
        Bars = _symbolAt < 0 ? _layout.Bars : _layout.Bars.RemoveRange(_symbolAt, _standInSymbol.Bars.Length),
    };

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
        var symbol = _symbolAt < 0 ? null : Symbol(serial);
        return new SerialPart([.. _ownLines.Select(l => l with { Text = Replaced(l.Text, serial, symbol) })], symbol is null ? [] : Placed(symbol));
    }

    // A solidus, so that no part of it can be taken for part of the lot code, which has a hyphen and ends in a check sign.
    private string Written(string serial) => $"{_lot}/{serial}";

    private InkBlock Symbol(string serial) => LotSymbol.For(_job.Workshop, _job.Batch.Recipe, _lot, new BarcodeOptions(), serial);

    private MeasuredText Replaced(MeasuredText text, string serial, InkBlock? symbol)
    {
        var written = symbol?.Caption is { } caption && text.Text == _standInSymbol.Caption
            ? caption
            : text.Text.Replace(Written(_standIn), Written(serial), StringComparison.Ordinal);
        return MeasuredText.OfWords(text.Face, text.Size, written.TrimEnd(' ').Split(' '), 0, written.EndsWith(' '));
    }

    private ImmutableArray<PlacedBar> Placed(InkBlock symbol)
    {
        if (symbol.Width != _standInSymbol.Width || symbol.Height != _standInSymbol.Height)
            throw new InvalidOperationException("Serial numbers of one length make barcodes of different sizes.");
        var first = _layout.Bars[_symbolAt];
        var (dx, dy) = Shift(first, _standInSymbol.Bars[0], _turned);
        return _turned
            ? [.. symbol.Bars.Select(b => new PlacedBar(dx - Of(b.XMm) - Of(b.WidthMm), dy - Of(b.YMm) - Of(b.HeightMm), Of(b.WidthMm), Of(b.HeightMm)))]
            : [.. symbol.Bars.Select(b => new PlacedBar(dx + Of(b.XMm), dy + Of(b.YMm), Of(b.WidthMm), Of(b.HeightMm)))];

        // Floating point from here on, as in all drawing: the exact way takes longer than the barcode itself.
        static double Of(decimal millimetres) => (double)millimetres * (72 / 25.4);
    }

    // The bars of a symbol stand one after the other in a layout, all moved by the same way; on a panel that is folded over an
    // edge they are turned upside down first.
    private static int SymbolAt(LabelLayout layout, InkBlock symbol, bool turned)
    {
        for (var at = 0; at + symbol.Bars.Length <= layout.Bars.Length; at++)
        {
            var (dx, dy) = Shift(layout.Bars[at], symbol.Bars[0], turned);
            if (symbol.Bars.Select((b, i) => (Bar: b, Placed: layout.Bars[at + i])).All(p => Near(p.Placed.Width, Points.OfMillimetres(p.Bar.WidthMm))
                && Shift(p.Placed, p.Bar, turned) is var moved && Near(moved.X, dx) && Near(moved.Y, dy)))
                return at;
        }
        return -1;
    }

    private static (double X, double Y) Shift(PlacedBar placed, InkRectangle bar, bool turned) => turned
        ? (placed.X + placed.Width + Points.OfMillimetres(bar.XMm), placed.Y + placed.Height + Points.OfMillimetres(bar.YMm))
        : (placed.X - Points.OfMillimetres(bar.XMm), placed.Y - Points.OfMillimetres(bar.YMm));

    private static bool Near(double a, double b) => Math.Abs(a - b) < 0.001;
}
