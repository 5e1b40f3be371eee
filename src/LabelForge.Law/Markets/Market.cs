using System.Collections.Concurrent;
using LabelForge.Checks;
using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>
/// A market whose labelling law can be applied: a folder of data that holds its figures, rules, warnings and words, and says
/// how it names, counts and shows things.
/// </summary>
public sealed class Market
{
    private readonly MarketFolder folder;
    private readonly Lazy<LawBook> figures;
    private readonly Lazy<ImmutableDictionary<string, Rule>> own;
    private readonly Lazy<ImmutableDictionary<string, Rule>> rules;
    private readonly ConcurrentDictionary<DateOnly, RulesOf> days = new();

    private Market(MarketFolder folder, MarketBook book)
    {
        Book = book;
        this.folder = folder;
        Ways = MarketWays.Read(folder);
        Basis = Ways.RulesFrom is { } basis ? book.Find(basis).OrRefuse() : null;
        figures = new(() => LawBook.Of(folder.Read("figures").SelectMany(f => LawFile.Read(YamlRecord.List(f.Name, f.Root), folder.Id))));
        own = new(() => folder.Read("rules").SelectMany(f => RuleFile.Read(f.Root, folder.WordsOf)).ToImmutableDictionary(r => r.Id));
        rules = new(Together);
    }

    /// <summary>The market as it is written in files and on the command line: the folder's name.</summary>
    public string Id => folder.Id;

    /// <summary>The markets beside which it is known.</summary>
    public MarketBook Book { get; }

    /// <summary>Its name in a sentence: <c>the European Union</c>.</summary>
    public string Name => Ways.Name;

    /// <summary>How it names, counts and shows things.</summary>
    public MarketWays Ways { get; }

    /// <summary>The market by whose rules it is judged where it has none of its own; null where it stands by itself.</summary>
    public Market? Basis { get; }

    /// <summary>The rules that stand in its own folder, whenever they hold.</summary>
    public IEnumerable<Rule> OwnRules => own.Value.Values.OrderBy(r => r.Id, StringComparer.Ordinal);

    /// <summary>Every rule that binds here, whenever it holds: its own, those of its basis, and those of every market.</summary>
    public IEnumerable<Rule> Rules => rules.Value.Values.OrderBy(r => r.Id, StringComparer.Ordinal);

    /// <summary>Its figures, whenever they hold.</summary>
    public LawBook Figures => figures.Value;

    internal static Market Of(MarketFolder folder, MarketBook book) => new(folder, book);

    /// <summary>The rules and figures in force on a day.</summary>
    public RulesOf On(DateOnly day) => days.GetOrAdd(day, d => new RulesOf(this, d));

    /// <summary>The files of the folder whose names begin so, such as <c>warnings</c>; where it has none, those of its basis.</summary>
    internal IEnumerable<(string Name, Node Root)> Files(string kind) =>
        folder.Read(kind).ToArray() is { Length: > 0 } here ? here : Basis?.Files(kind) ?? [];

    /// <summary>A finding's source as this market cites it.</summary>
    public string Cite(string source) => Ways.Cited is not { } cited ? source
        : Regex.Replace(source, Regex.Escape(cited) + "(?! as retained)", Ways.CitedAs, RegexOptions.CultureInvariant);

    /// <summary>The entries of those files.</summary>
    public IEnumerable<YamlRecord> Records(string kind) => Files(kind).SelectMany(f => YamlRecord.List(f.Name, f.Root));

    internal Rule? RuleOf(string id) => rules.Value.GetValueOrDefault(id);

    /// <inheritdoc/>
    public override string ToString() => Id;

    // What a market has itself stands before what it takes over, and that before what holds everywhere.
    private ImmutableDictionary<string, Rule> Together()
    {
        var all = Book.Every.Rules.SetItems(Basis is null ? [] : Basis.rules.Value.Where(r => !Ways.Without.Contains(r.Key)));
        return all.SetItems(own.Value);
    }
}
