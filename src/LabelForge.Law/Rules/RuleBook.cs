using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Checks;

/// <summary>One rule of a market, as data. An id of the form <c>rule/case</c> is a case of a rule with words or weight of its own.</summary>
public sealed record Rule(string Id, Severity Severity, string Message, string Fix, string Source, DateOnly InForceFrom, DateOnly LastChecked)
{
    /// <summary>The rule's name in findings: the id without its case.</summary>
    public string Name => Id.Split('/')[0];

    /// <summary>The product kinds that it applies to; empty where it applies to all.</summary>
    public ImmutableArray<string> Products { get; init; } = [];

    /// <summary>A finding by this rule; the arguments fill the places {0}, {1}, ... of its sentences.</summary>
    public Finding Find(string where, params object[] arguments) => new(Name, Severity, Fill(Message, arguments), Fill(Fix, arguments), Fill(Source, arguments), where);

    private static string Fill(string sentence, object[] arguments) => string.Format(CultureInfo.InvariantCulture, sentence, arguments);
}

/// <summary>The rules of a market, shipped as data with their sources and dates.</summary>
public sealed class RuleBook
{
    private static readonly Lazy<RuleBook> UsBook = new(() => Load("us/rules"));
    private static readonly Lazy<RuleBook> DeclarationBook = new(() => Load("every/rules-declaration"));
    private static readonly Lazy<RuleBook> EuBook = new(() => Load("eu/rules"));
    private static readonly Lazy<RuleBook> CaBook = new(() => Load("ca/rules"));
    private static readonly Lazy<RuleBook> SubstanceBook = new(() => Load("every/rules-substances"));
    private static readonly Lazy<RuleBook> SoapBook = new(() => Load("every/rules-soap"));
    private readonly ImmutableDictionary<string, Rule> _rules;

    private RuleBook(ImmutableDictionary<string, Rule> rules) => _rules = rules;

    /// <summary>The rules of the United States.</summary>
    public static RuleBook Us => UsBook.Value;

    /// <summary>What is noticed while a declaration is made, in any market.</summary>
    public static RuleBook Declaration => DeclarationBook.Value;

    /// <summary>The rules of the European Union; they serve for the United Kingdom, whose differences are not checked.</summary>
    public static RuleBook Eu => EuBook.Value;

    /// <summary>The rules of Canada.</summary>
    public static RuleBook Ca => CaBook.Value;

    /// <summary>What is said of substances in a product, in any market.</summary>
    public static RuleBook Substances => SubstanceBook.Value;

    /// <summary>What is looked at where soap is made from oils and lye, whatever the market.</summary>
    public static RuleBook Soap => SoapBook.Value;

    /// <summary>A market's own rules.</summary>
    public static RuleBook For(Market market) => market switch
    {
        Market.Us => Us,
        Market.Ca => Ca,
        _ => Eu,
    };

    /// <summary>Every rule book, each with the markets it is for: what <c>labelforge rules</c> lists.</summary>
    public static ImmutableArray<(RuleBook Book, string Heading, ImmutableArray<Market> Markets)> Everything =>
    [
        (Us, "The United States", [Market.Us]),
        (Eu, "The European Union, and the United Kingdom with differences unchecked", [Market.Eu, Market.Uk]),
        (Ca, "Canada", [Market.Ca]),
        (Declaration, "Any market: making the ingredient list", [Market.Us, Market.Eu, Market.Uk, Market.Ca]),
        (Substances, "Substances and keeping", [Market.Us, Market.Eu, Market.Uk, Market.Ca]),
        (Soap, "Any market: soap made from oils", [Market.Us, Market.Eu, Market.Uk, Market.Ca]),
    ];

    /// <summary>Every rule, by id.</summary>
    public IEnumerable<Rule> All => _rules.Values.OrderBy(r => r.Id, StringComparer.Ordinal);

    /// <summary>The rule of an id.</summary>
    /// <exception cref="KeyNotFoundException">There is none.</exception>
    public Rule this[string id] => _rules[id];

    /// <summary>Reads rules; refuses any without a source or a date.</summary>
    /// <exception cref="InputException">A rule is not whole.</exception>
    public static RuleBook Read(MapNode file)
    {
        return new RuleBook(ReadRules(file).ToImmutableDictionary(r => r.Id));
    }

    private static IEnumerable<Rule> ReadRules(MapNode file)
    {
        file.OnlyKeys("A rule file", "market", "rules");
        return file.Items("rules").Select(n => ReadRule(n as MapNode ?? throw n.Refuse("This is not a rule.", "Write its keys and values.")));
    }

    private static Rule ReadRule(MapNode map)
    {
        map.OnlyKeys("A rule", "id", "severity", "message", "fix", "source", "from", "checked", "products");
        var severity = map.Required("severity", "must");
        return new Rule(
            map.Required("id", "lot.missing").Text,
            Enum.TryParse<Severity>(severity.Text, ignoreCase: true, out var grave) ? grave : throw severity.Refuse($"\"{severity.Text}\" is not a severity.", "Write must, should or note."),
            map.Required("message", "what is wrong").Text,
            map.Required("fix", "what to do").Text,
            map.Required("source", "21 CFR 701.3(a)").Text,
            Date(map.Required("from", "1974-03-15")),
            Date(map.Required("checked", "2026-11-25")))
        {
            Products = [.. map.Texts("products").Select(t => t.Text)],
        };
    }

    private static DateOnly Date(TextNode node) => DateOnly.TryParseExact(node.Text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
        ? date
        : throw node.Refuse($"\"{node.Text}\" is not a date.", "Write year, month and day: 2026-11-25");

    // A folder's rules may stand in several files: rules.yaml, rules-label.yaml.
    private static RuleBook Load(string file)
    {
        var assembly = typeof(RuleBook).Assembly;
        var names = assembly.GetManifestResourceNames()
            .Where(n => n.StartsWith($"markets/{file}", StringComparison.Ordinal));
        return new RuleBook(names.SelectMany(name =>
        {
            using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
            return ReadRules(YamlFile.ReadText(reader.ReadToEnd(), name)).ToArray();
        }).ToImmutableDictionary(r => r.Id));
    }
}
