using LabelForge.Lots;
using LabelForge.Print.Drawing;
using ZXing;
using ZXing.Common;

namespace LabelForge.Print.Barcodes;

/// <summary>Draws barcodes as rectangles of ink.</summary>
/// <remarks>
/// The block's size includes the quiet zones, which stay blank. Widths are whole printer dots; put the block's corner on
/// a whole dot too, and do not scale it, or the printer rounds bars unevenly. The caption is the human-readable text and
/// stands outside the block's size; it belongs beside or below the block.
/// </remarks>
public static class Barcode
{
    // GS1 General Specifications, 5.4.1: at most 48 characters in one GS1-128 symbol (from memory).
    private const int MostGs1Code128Characters = 48;

    // What the encoder takes in one Code 128; a lot or a shelf code never nears it.
    private const int MostCode128Characters = 80;

    /// <summary>Draws text as a barcode.</summary>
    /// <param name="kind">The kind of barcode.</param>
    /// <param name="data">
    /// Code 128: 1 to 80 characters of ASCII that print. GS1 kinds: an element string as <see cref="Gs1ElementString.Parse"/>
    /// reads it. QR: any text. EAN-13 and UPC-A: a GTIN with its check digit.
    /// </param>
    /// <param name="options">Size and printer; null takes a 300 dpi printer and the kind's own size.</param>
    /// <returns>The block, or why the data cannot be this kind of barcode.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A resolution other than 300 or 600, or a module or a height of nothing.</exception>
    public static Parsed<InkBlock> Draw(BarcodeKind kind, string data, BarcodeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        options = Checked(options);
        return kind switch
        {
            BarcodeKind.Code128 => Code128(data, options),
            BarcodeKind.Qr => Qr(data, options),
            BarcodeKind.Ean13 or BarcodeKind.UpcA => Till(kind, Gtin.Parse(data), options),
            BarcodeKind.Gs1Code128 or BarcodeKind.Gs1DataMatrix => Read(kind, Gs1ElementString.Parse(data), options),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of barcode."),
        };
    }

    /// <summary>Draws an element string as a barcode.</summary>
    /// <param name="kind">GS1-128 or GS1 DataMatrix; EAN-13 or UPC-A where the string holds the GTIN alone.</param>
    /// <param name="data">What the barcode says.</param>
    /// <param name="options">Size and printer; null takes a 300 dpi printer and the kind's own size.</param>
    /// <returns>The block, or why the data cannot be this kind of barcode.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A resolution other than 300 or 600, or a module or a height of nothing.</exception>
    public static Parsed<InkBlock> Draw(BarcodeKind kind, Gs1ElementString data, BarcodeOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        options = Checked(options);
        switch (kind)
        {
            case BarcodeKind.Gs1DataMatrix:
                return Encoded(kind, () => SymbolEncoder.Gs1DataMatrix(data.Message), options, data.HumanReadable);
            case BarcodeKind.Gs1Code128 when data.Message.Length <= MostGs1Code128Characters:
                return Encoded(kind, () => SymbolEncoder.Gs1Code128(data.Message), options, data.HumanReadable);
            case BarcodeKind.Gs1Code128:
                return Parsed<InkBlock>.Refused("barcode.gs1-128-too-long", ("human-readable", data.HumanReadable),
                    ("count", data.Message.Length), ("most-gs1-code128-characters", MostGs1Code128Characters));
            case BarcodeKind.Ean13 or BarcodeKind.UpcA when data.Elements.Length == 1:
                return Till(kind, Parsed<Gtin>.Of(data.Gtin), options);
            case BarcodeKind.Ean13 or BarcodeKind.UpcA:
                return Parsed<InkBlock>.Refused("barcode.gtin-alone", ("kind", kind));
            case BarcodeKind.Qr:
                return Parsed<InkBlock>.Refused("barcode.qr-web-address");
            case BarcodeKind.Code128:
                return Parsed<InkBlock>.Refused("barcode.code-128-without-fnc1");
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of barcode.");
        }
    }

    private static BarcodeOptions Checked(BarcodeOptions? options)
    {
        options ??= new BarcodeOptions();
        if (options.Dpi is not (300 or 600))
            throw new ArgumentOutOfRangeException(nameof(options), options.Dpi, "The printer's resolution is 300 or 600 dpi.");
        if (options.LeastModuleWidth is { Millimetres: 0 } || options.Height is { Millimetres: 0 })
            throw new ArgumentOutOfRangeException(nameof(options), "A module's width and a bar's height are more than nothing.");
        return options;
    }

    private static Parsed<InkBlock> Code128(string data, BarcodeOptions options)
    {
        if (data.Length is 0 or > MostCode128Characters)
            return Parsed<InkBlock>.Refused("barcode.code-128-too-long", ("count", data.Length),
                ("most-code128-characters", MostCode128Characters));
        foreach (var character in data)
        {
            if (character is < ' ' or > '~')
                return Parsed<InkBlock>.Refused("barcode.code-128-character", ("character", character),
                    ("character-2", $"{(int)character:X4}"));
        }

        return Encoded(BarcodeKind.Code128, () => SymbolEncoder.Code128(data), options, data);
    }

    private static Parsed<InkBlock> Qr(string data, BarcodeOptions options) => data.Length == 0
        ? Parsed<InkBlock>.Refused("barcode.qr-empty")
        : Encoded(BarcodeKind.Qr, () => SymbolEncoder.Qr(data), options, data);

    private static Parsed<InkBlock> Read(BarcodeKind kind, Parsed<Gs1ElementString> data, BarcodeOptions options) => data.IsValue
        ? Draw(kind, data.Value, options)
        : Parsed<InkBlock>.Refused(data.Problem);

    private static Parsed<InkBlock> Till(BarcodeKind kind, Parsed<Gtin> gtin, BarcodeOptions options)
    {
        if (!gtin.IsValue)
            return Parsed<InkBlock>.Refused(gtin.Problem);
        // A GTIN-8 has a symbol of its own (EAN-8); filled with zeros it would be another number to a till.
        var short8 = gtin.Value.Digits.Length == 8;
        return (kind, gtin.Value.Thirteen, gtin.Value.Twelve) switch
        {
            (BarcodeKind.Ean13, { } digits, _) when !short8 => Encoded(kind, () => SymbolEncoder.Ean13(digits), options, digits),
            (BarcodeKind.UpcA, _, { } digits) when !short8 => Encoded(kind, () => SymbolEncoder.UpcA(digits), options, digits),
            (BarcodeKind.UpcA, { }, _) when !short8 => Parsed<InkBlock>.Refused("barcode.upc-needs-12", ("gtin", gtin.Value)),
            _ => Parsed<InkBlock>.Refused("barcode.cannot-carry", ("kind", kind), ("gtin", gtin.Value)),
        };
    }

    private static Parsed<InkBlock> Encoded(BarcodeKind kind, Func<BitMatrix> encode, BarcodeOptions options, string caption)
    {
        BitMatrix modules;
        try
        {
            modules = encode();
        }
        catch (Exception refusal) when (refusal is WriterException or ArgumentException or InvalidOperationException)
        {
            // What fits depends on the mix of characters, so only the encoder knows.
            return Parsed<InkBlock>.Refused("barcode.cannot-carry-caption", ("kind", kind), ("caption", caption),
                ("message", refusal.Message));
        }

        return Parsed<InkBlock>.Of(SymbolDrawing.Draw(modules, SymbolRules.For(kind), options, caption));
    }
}
