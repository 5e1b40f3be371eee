namespace LabelForge.Markets;

/// <summary>A text that figures and rules were read from.</summary>
/// <param name="Id">Its name in the data, such as <c>us-cfr21-701</c>.</param>
/// <param name="Instrument">The instrument and the part of it.</param>
/// <param name="Version">The state of the law that the copy shows: a consolidation, a newest amendment, a month.</param>
/// <param name="Copy">What was read: the official site, or a copy of it.</param>
/// <param name="ReadOn">The day on which it was read.</param>
/// <param name="NotRead">Parts that the copy lacked; null where it lacked none.</param>
public sealed record LawText(string Id, string Instrument, string Version, string Copy, DateOnly ReadOn, string? NotRead);

/// <summary>The texts that were read; what says that it rests on a text names one of them.</summary>
public static class LawTexts
{
    private const string File = "markets/Texts/texts.yaml";
    private static readonly Lazy<ImmutableDictionary<string, LawText>> Loaded = new(Load);

    /// <summary>Every text, by id.</summary>
    public static IEnumerable<LawText> All => Loaded.Value.Values.OrderBy(t => t.Id, StringComparer.Ordinal);

    /// <summary>The text of an id, or null.</summary>
    public static LawText? Find(string id) => Loaded.Value.GetValueOrDefault(id);

    /// <summary>
    /// What keeps a basis and the text named beside it from being believed, or null: a basis of <c>text</c> names a text
    /// that is known here, <c>memory</c> names none.
    /// </summary>
    public static Problem? Doubt(Basis basis, string? read) => (basis, read) switch
    {
        (Basis.Text, null) => new Problem("figure.text-not-named"),
        (Basis.Memory, not null) => new Problem("figure.memory-with-text"),
        (_, { } id) when Find(id) is null => new Problem("figure.unknown-text", ("id", id)),
        _ => null,
    };

    private static ImmutableDictionary<string, LawText> Load() =>
        YamlRecord.Embedded(File).Select(Text).ToImmutableDictionary(t => t.Id, StringComparer.Ordinal);

    private static LawText Text(YamlRecord record)
    {
        record.OnlyKeys("id", "instrument", "version", "copy", "read on", "not read");
        return new(
            record.Text("id", "a name, such as us-cfr21-701"),
            record.Text("instrument", "the instrument and the part of it"),
            record.Text("version", "the state of the law that the copy shows"),
            record.Text("copy", "what was read"),
            record.Date("read on"),
            record.Has("not read") ? record.Text("not read", "the parts that were not read") : null);
    }
}
