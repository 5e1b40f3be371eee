using LabelForge.Print.Documents;
using LabelForge.Records.Books;

namespace LabelForge.ProductPapers;

/// <summary>What a paper says of papers that are kept beside the books: which, of what day, how long they hold.</summary>
internal static class AttachmentParts
{
    /// <summary>What is attached to the product, of a kind.</summary>
    public static IEnumerable<Attachment> Of(PaperCase of, string kind) => (of.History?.Attachments ?? []).Where(a => a.Kind == kind);

    /// <summary>The last paper of a kind, or what is missing; one that holds no more is missing too.</summary>
    public static PaperFact OrMissing(PaperCase of, string key, string what, string kind, string missing)
    {
        var last = Of(of, kind).LastOrDefault();
        return last is null ? PaperFact.Lacking(key, what, $"{missing} Attach it to {of.Product.Name} as {kind}.")
            : last.BestBefore < of.On ? PaperFact.Lacking(key, what, $"{Shown(last)} holds no more.")
            : PaperFact.Of(key, what, Shown(last), "the books");
    }

    /// <summary>An item that a person answers, with the paper where one is kept.</summary>
    public static PaperSection ByHand(PaperItem item, PaperCase of) => new(item.Id, item.What, item.At)
    {
        Facts = [item.Paper is { } kind
            ? OrMissing(of, "paper", AttachmentKinds.What(kind) ?? kind, kind, item.Write!)
            : PaperFact.Lacking("by-hand", "To be added", item.Write!)],
    };

    /// <summary>The suppliers' papers for each material.</summary>
    public static PaperSection SuppliersPapers(PaperItem item, PaperCase of)
    {
        var materials = of.Product.Batch.Lines.Select(l => l.Material).Where(m => m.Kind != MaterialKind.Water).DistinctBy(m => m.Id)
            .ToArray();
        Attachment[] Kept(Material m) => of.OfMaterials.TryGetValue(m.Id, out var kept) ? [.. kept] : [];
        string[] bare = [.. materials.Where(m => !Kept(m).Any(a => a.Kind is "sds" or "specification")).Select(m => m.Name)];
        string[] over = [.. materials.SelectMany(Kept).Where(a => a.BestBefore < of.On).Select(Shown)];
        return new(item.Id, item.What, item.At)
        {
            Facts =
            [
                .. item.Write is { } write ? [PaperFact.Lacking("by-hand", "To be added", write)] : (PaperFact[])[],
                .. bare.Length == 0
                    ? []
                    : (PaperFact[])[PaperFact.Lacking("papers", "No safety data sheet and no specification is kept",
                        $"{string.Join(", ", bare)}: attach them to the materials as sds or specification.")],
                .. over.Length == 0 ? [] : (PaperFact[])[PaperFact.Lacking("over", "Papers that hold no more", string.Join("; ", over))],
            ],
            Table = materials.All(m => Kept(m).Length == 0)
                ? null
                : new PaperTable([new("material", "Material", 2), new("paper", "paper", 3.5), new("revision", "revision", 1),
                    new("until", "holds until", 1)],
                [
                    .. materials.SelectMany(m => Kept(m)
                        .Select(a => (ImmutableArray<PaperValue>)[new(m.Name), new($"{a.Kind}: {a.FileName}"), new(a.Revision ?? ""),
                            new(a.BestBefore is { } day ? day.ToIso() : "")]))]),
        };
    }

    /// <summary>A paper in a sentence.</summary>
    internal static string Shown(Attachment a) =>
        $"{a.FileName}{(a.Revision is { } r ? $", revision {r}" : "")}{(a.Issued is { } issued ? $", of {issued.ToIso()}" : "")}{(a.BestBefore is { } best ? $", holds until {best.ToIso()}" : "")} (attachment {a.Id}, SHA-256 {a.Digest[..12]})";
}
