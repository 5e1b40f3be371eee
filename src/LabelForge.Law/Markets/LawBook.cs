namespace LabelForge.Markets;

/// <summary>The figures of a market's law that the program uses, each with its citation and the days on which it holds.</summary>
public sealed class LawBook
{
    private readonly Dictionary<string, List<LawEntry>> versions = new(StringComparer.Ordinal);

    private LawBook(IEnumerable<LawEntry> entries)
    {
        foreach (var entry in entries)
        {
            if (!versions.TryGetValue(entry.Id, out var known))
                versions[entry.Id] = known = [];
            if (known.FirstOrDefault(k => Overlap(k, entry)) is { } other)
                throw new InputException("figure.two-in-force", ("entry", entry.Id),
                    ("in-force-from", $"{other.InForceFrom:yyyy-MM-dd}"), ("in-force-from-2", $"{entry.InForceFrom:yyyy-MM-dd}"));
            known.Add(entry);
        }
    }

    /// <summary>Every version of every provision.</summary>
    public IEnumerable<LawEntry> Entries => versions.Values.SelectMany(v => v);

    /// <summary>Reads one law file.</summary>
    /// <param name="file">Its name, for messages.</param>
    /// <exception cref="InputException">A citation or a date is missing, two versions overlap, or the file is malformed.</exception>
    public static LawBook Read(string file, string text) => Of(LawFile.Read(YamlRecord.List(file, new StringReader(text)), ""));

    /// <summary>A book of these provisions.</summary>
    /// <exception cref="InputException">Two versions of one overlap.</exception>
    internal static LawBook Of(IEnumerable<LawEntry> entries) => new(entries);

    /// <summary>Whether a provision of this name is known, whenever it holds.</summary>
    public bool Has(string id) => versions.ContainsKey(id);

    /// <summary>The version of a provision in force on a day; null where there is none of that name, or none in force.</summary>
    public LawEntry? Find(string id, DateOnly on) => versions.GetValueOrDefault(id)?.FirstOrDefault(e => e.HoldsOn(on));

    /// <summary>The version of a provision in force on a day.</summary>
    /// <param name="id">The provision's name.</param>
    /// <param name="on">The day to judge by.</param>
    /// <exception cref="KeyNotFoundException">No provision has that name: a mistake in the program.</exception>
    /// <exception cref="InputException">The provision is known, and no version of it that is known held on that day.</exception>
    public LawEntry Get(string id, DateOnly on)
    {
        if (!versions.TryGetValue(id, out var known))
            throw new KeyNotFoundException($"No provision is named {id}.");
        return known.FirstOrDefault(e => e.HoldsOn(on))
            ?? throw new InputException("figure.no-version-hold", ("id", id), ("on", $"{on:yyyy-MM-dd}"),
                ("min", $"{known.Min(e => e.InForceFrom):yyyy-MM-dd}"));
    }

    private static bool Overlap(LawEntry a, LawEntry b) =>
        a.InForceFrom <= (b.Until ?? DateOnly.MaxValue) && b.InForceFrom <= (a.Until ?? DateOnly.MaxValue);
}
