namespace LabelForge.Markets;

/// <summary>The kinds of product known: a vocabulary that is the same in every market and workshop.</summary>
public static class ProductKinds
{
    private static readonly Lazy<OrderedDictionary<string, ProductKind>> Kinds =
        new(() => Read(YamlRecord.Embedded("markets/products.yaml")));

    /// <summary>Every kind, in the order of the file.</summary>
    public static IReadOnlyCollection<ProductKind> All => Kinds.Value.Values;

    /// <summary>Finds a kind by its id; a refusal lists the ids.</summary>
    public static Parsed<ProductKind> Find(string id) => Kinds.Value.TryGetValue(id.Trim(), out var kind)
        ? Parsed<ProductKind>.Of(kind)
        : Parsed<ProductKind>.Refused("kind.not-a-product-kind", ("id", id.Trim()), ("list", string.Join(", ", Kinds.Value.Keys)));

    /// <summary>Reads a file of kinds.</summary>
    /// <exception cref="InputException">A key is missing or unknown, or an id is given twice.</exception>
    public static IReadOnlyCollection<ProductKind> Read(string file, string text) =>
        Read(YamlRecord.List(file, new StringReader(text))).Values;

    private static OrderedDictionary<string, ProductKind> Read(IEnumerable<YamlRecord> records)
    {
        var kinds = new OrderedDictionary<string, ProductKind>(StringComparer.Ordinal);
        foreach (var record in records)
        {
            if (!kinds.TryAdd(record.Text("id", "a name, such as soap-bar"), Kind(record)))
                throw record.RefuseAt("id", "kind.given-twice");
        }
        return kinds;
    }

    private static ProductKind Kind(YamlRecord record)
    {
        record.OnlyKeys("id", "name", "use", "ifra", "area", "net", "form", "shades", "groups");
        return new(
            record.Text("id", "a name, such as soap-bar"),
            record.Text("name", "the name for people"),
            Choice(record, "use", ("rinse-off", ProductUse.RinseOff), ("leave-on", ProductUse.LeaveOn)),
            record.Text("ifra", "the IFRA category, such as 9"),
            Choice(record, "area", ("external", AreaOfUse.External), ("lips", AreaOfUse.Lips), ("eye", AreaOfUse.Eye)),
            Choice(record, "net", ("mass", QuantityBy.Mass), ("volume", QuantityBy.Volume)),
            Choice(record, "form", ("solid", true), ("liquid", false)))
        {
            IsMakeup = record.Has("shades") && Choice(record, "shades", ("makeup", true), ("none", false)),
            Groups = Groups(record),
        };
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
}
