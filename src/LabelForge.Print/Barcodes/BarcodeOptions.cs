namespace LabelForge.Print.Barcodes;

/// <summary>How large a barcode is drawn, and for which printer.</summary>
public sealed record BarcodeOptions
{
    /// <summary>Dots to the inch of the printer: 300 or 600. A module is a whole number of these dots.</summary>
    public int Dpi { get; init; } = 300;

    /// <summary>The least width of a module; it is rounded up to whole dots. Null takes the kind's own.</summary>
    public Length? LeastModuleWidth { get; init; }

    /// <summary>The height of the bars of a linear barcode, rounded up to whole dots. Null takes
    /// the kind's own. Not used for DataMatrix and QR.</summary>
    public Length? Height { get; init; }
}
