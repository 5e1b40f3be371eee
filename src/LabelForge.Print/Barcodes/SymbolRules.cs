namespace LabelForge.Print.Barcodes;

/// <summary>What the standards ask of a kind of barcode: module width, height and quiet zones.</summary>
/// <param name="ModuleWidth">The module width taken where none is asked for.</param>
/// <param name="Height">The height of bars taken where none is asked for; null for square symbols.</param>
/// <param name="QuietLeft">The blank left of the symbol, in modules.</param>
/// <param name="QuietRight">The blank right of it, in modules.</param>
/// <param name="QuietAround">The blank above and below it, in modules; 0 for linear symbols.</param>
internal sealed record SymbolRules(Length ModuleWidth, Length? Height, int QuietLeft, int QuietRight, int QuietAround)
{
    // Quiet zones: ISO/IEC 15417 (Code 128, 10X), GS1 General Specifications 5.4 (GS1-128, 10X), 5.2.3.4 (EAN-13 11X and
    // 7X, UPC-A 9X), ISO/IEC 16022 (DataMatrix, 1X), ISO/IEC 18004 (QR, 4X).
    // Module widths and heights: 0.33 mm and 22.85 mm are the nominal size of EAN-13 and UPC-A (5.2); 0.25 mm is the least
    // of GS1-128's range (5.4; a conveyor's scanner asks for about twice that), taken for Code 128 too; 0.38 mm is about
    // the least that a till asks of GS1 DataMatrix and QR (5.12); 12.7 mm is the height that small items' tables ask of
    // GS1-128 (5.12); 10 mm for a lot's own Code 128 is common practice. Figures and sections from memory.
    private static readonly Dictionary<BarcodeKind, SymbolRules> Rules = new()
    {
        [BarcodeKind.Code128] = Linear(0.25m, 10m, 10, 10),
        [BarcodeKind.Gs1Code128] = Linear(0.25m, 12.7m, 10, 10),
        [BarcodeKind.Gs1DataMatrix] = Square(0.38m, 1),
        [BarcodeKind.Qr] = Square(0.38m, 4),
        [BarcodeKind.Ean13] = Linear(0.33m, 22.85m, 11, 7),
        [BarcodeKind.UpcA] = Linear(0.33m, 22.85m, 9, 9),
    };

    /// <summary>The rules of a kind.</summary>
    public static SymbolRules For(BarcodeKind kind) => Rules[kind];

    private static SymbolRules Linear(decimal module, decimal height, int left, int right) =>
        new(Length.FromMillimetres(module), Length.FromMillimetres(height), left, right, 0);

    private static SymbolRules Square(decimal module, int quiet) =>
        new(Length.FromMillimetres(module), null, quiet, quiet, quiet);
}
