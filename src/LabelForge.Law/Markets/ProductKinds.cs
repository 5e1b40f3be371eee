namespace LabelForge.Markets;

/// <summary>The kinds of product known.</summary>
public sealed class ProductKinds
{
    private static readonly Lazy<ProductKinds> Loaded = new(LoadShipped);
    private readonly Dictionary<string, ProductKind> kinds;

    private ProductKinds(IEnumerable<ProductKind> kinds) => this.kinds = kinds.ToDictionary(k => k.Id, StringComparer.Ordinal);

    /// <summary>The kinds that ship with the program.</summary>
    public static ProductKinds Shipped => Loaded.Value;

    /// <summary>Every kind, in the order of the file.</summary>
    public IReadOnlyCollection<ProductKind> All => kinds.Values;

    /// <summary>Finds a kind by its id; a refusal lists the ids.</summary>
    public Parsed<ProductKind> Find(string id) => kinds.TryGetValue(id.Trim(), out var kind)
        ? Parsed<ProductKind>.Of(kind)
        : Parsed<ProductKind>.Refused("kind.not-a-product-kind", ("id", id.Trim()), ("list", string.Join(", ", kinds.Keys)));

    /// <summary>Reads a file of kinds.</summary>
    /// <exception cref="InputException">A key is missing or unknown, or an id is given twice.</exception>
    public static ProductKinds Read(string file, string text)
    {
        return Read(YamlRecord.List(file, new StringReader(text)));
    }

    private static ProductKinds Read(IEnumerable<YamlRecord> records)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        return new(records.Select(r => Kind(r, seen)));
    }

    private static ProductKind Kind(YamlRecord record, HashSet<string> seen)
    {
        record.OnlyKeys("id", "name", "use", "ifra", "area", "net", "form", "shades", "groups");
        var id = record.Text("id", "a name, such as soap-bar");
        return seen.Add(id)
            ? new(
                id,
                record.Text("name", "the name for people"),
                Choice(record, "use", ("rinse-off", ProductUse.RinseOff), ("leave-on", ProductUse.LeaveOn)),
                record.Text("ifra", "the IFRA category, such as 9"),
                Choice(record, "area", ("external", AreaOfUse.External), ("lips", AreaOfUse.Lips), ("eye", AreaOfUse.Eye)),
                Choice(record, "net", ("mass", QuantityBy.Mass), ("volume", QuantityBy.Volume)),
                Choice(record, "form", ("solid", true), ("liquid", false)))
            { IsMakeup = record.Has("shades") && Choice(record, "shades", ("makeup", true), ("none", false)), Groups = Groups(record) }
            : throw record.RefuseAt("id", "kind.given-twice");
    }

    private static ImmutableArray<ProductGroup> Groups(YamlRecord record) =>
        record.Has("groups") ? [.. record.Texts("groups", "[hair, soap?]").Select(text => Group(record, text))] : [];

    private static ProductGroup Group(YamlRecord record, string text) =>
        ProductGroup.Parse(text) is var group && group.IsValue ? group.Value : throw record.RefuseAt("groups", group.Problem);

    private static T Choice<T>(YamlRecord record, string key, params (string Word, T Value)[] choices)
    {
        var words = string.Join(" or ", choices.Select(c => c.Word));
        var text = record.Text(key, words);
        foreach (var (word, value) in choices)
            if (word == text)
                return value;
        throw record.RefuseAt(key, "kind.not-a-choice", ("text", text), ("key", key), ("words", words));
    }

    private static ProductKinds LoadShipped()
    {
        return Read(YamlRecord.Embedded("markets/products.yaml"));
    }
}
