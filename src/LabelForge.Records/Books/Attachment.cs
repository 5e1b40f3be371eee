namespace LabelForge.Records.Books;

/// <summary>A paper or a picture kept beside the books by its digest: a certificate, a safety data sheet, an invoice, a photo.</summary>
public sealed class Attachment : BookEntry
{
    /// <summary>The SHA-256 of its bytes, in small hexadecimal figures.</summary>
    public required string Digest { get; init; }

    /// <summary>Its name as it was given, with its ending.</summary>
    public required string FileName { get; init; }

    /// <summary>What it is; see <see cref="AttachmentKinds"/>.</summary>
    public required string Kind { get; init; }

    /// <summary>What it belongs to: <c>M3</c>, <c>material castor-oil</c>, <c>product
    /// bramble-bar</c>, <c>lot 26R20-01H</c> or <c>business</c>.</summary>
    public required string About { get; init; }

    /// <summary>Its revision, as it stands on it; null where it has none.</summary>
    public string? Revision { get; init; }

    /// <summary>The day it was issued; null where it does not say.</summary>
    public DateOnly? Issued { get; init; }

    /// <summary>The last day on which it holds; null where it does not say.</summary>
    public DateOnly? BestBefore { get; init; }
}

/// <summary>The kinds of paper that are kept.</summary>
public static class AttachmentKinds
{
    /// <summary>Each kind's name in the books, and what it is.</summary>
    public static IReadOnlyList<(string Kind, string What)> All { get; } =
    [
        ("certificate", "a certificate: of a fragrance's limits, of analysis, of origin"), ("allergens", "an allergen statement"),
        ("sds", "a safety data sheet"), ("specification", "a specification"), ("invoice", "an invoice or a receipt"), ("photo", "a photo"),
        ("stability", "a stability test"), ("microbiology", "a microbiological specification or result"),
        ("challenge-test", "a preservation challenge test"), ("safety-report", "a safety report"),
        ("practice", "a statement on good manufacturing practice"), ("claim-proof", "the proof of a claim"),
        ("animal-testing", "a statement on animal testing"), ("packaging", "a specification of packaging"), ("label", "label art"),
        ("letter", "a letter, an answer of a supplier"), ("other", "something else"),
    ];

    /// <summary>What a kind is, in words; null for none.</summary>
    public static string? What(string kind) => All.FirstOrDefault(k => k.Kind == kind).What;

    /// <summary>The kinds as a sentence lists them.</summary>
    public static string Listed => string.Join(", ", All.Select(k => k.Kind));
}
