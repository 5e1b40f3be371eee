namespace LabelForge.Print.Barcodes;

/// <summary>A kind of barcode that a label can carry.</summary>
public enum BarcodeKind
{
    /// <summary>Code 128 (ISO/IEC 15417): a lot code alone, for the maker's own use.</summary>
    Code128,

    /// <summary>GS1-128: Code 128 that begins with FNC1 and carries an element string. Not read at most tills.</summary>
    Gs1Code128,

    /// <summary>GS1 DataMatrix (ISO/IEC 16022, ECC 200) that begins with FNC1 and carries an element string.</summary>
    Gs1DataMatrix,

    /// <summary>QR Code (ISO/IEC 18004): text, usually a web address such as a GS1 Digital Link.</summary>
    Qr,

    /// <summary>EAN-13 (ISO/IEC 15420): a GTIN-13, for the till.</summary>
    Ean13,

    /// <summary>UPC-A (ISO/IEC 15420): a GTIN-12, for the till.</summary>
    UpcA,
}
