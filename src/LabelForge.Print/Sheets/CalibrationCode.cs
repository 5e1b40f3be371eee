using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;
using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>One of the four QR codes of a test page: it says of which stock the page is, where on
/// it the code stands, and how the print was moved and stretched.</summary>
/// <param name="Stock">The stock's id.</param>
/// <param name="Corner">0 to 3: top left, top right, bottom left, bottom right.</param>
/// <param name="Used">How the page was moved and stretched when it was written.</param>
public sealed record CalibrationCode(string Stock, int Corner, Registration Used)
{
    // So far inside the sheet stands their ink, clear of what no printer reaches and of the scales at the edges.
    private const decimal Inside = 16m;

    private const decimal Module = 0.75m;

    private const string Mark = "LFTEST1";

    /// <summary>What the code says.</summary>
    public string Text => Invariant($"{Mark} {Stock} {Corner} {Used.NudgeXMm} {Used.NudgeYMm} {Used.StretchXPercent} {Used.StretchYPercent}");

    /// <summary>Reads what a code says; null where it is another.</summary>
    public static CalibrationCode? Parse(string text)
    {
        static decimal? Figure(string part) =>
        decimal.TryParse(part, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value)
            ? value
            : null;
        return text.Split(' ') is [Mark, { Length: > 0 and < 100 } stock, ['0' or '1' or '2' or '3'] corner, var nudgeX, var nudgeY,
            var stretchX, var stretchY]
            && (Figure(nudgeX), Figure(nudgeY), Figure(stretchX), Figure(stretchY)) is ({ } x, { } y, { } wide, { } high)
            ? new CalibrationCode(stock, corner[0] - '0', new Registration(x, y, wide, high))
            : null;
    }

    /// <summary>The four codes of a page.</summary>
    public static ImmutableArray<CalibrationCode> Of(LabelStock stock, Registration used) =>
        [.. Enumerable.Range(0, 4).Select(i => new CalibrationCode(stock.Id, i, used))];

    /// <summary>Its ink as bars, in points from the page's top left corner, before it is moved and stretched.</summary>
    public IEnumerable<Stroke> Ink(LabelStock stock)
    {
        var (x, y, symbol) = Place(stock);
        const double k = 72 / 25.4;
        // A stroke as thick as the bar is high.
        return symbol.Bars.Select(b => new Stroke(
            k * (x + (double)b.XMm), k * (y + (double)(b.YMm + b.HeightMm / 2)), k * (x + (double)(b.XMm + b.WidthMm)),
            k * (y + (double)(b.YMm + b.HeightMm / 2)), k * (double)b.HeightMm, Tint.Black));
    }

    /// <summary>The middles of its three finder patterns (ISO/IEC 18004), bottom left, top left, top right: millimetres from the page's
    /// top left corner, before it is moved and stretched.</summary>
    public ImmutableArray<(double X, double Y)> Finders(LabelStock stock)
    {
        var (x, y, symbol) = Place(stock);
        var (left, top) = (x + (double)symbol.Bars.Min(b => b.XMm), y + (double)symbol.Bars.Min(b => b.YMm));
        var side = (double)(symbol.Bars.Max(b => b.XMm + b.WidthMm) - symbol.Bars.Min(b => b.XMm));
        // A finder is seven modules wide; the smallest bar is one module high or wide.
        var half = 3.5 * (double)symbol.Bars.Min(b => Math.Min(b.WidthMm, b.HeightMm));
        return [(left + half, top + side - half), (left + half, top + half), (left + side - half, top + half)];
    }

    private (double X, double Y, InkBlock Symbol) Place(LabelStock stock)
    {
        var symbol = Barcode.Draw(BarcodeKind.Qr, Text,
            new BarcodeOptions { Dpi = 600, LeastModuleWidth = Measures.Length.FromMillimetres(Module) }).OrRefuse();
        var (wide, high) = (symbol.Width.Millimetres, symbol.Height.Millimetres);
        var quiet = symbol.Bars.Min(b => b.XMm);
        var x = Corner % 2 == 0 ? Inside - quiet : stock.PageWidth.Millimetres - Inside - wide + quiet;
        var y = Corner < 2 ? Inside - quiet : stock.PageHeight.Millimetres - Inside - high + quiet;
        return ((double)x, (double)y, symbol);
    }
}
