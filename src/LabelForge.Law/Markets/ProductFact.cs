namespace LabelForge.Markets;

/// <summary>Something that rules ask of a product and that its kind does not tell: whether it is sprayed, is for adults only.</summary>
/// <param name="Id">Its name in files.</param>
/// <param name="Asks">The question to the maker.</param>
/// <param name="Is">How a sentence says that it is so.</param>
/// <param name="IsNot">How a sentence says that it is not.</param>
/// <param name="Says">Words of a label that show that it is so; null where none do.</param>
/// <param name="Hints">Words of a label or a recipe that show that it may be so; null where none do.</param>
public sealed record ProductFact(string Id, string Asks, string Is, string IsNot, FactWords? Says, FactWords? Hints)
{
    private static readonly Lazy<ImmutableDictionary<string, ProductFact>> Loaded = new(() =>
        YamlRecord.Embedded("markets/facts.yaml").Select(Of).ToImmutableDictionary(f => f.Id));

    /// <summary>Every fact, by name.</summary>
    public static IReadOnlyDictionary<string, ProductFact> All => Loaded.Value;

    /// <summary>The question in a language, as far as there are words for it; else in English.</summary>
    /// <param name="language">The language's code, as <c>fr</c>.</param>
    public string AsksIn(string language) => Checks.LawWords.Of($"facts-{language}", Id, "asks") ?? Asks;

    /// <summary>Finds a fact; a refusal lists them.</summary>
    public static Parsed<ProductFact> Find(string id) => Loaded.Value.TryGetValue(id.Trim(), out var fact)
        ? Parsed<ProductFact>.Of(fact)
        : Parsed<ProductFact>.Refused("fact.not-a-fact", ("id", id.Trim()),
            ("list", string.Join(", ", Loaded.Value.Keys.Order(StringComparer.Ordinal))));

    private static ProductFact Of(YamlRecord record)
    {
        record.OnlyKeys("id", "asks", "is", "not", "says", "hints");
        return new(record.Text("id", "a name, such as spray"), record.Text("asks", "the question"),
            record.Text("is", "how a sentence says it"), record.Text("not", "how a sentence denies it"), Words(record, "says"),
            Words(record, "hints"));
    }

    private static FactWords? Words(YamlRecord record, string key) => record.Has(key) ? new(record.Texts(key, "[roll-on]")) : null;
}

/// <summary>Words by which a fact is seen: whole ones, in any letters, with any space between them.</summary>
/// <remarks>A pattern is made only where the words may be there: a label is asked for two dozen facts, and shows one or none.</remarks>
public sealed class FactWords(IReadOnlyList<string> words)
{
    private readonly string[] probes = [.. words.Select(w => w.Split(' ').MaxBy(p => p.Length)!)];

    private readonly Lazy<Regex> pattern = new(() => new(
        @"(?<![\p{L}\p{N}])(?:" + string.Join('|', words.Select(w => Regex.Escape(w).Replace(@"\ ", @"\s+", StringComparison.Ordinal)))
            + @")(?![\p{L}\p{N}])",
        RegexOptions.IgnoreCase | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(2)));

    /// <summary>Whether any of them stands in a text.</summary>
    public bool IsMatch(string text) =>
        probes.Any(p => text.Contains(p, StringComparison.OrdinalIgnoreCase)) && pattern.Value.IsMatch(text);
}
