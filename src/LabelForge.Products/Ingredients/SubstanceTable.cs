namespace LabelForge.Ingredients;

/// <summary>A market's lists of prohibited, restricted and permitted substances, for the
/// substances that hand makers meet; an excerpt.</summary>
public sealed class SubstanceTable
{
    private static readonly string[] Heading =
        ["list", "ref", "substance", "ingredients", "names", "cas", "rule", "groups", "max", "as", "counted", "words", "from",
            "instrument", "export", "basis", "read", "markets"];

    private static readonly string[] ColourHeading = ["number", "ref", "export", "basis", "read"];

    private readonly ILookup<string, SubstanceRule> byName;
    private readonly ImmutableArray<(string Part, SubstanceRule Rule)> byPart;

    private SubstanceTable(ImmutableArray<SubstanceRule> all)
    {
        All = all;
        var names = all.SelectMany(r => r.Ingredients.Concat(r.Names).Select(n => (Name: n, Rule: r))).ToArray();
        byName = names.ToLookup(p => NameText.Plain(p.Name), p => p.Rule);
        byPart = [.. names.Where(p => p.Name.EndsWith('*'))];
    }

    /// <summary>Every row, in the order of the table.</summary>
    public ImmutableArray<SubstanceRule> All { get; }

    /// <summary>The rows that hold in a market of the table that it names; null where none is held for it.</summary>
    internal static SubstanceTable? Of(Market market, IngredientDictionary dictionary)
    {
        if (market.Ways.Substances is not { } name)
            return null;
        var rows = Read(DataTable.Embedded($"ingredients/tables/{name}.csv").Single(), dictionary).All
            .Where(r => r.Markets.IsEmpty || r.Markets.Contains(market.Id))
            .Select(r => r with { Form = r.Markets.IsEmpty ? market.Ways.SubstancesCited : market.Ways.OwnSubstancesCited });
        return new([.. rows])
        {
            Colours = [.. DataTable.Embedded($"ingredients/tables/{name}-colours.csv").SelectMany(t => t.Rows(ColourHeading))
                .Select(r => r.Value(ColourIndexNumber.Parse(r.Needed("number"))))],
        };
    }

    /// <summary>Every Colour Index number of the market's list of permitted colours; empty where it keeps none by number.</summary>
    public ImmutableHashSet<ColourIndexNumber> Colours { get; private init; } = [];

    /// <summary>The rows that touch an ingredient, in the order of the table.</summary>
    /// <param name="name">The name that was written; for what the dictionary does not know.</param>
    /// <param name="entry">The dictionary's entry, or null.</param>
    public IEnumerable<SubstanceRule> Of(string name, Ingredient? entry) => byName[NameText.Plain(entry?.Key ?? Numbered(name))]
        .Concat(entry is null ? byPart.Where(p => IsPart(p.Part, name)).Select(p => p.Rule) : []);

    // "C.I. 74260" and "CI 74260:1" (its lakes) are the colour of that number, as the annex writes it.
    private static string Numbered(string name) =>
        ColourIndexNumber.OnLabel(name) is { } number ? number.ToString() : name;

    // "*mercur*" stands for what has those letters in it, "CFC*" for what begins so.
    private static bool IsPart(string part, string name) => part.StartsWith('*')
        ? name.Contains(part.Trim('*'), StringComparison.OrdinalIgnoreCase)
        : name.StartsWith(part.TrimEnd('*'), StringComparison.OrdinalIgnoreCase);

    /// <summary>The names that the tables of all markets hold beside the dictionary's.</summary>
    internal static IEnumerable<string> NamesOfAll() => DataTable.Embedded("ingredients/tables/").Where(t => t.Has(Heading))
        .SelectMany(t => t.Rows(Heading)).SelectMany(r => r.Several("names")).Where(n => !n.Contains('*', StringComparison.Ordinal));

    /// <summary>Reads a table.</summary>
    /// <exception cref="InputException">A row cannot be used: a name that means nothing, an
    /// unknown word, a share that is none.</exception>
    public static SubstanceTable Read(DataTable table, IngredientDictionary dictionary) =>
        new([.. table.Rows(Heading).Select(row => Of(row, dictionary))]);

    private static SubstanceRule Of(DataRow row, IngredientDictionary dictionary)
    {
        var rule = new SubstanceRule(
            row.Needed("list"), row.Needed("ref"), row.Needed("substance"),
            [.. row.Several("ingredients")
                .Select(i => dictionary.HasKey(i)
                    ? i
                    : dictionary.Find(i)?.Key ?? throw row.Refuse("substances.not-dictionary-2", ("i", i)))],
            [.. row.Several("names")],
            [.. row.Several("cas").Select(c => row.Value(CasNumber.Parse(c)))],
            Verdict(row),
            [.. row.Several("groups")],
            Percent(row),
            row["as"].Length == 0 ? null : row["as"],
            Together(row),
            row["words"],
            Day(row),
            row.Needed("instrument"), row.Needed("export"), row.Basis().Basis, row.Basis().Read, [.. row.Several("markets")]);
        if (rule.Ingredients.IsEmpty && rule.Names.IsEmpty)
            throw row.Refuse("substances.touches-nothing");
        if (rule.Names.FirstOrDefault(n => dictionary.Find(n) is not null) is { } known)
            throw row.Refuse("substances.in-dictionary", ("known", known));
        if (rule.Groups.SelectMany(g => g.Split('+')).FirstOrDefault(g => !ProductGroup.IsKnown(g)) is { } group)
            throw row.Refuse("substances.not-a-group-products", ("group", group));
        if (rule.Verdict is SubstanceVerdict.AtMost or SubstanceVerdict.AtMostIf && rule.Most is null)
            throw row.Refuse("substances.sets-no-share");
        if (rule.Verdict is SubstanceVerdict.ProhibitedIf or SubstanceVerdict.AtMostIf or SubstanceVerdict.Condition
            or SubstanceVerdict.Warning or SubstanceVerdict.WarningIf && rule.Words.Length == 0)
            throw row.Refuse("substances.no-warning-words");
        return rule;
    }

    private static SubstanceVerdict Verdict(DataRow row)
    {
        var known = Enum.GetValues<SubstanceVerdict>().ToDictionary(v => v switch
        {
            SubstanceVerdict.ProhibitedIf => "prohibited-if",
            SubstanceVerdict.AtMost => "at-most",
            SubstanceVerdict.WarningIf => "warning-if",
            SubstanceVerdict.AtMostIf => "at-most-if",
            _ => v.ToString().ToLowerInvariant(),
        });
        return known.TryGetValue(row["rule"], out var verdict)
            ? verdict
            : throw row.Refuse("substances.not-3", ("rule", row["rule"]), ("list", string.Join(", ", known.Keys)));
    }

    private static Share? Percent(DataRow row) =>
        row["max"].Length == 0
            ? null
            : PlainFigure.Read(row["max"]) is > 0 and <= 100 and var percent
                ? Share.FromPercent(percent)
                : throw row.Refuse("substances.not-a-percent", ("max", row["max"]));

    private static bool Together(DataRow row) => row["counted"] switch
    {
        "together" => true,
        "" or "each" => false,
        var text => throw row.Refuse("substances.not-4", ("text", text)),
    };

    private static DateOnly? Day(DataRow row) =>
        row["from"].Length == 0
            ? null
            : IsoDay.Read(row["from"]) is { } day
                ? day
                : throw row.Refuse("substances.not-a-date", ("from", row["from"]));
}
