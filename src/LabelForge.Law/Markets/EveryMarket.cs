using LabelForge.Checks;

namespace LabelForge.Markets;

/// <summary>What holds in every market of a book: the folder <c>every</c>.</summary>
public sealed class EveryMarket
{
    private readonly MarketFolder _folder;
    private readonly Lazy<ImmutableDictionary<string, Rule>> _rules;
    private readonly Lazy<LawBook> _figures;

    internal EveryMarket(MarketFolder folder)
    {
        _folder = folder;
        _rules = new(() => folder.Read("rules").SelectMany(f => RuleFile.Read(f.Root, folder.Id)).ToImmutableDictionary(r => r.Id));
        _figures = new(() =>
            LawBook.Of(folder.Read("figures").SelectMany(f => LawFile.Read(YamlRecord.List(f.Name, f.Root), folder.Id))));
    }

    /// <summary>The rules, by id.</summary>
    public ImmutableDictionary<string, Rule> Rules => _rules.Value;

    /// <summary>The figures: common practice, where a market's law sets none.</summary>
    public LawBook Figures => _figures.Value;

    /// <summary>The entries of its files whose names begin so.</summary>
    internal IEnumerable<YamlRecord> Records(string kind) => _folder.Read(kind).SelectMany(f => YamlRecord.List(f.Name, f.Root));
}
