using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output.Pdf;

namespace LabelForge.Print.Output;

/// <summary>A page of a <see cref="FormDocument"/>; points from its top left corner, down. Written when it is disposed.</summary>
internal sealed class FormPage(FormDocument document, double width, double height) : IDisposable
{
    private readonly PdfText _operators = new();
    private readonly Dictionary<int, (string Kind, byte[] Name)> _names = [];
    private Colour? _ink;

    /// <summary>Moves and stretches all that follows. Before anything is placed.</summary>
    public void Register(Registration registration)
    {
        if (registration == default)
            return;
        var (left, top) = registration.Apply(0, 0);
        var (x, y) = (registration.FactorX, registration.FactorY);
        // PDF counts upward: stretching from the top left corner moves the bottom left one.
        _operators.AddFactor(x).Add("0 0 "u8).AddFactor(y).Add(left).Add(height - y * height - top).Add("cm\n"u8);
    }

    /// <summary>Places a label or a picture with its top left corner at a point.</summary>
    /// <param name="drawn">The label or picture; the same one is drawn once in the document.</param>
    /// <param name="x">From the left.</param>
    /// <param name="y">From the top.</param>
    /// <param name="scale">How much larger than it is.</param>
    public void Place(object drawn, double x, double y, double scale = 1) => Place(document.FormOf(drawn), x, y, scale);

    /// <summary>Places a form with its top left corner at a point.</summary>
    public void Place(PlacedForm form, double x, double y, double scale = 1) => _operators
        .Add("q "u8).AddFactor(scale).Add("0 0 "u8).AddFactor(scale).Add(x).Add(height - y - form.Height * scale).Add("cm/"u8)
        .Add(Named("XObject", form.Object)).Add(" Do Q\n"u8);

    /// <summary>Turns all that follows by a quarter to the left, until <see cref="TurnBack"/>:
    /// what is placed at the page's corner then stands at a point.</summary>
    /// <param name="x">Where its left edge comes to stand.</param>
    /// <param name="y">Where its top comes to stand.</param>
    /// <param name="wide">How wide it is unturned.</param>
    public void Turn(double x, double y, double wide)
    {
        _ink = null;
        _operators.Add("q 0 1 -1 0 "u8).Add(x + height).Add(height - y - wide).Add("cm\n"u8);
    }

    /// <summary>Ends what <see cref="Turn"/> began.</summary>
    public void TurnBack()
    {
        // The ink goes back to what it was before, which is not known here.
        _ink = null;
        _operators.Add("Q\n"u8);
    }

    /// <summary>Draws a straight line.</summary>
    public void Draw(Stroke stroke)
    {
        _operators.Add(stroke.Tint == Tint.Grey ? "0.502 G "u8 : "0 G "u8).Add(stroke.Thickness).Add("w "u8)
            .Add(stroke.X1).Add(height - stroke.Y1).Add("m "u8).Add(stroke.X2).Add(height - stroke.Y2).Add("l S\n"u8);
    }

    /// <summary>
    /// Paints a symbol as a mask of one bit to the module (ISO 32000-1, 8.9.6.2), inside the page's content (8.9.7): a twentieth of what
    /// its rectangles would take. Its bytes stand as hexadecimal digits, in which no reader takes part of them for the mask's end.
    /// </summary>
    public void Fill(PlacedSymbol symbol, double x, double y, Colour ink)
    {
        var (left, foot) = (x + symbol.X, height - y - symbol.Y - symbol.Height);
        Ink(ink);
        var (right, top) = (left + symbol.Width, foot + symbol.Height);
        // Where the picture's own width and height go, and its lower left corner.
        var (a, b, c, d, e, f) = symbol.Quarters switch
        {
            1 => (0, symbol.Height, -symbol.Width, 0, right, foot),
            2 => (-symbol.Width, 0, 0, -symbol.Height, right, top),
            3 => (0, -symbol.Height, symbol.Width, 0, left, top),
            _ => (symbol.Width, 0.0, 0.0, symbol.Height, left, foot),
        };
        _operators.Add("q "u8).Add(a).Add(b).Add(c).Add(d).Add(e).Add(f);
        _operators.Add("cm BI/W "u8).Add(symbol.Picture.Columns).Add("/H "u8).Add(symbol.Picture.Rows).Add("/IM true/D[1 0]/F/AHx ID "u8)
            .AddHex(symbol.Picture.Bits.AsSpan()).Add("> EI Q\n"u8);
    }

    /// <summary>Writes a line of text in a font of the document, its place counted from a point.</summary>
    public void Write(PlacedLine line, PdfFont font, double x, double y, Colour ink)
    {
        var (glyphs, offsets, size) = (line.Text.Shape.Glyphs, line.Text.Shape.Offsets, line.Text.Size);
        var way = line.Turned ? -1 : 1;
        Ink(ink);
        _operators.Add("BT/"u8).Add(Named("Font", font.Object)).Add(" "u8).Add(size).Add("Tf "u8)
            .Add((double)way).Add("0 0 "u8).Add((double)way).Add(x + line.X).Add(height - y - line.Y).Add("Tm"u8);
        // Each glyph at its own place: kerning is in the places already.
        var pen = 0.0;
        for (var i = 0; i < glyphs.Length; i++)
        {
            var place = Math.Round(offsets[i] * size, 4);
            if (place != pen)
                _operators.Add(" "u8).Add(place - pen).Add("0 Td"u8);
            pen = place;
            _operators.Add("<"u8).AddGlyph(glyphs[i]).Add(">Tj"u8);
        }
        _operators.Add(" ET\n"u8);
    }
    public void Dispose() =>
        document.Write(width, height, _operators.Written,
            [.. _names.Select(n => (n.Value.Kind, Encoding.ASCII.GetString(n.Value.Name), n.Key))]);

    private void Ink(Colour ink)
    {
        if (_ink == ink)
            return;
        _ink = ink;
        _operators.Add(ink.Red / 255.0).Add(ink.Green / 255.0).Add(ink.Blue / 255.0).Add("rg\n"u8);
    }

    private ReadOnlySpan<byte> Named(string kind, int number)
    {
        if (!_names.TryGetValue(number, out var named))
            _names[number] = named = (kind, Encoding.ASCII.GetBytes($"{kind[0]}{number}"));
        return named.Name;
    }
}
