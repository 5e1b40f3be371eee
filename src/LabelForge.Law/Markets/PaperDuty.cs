using LabelForge.Checks;

namespace LabelForge.Markets;

/// <summary>One thing that a paper has to say.</summary>
/// <param name="Id">Its name in the data and in JSON, as <c>composition</c>.</param>
/// <param name="What">What it is, as the paper's heading.</param>
/// <param name="At">Where in the instrument it stands; null for common practice.</param>
/// <param name="From">The part of the workshop that answers it; null where a person has to.</param>
/// <param name="Paper">The kind of attachment that answers it, where one is kept with the product; null for none.</param>
/// <param name="Write">What a person has to add; null where the workshop answers.</param>
/// <param name="Inside">The countries (ISO 3166-1, two letters) that count as inside for it; empty where it does not turn on them.</param>
public sealed record PaperItem(string Id, string What, string? At, string? From, string? Paper, string? Write,
    ImmutableArray<string> Inside);

/// <summary>A paper that goes with a product, by a market's law or by common practice.</summary>
/// <param name="Id">Its name, as <c>product-file</c>.</param>
/// <param name="Title">Its title.</param>
/// <param name="Citation">What asks for it.</param>
/// <param name="Basis">What that rests on.</param>
/// <param name="Read">The text that was read; null for none.</param>
/// <param name="Notes">What a reader has to know of it, a sentence each.</param>
/// <param name="Items">What it has to say, in order; empty where its use case sets it.</param>
public sealed record PaperDuty(string Id, string Title, string Citation, Basis Basis, string? Read, ImmutableArray<string> Notes,
    ImmutableArray<PaperItem> Items)
{
    /// <summary>The papers of a market: its own, then those of the market whose rules it follows, then those of every market.</summary>
    public static ImmutableArray<PaperDuty> Of(Market market)
    {
        var own = market.Records("papers").Select(r => Of(r, market));
        var followed = market.Basis?.Records("papers").Select(r => Of(r, market)) ?? [];
        return [.. own.Concat(followed).Concat(market.Book.Every.Records("papers").Select(r => Of(r, market))).DistinctBy(d => d.Id)];
    }

    private static PaperDuty Of(YamlRecord record, Market market)
    {
        record.OnlyKeys("id", "title", "citation", "basis", "read", "notes", "items");
        var (basis, read) = LawFile.BasisOf(record);
        return new PaperDuty(
            record.Text("id", "a name, such as product-file"),
            record.Text("title", "its title"),
            market.Cite(record.Text("citation", "instrument and paragraph")),
            basis,
            read,
            record.Has("notes") ? [.. record.Texts("notes", "a list of sentences")] : [],
            record.Has("items") ? [.. record.Records("items", "what it has to say").Select(Item)] : []);
    }

    private static PaperItem Item(YamlRecord record)
    {
        record.OnlyKeys("id", "what", "at", "from", "paper", "write", "inside");
        string? Optional(string key) => record.Has(key) ? record.Text(key, "a text") : null;
        var item = new PaperItem(record.Text("id", "a name"), record.Text("what", "what it is"), Optional("at"), Optional("from"),
            Optional("paper"), Optional("write"), [.. Optional("inside")?.Split(' ') ?? []]);
        return item is { From: null, Write: null }
            ? throw record.RefuseAt("id", "papers.nobody-asked")
            : item;
    }
}
