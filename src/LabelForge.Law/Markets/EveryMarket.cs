using LabelForge.Checks;

namespace LabelForge.Markets;

/// <summary>What holds in every market: the folder <c>every</c>.</summary>
public static class EveryMarket
{
    private static readonly MarketFolder Folder = MarketFolder.Embedded("every");

    private static readonly Lazy<ImmutableDictionary<string, Rule>> LazyRules = new(() =>
        Folder.Read("rules").SelectMany(f => RuleFile.Read(f.Root, Folder.Id)).ToImmutableDictionary(r => r.Id));

    private static readonly Lazy<LawBook> LazyFigures = new(() =>
        LawBook.Of(Folder.Read("figures").SelectMany(f => LawFile.Read(YamlRecord.List(f.Name, f.Root), Folder.Id))));

    /// <summary>The rules, by id.</summary>
    public static ImmutableDictionary<string, Rule> Rules => LazyRules.Value;

    /// <summary>The figures: common practice, where a market's law sets none.</summary>
    public static LawBook Figures => LazyFigures.Value;

    /// <summary>The entries of its files whose names begin so.</summary>
    internal static IEnumerable<YamlRecord> Records(string kind) => Folder.Read(kind).SelectMany(f => YamlRecord.List(f.Name, f.Root));
}
