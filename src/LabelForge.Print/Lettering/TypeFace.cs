using System.Collections.Concurrent;
using System.Runtime.InteropServices;
using HarfBuzzSharp;
using SkiaSharp;
using Buffer = HarfBuzzSharp.Buffer;

namespace LabelForge.Print.Lettering;

/// <summary>
/// A font file with its letters measured from the outlines that are drawn, not from what its header claims.
/// Lengths are shares of the type size (em). Safe to use from several threads.
/// </summary>
public sealed class TypeFace
{
    // Ligatures are left off: a reader of the PDF then finds each letter of the text, and no "fi" can come out as one character.
    private static readonly Feature[] Features =
    [
        new(Tag.Parse("kern"), 1), new(Tag.Parse("liga"), 0), new(Tag.Parse("clig"), 0), new(Tag.Parse("dlig"), 0),
        // Lining figures: as high as capitals, where a face would else set figures that hang and climb.
        new(Tag.Parse("lnum"), 1),
    ];

    // Words shaped once are kept, up to this many, so that fitting by trial does not shape them again.
    private const int MostRemembered = 20_000;

    // HarfBuzz reads the file's bytes for as long as it shapes: were these two collected, letters would go missing.
    private readonly Blob letters;
    private readonly Face face;
    private readonly Font shaper;
    private readonly SKFont outlines;
    private readonly int unitsPerEm;
    private readonly ConcurrentDictionary<(string, double), ShapedText> shaped = new();
    private readonly ConcurrentDictionary<ushort, SKRect> inks = new();
    private readonly ConcurrentDictionary<ushort, GlyphOutline?> svg = new();
    private readonly Lock shaping = new();

    private TypeFace(string name, byte[] file)
    {
        Name = name;
        using var data = SKData.CreateCopy(file);
        Typeface = SKTypeface.FromData(data) ?? throw new InvalidDataException($"{name} is not a font.");
        unitsPerEm = Typeface.UnitsPerEm;
        letters = Held(file);
        face = new Face(letters, 0);
        shaper = new Font(face);
        shaper.SetScale(unitsPerEm, unitsPerEm);
        shaper.SetFunctionsOpenType();
        outlines = new SKFont(Typeface, unitsPerEm) { Hinting = SKFontHinting.None, Subpixel = true, LinearMetrics = true };
        SmallLetterHeight = InkHeight('o');
        CapitalHeight = InkHeight('H');
    }

    /// <summary>The face's name, for messages.</summary>
    public string Name { get; }

    /// <summary>The height of the lower-case letter o, from its outline: what 21 CFR 701.13(h)(2) measures in mixed case.</summary>
    public double SmallLetterHeight { get; }

    /// <summary>The height of the capital H, from its outline.</summary>
    public double CapitalHeight { get; }

    /// <summary>The width of the capital N: 21 CFR 701.13(f) counts clear space at the sides in it.</summary>
    public double WidthOfN => Shape("N").Width;

    internal SKTypeface Typeface { get; }

    /// <summary>How many of the face's own units make its size.</summary>
    internal int UnitsPerEm => unitsPerEm;

    /// <summary>A glyph's outline for SVG; null for a space.</summary>
    internal GlyphOutline? Outline(ushort glyph) => svg.GetOrAdd(glyph, g =>
    {
        lock (shaping)
        {
            using var path = outlines.GetGlyphPath(g);
            return GlyphOutline.Of(path);
        }
    });

    /// <summary>Loads a font from the bytes of a TrueType or OpenType file.</summary>
    public static TypeFace FromFile(string name, byte[] file) => new(name, file);

    /// <summary>Turns text into glyphs with kerning.</summary>
    /// <param name="text">The text, one line.</param>
    /// <param name="tracking">Space added after each letter, in em.</param>
    /// <exception cref="InputException">The face has no letter for a character; it would print as an empty box.</exception>
    public ShapedText Shape(string text, double tracking = 0)
    {
        if (shaped.Count > MostRemembered)
            shaped.Clear();
        return shaped.GetOrAdd((text, tracking), key => ShapeNow(key.Item1, key.Item2));
    }

    /// <summary>
    /// The height, in em, by which the law measures this text: of the lower-case o where there are small letters, else of the
    /// capitals; and never more than its lowest figure.
    /// </summary>
    public double LetterHeight(string text)
    {
        var height = text.Any(char.IsLower) ? SmallLetterHeight : CapitalHeight;
        return text.Where(char.IsAsciiDigit).Distinct().Select(InkHeight).Append(height).Min();
    }

    /// <summary>The least type size, in points, whole thousandths, at which the text's letters are this high.</summary>
    public double SizeFor(string text, Length letterHeight) =>
        Math.Ceiling((double)letterHeight.Points / LetterHeight(text) * 1000 - 1e-6) / 1000;

    /// <summary>The height of one character's ink, in em.</summary>
    public double InkHeight(char letter) => InkOf(letter).Height / unitsPerEm;

    /// <summary>The width of one character's ink, in em.</summary>
    public double InkWidth(char letter) => InkOf(letter).Width / unitsPerEm;

    /// <summary>Whether the type has a glyph for a letter.</summary>
    public bool Has(char letter) => outlines.GetGlyph(letter) != 0;

    /// <summary>The weight that the font file gives itself: 400 regular, 600 semi-bold, 700 bold (OpenType, OS/2 usWeightClass).</summary>
    public int Weight => Typeface.FontWeight;

    /// <summary>The face with these glyphs alone, under their own numbers, or null where it
    /// cannot be cut. The caller disposes it.</summary>
    internal SKTypeface? CutTo(IEnumerable<ushort> glyphs, IEnumerable<int> characters)
    {
        lock (shaping)
            return FontSubset.Of(face, glyphs, characters) is { } bytes ? SKTypeface.FromStream(new MemoryStream(bytes)) : null;
    }

    // Blob.FromStream pins the bytes only while it is called, so a later collection may move them from under HarfBuzz.
    // These lie outside the collector's reach, for as long as the process runs: a face is loaded once.
    private static Blob Held(byte[] file)
    {
        var memory = Marshal.AllocHGlobal(file.Length);
        Marshal.Copy(file, 0, memory, file.Length);
        return new Blob(memory, file.Length, MemoryMode.ReadOnly);
    }

    // Unicode Standard Annex 9, 2.1 to 2.6.
    private static readonly System.Buffers.SearchValues<char> TurningSigns =
        System.Buffers.SearchValues.Create("\u061C\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2066\u2067\u2068\u2069");

    private ShapedText ShapeNow(string text, double tracking)
    {
        // A character that turns the reading direction is not seen, and makes the label say another thing than its file.
        if (text.AsSpan().IndexOfAny(TurningSigns) is >= 0 and var turning)
            throw NoLetterFor(text, turning);
        using var buffer = new Buffer();
        buffer.AddUtf16(text);
        buffer.GuessSegmentProperties();
        lock (shaping)
            shaper.Shape(buffer, Features);
        var infos = buffer.GlyphInfos;
        var positions = buffer.GlyphPositions;
        var glyphs = ImmutableArray.CreateBuilder<ushort>(infos.Length);
        var offsets = ImmutableArray.CreateBuilder<double>(infos.Length);
        double pen = 0, top = 0, bottom = 0;
        for (var i = 0; i < infos.Length; i++)
        {
            if (infos[i].Codepoint == 0)
                throw NoLetterFor(text, (int)infos[i].Cluster);
            var glyph = (ushort)infos[i].Codepoint;
            glyphs.Add(glyph);
            offsets.Add(pen + (double)positions[i].XOffset / unitsPerEm);
            pen += (double)positions[i].XAdvance / unitsPerEm + tracking;
            var ink = Ink(glyph);
            top = Math.Max(top, -ink.Top / unitsPerEm);
            bottom = Math.Max(bottom, ink.Bottom / unitsPerEm);
        }
        return new ShapedText(text, glyphs.ToImmutable(), offsets.ToImmutable(), Math.Max(0, pen - tracking), top, bottom);
    }

    private InputException NoLetterFor(string text, int at)
    {
        var sign = char.IsHighSurrogate(text[at]) && at + 1 < text.Length ? text.Substring(at, 2) : text[at].ToString();
        var code = char.ConvertToUtf32(sign + (char.IsHighSurrogate(sign[0]) && sign.Length == 1 ? "\udc00" : ""), 0);
        return new InputException(new Problem("letter.not-in-type", ("sign", sign), ("code", $"{code:X4}"), ("text", text))
        {
            Letter = sign,
        });
    }

    // As it is drawn: shaping may take another glyph than the face's first for a character.
    private SKRect InkOf(char letter) => Has(letter) ? Ink(Shape(letter.ToString()).Glyphs[0]) : SKRect.Empty;

    private SKRect Ink(ushort glyph) => inks.GetOrAdd(glyph, g =>
    {
        lock (shaping)
        {
            using var path = outlines.GetGlyphPath(g);
            return path is null || path.IsEmpty ? SKRect.Empty : path.TightBounds;
        }
    });
}
