using LabelForge.Checks.Reading;

namespace LabelForge.Checks.Words;

/// <summary>
/// How a language turns the words of a sentence: what denies and how far, what warns, what is a figure of speech, what is a
/// name. The words stand in <c>Markets/Words/grammar.yaml</c>, which says what each list is for.
/// </summary>
internal sealed class SentenceGrammar
{
    private static readonly Lazy<ImmutableArray<SentenceGrammar>> Lazy =
        new(() => [.. YamlRecord.Embedded("markets/Words/grammar.yaml").Select(r => new SentenceGrammar(r))]);

    private readonly Lazy<Regex> small;
    private readonly Lazy<Regex> not;
    private readonly Lazy<Regex> notBefore;
    private readonly Lazy<Regex> notNear;
    private readonly Lazy<Regex> notAfter;
    private readonly Lazy<Regex> but;
    private readonly Lazy<Regex> or;
    private readonly Lazy<Regex> warnsFirst;
    private readonly Lazy<Regex> warns;
    private readonly Lazy<Regex> warnsNot;
    private readonly Lazy<Regex> figure;
    private readonly Lazy<Regex> placeAfter;
    private readonly Lazy<Regex> placeBefore;
    private readonly Lazy<Regex> houseAfter;
    private readonly Lazy<Regex> houseBefore;
    private readonly Lazy<Regex> answers;
    private readonly Lazy<Regex> givesBefore;
    private readonly Lazy<Regex> givesAfter;
    private readonly Lazy<Regex> thing;
    private readonly Lazy<Regex> sensed;
    private readonly Lazy<Regex> scent;
    private readonly Lazy<Regex> notRightAfter;
    private readonly Lazy<Regex> since;
    private readonly Lazy<Regex> names;
    private readonly Lazy<Regex> institutionAfter;
    private readonly Lazy<Regex> institutionBefore;

    private SentenceGrammar(YamlRecord record)
    {
        record.OnlyKeys("id", "small", "not", "not near", "not after", "only", "but", "or", "warns first", "warns", "warns not", "figures",
            "places", "houses", "answers", "gives", "lacks", "lacking", "added", "and", "times", "presents", "senses", "scents",
            "things", "since", "names", "institutions");
        Language = record.Text("id", "en");
        string List(string key) =>
        $"(?:{string.Join('|', record.Texts(key, "[not]").OrderByDescending(w => w.Length).Select(w => PhrasePattern.Body(FoldedText.KeepingCase(w))))})";
        var only = $@"(?![\s-]+{List("only")}(?!\p{{L}}))";
        small = new(() => Words(List("small")));
        not = new(() => Words(List("not") + @"(?![\p{L}0-9])" + only));
        notBefore = new(() => At($@"(?<![\p{{L}}0-9]){List("not")}[\s-]+(?:\p{{L}}{{1,2}}\s+)?$"));
        notNear = new(() => At($@"(?<![\p{{L}}0-9]){List("not near")}(?:[\s-]+[\p{{L}}'%0-9]+){{0,2}}[\s-]+(?:\p{{L}}')?$"));
        notAfter = new(() => At($@"^[\s-]+(?:\p{{L}}+\s+)?{List("not after")}(?!\p{{L}}){only}"));
        notRightAfter = new(() => At($@"^[\s-]+{List("not after")}(?!\p{{L}}){only}"));
        since = new(() => Words(List("since")));
        names = new(() => Words(List("names")));
        institutionAfter = new(() => At($@"^[\s-]+{List("institutions")}(?!\p{{L}})"));
        institutionBefore = new(() => At($@"(?<!\p{{L}}){List("institutions")}(?:\s+|')$"));
        but = new(() => Words(List("but")));
        or = new(() => Words(List("or")));
        warnsFirst = new(() => At($@"^\W*{List("warns first")}(?!\p{{L}})"));
        warns = new(() => Words(List("warns")));
        warnsNot = new(() => Words(List("warns not")));
        var word = $@"(?!{List("times")}(?!\p{{L}}))\p{{L}}+";
        figure = new(() => At(
            $@"^(?:(?:\W+{word}){{0,2}}?\W+{List("figures")}|(?:\s+[\p{{L}}']+){{0,5}}?\s+{List("presents")})(?!\p{{L}})"));
        thing = new(() => Words(List("things")));
        sensed = new(() => At($@"(?<!\p{{L}}){List("senses")}(?:\s+(?!{List("and")}(?!\p{{L}})){List("small")}){{0,2}}(?:\s+|')$"));
        scent = new(() => At($@"^[\s,:]+{List("scents")}(?!\p{{L}})"));
        placeAfter = new(() => At($@"^[\s-]+(?=\p{{Lu}}){List("places")}(?!\p{{L}})"));
        placeBefore = new(() => At($@"(?<!\p{{L}}){List("places")}\s+(?:\p{{Ll}}+['\s]\s*){{0,2}}$"));
        houseAfter = new(() => At($@"^(?:\s+\p{{Lu}}[\p{{L}}']*){{0,2}}\s+(?=\p{{Lu}}){List("houses")}(?!\p{{L}})"));
        houseBefore = new(() => At($@"(?<!\p{{L}})(?=\p{{Lu}}){List("houses")}(?:\s+[\p{{L}}']+){{0,3}}?\s+$"));
        answers = new(() => At($@"^\W*{List("answers")}(?!\p{{L}})"));
        givesBefore = new(() => At($@"(?<!\p{{L}}){List("gives")}(?:[\s,-]+[\p{{L}}']+){{0,6}}?(?:[\s,-]+|')$"));
        givesAfter = new(() => At($@"^(?:[\s,-]+[\p{{L}}']+){{0,3}}?[\s,-]+{List("gives")}(?!\p{{L}})"));
        Lacks = [.. record.Texts("lacks", "[without]").Select(FoldedText.KeepingCase)];
        Lacking = record.Has("lacking") ? [.. record.Texts("lacking", "[free]").Select(FoldedText.KeepingCase)] : [];
        Added = [.. record.Texts("added", "[any]").Select(FoldedText.KeepingCase)];
        And = [.. record.Texts("and", "[and]").Select(FoldedText.KeepingCase)];
    }

    /// <summary>The grammars that ship.</summary>
    public static ImmutableArray<SentenceGrammar> All => Lazy.Value;

    /// <summary>The language's code, such as <c>en</c>.</summary>
    public string Language { get; }

    /// <summary>Words by which the language is known.</summary>
    public Regex Small => small.Value;

    /// <summary>What denies the words after it.</summary>
    public Regex Not => not.Value;

    /// <summary>What denies the very next word, an article between them or none; held against the text before it.</summary>
    public Regex NotBefore => notBefore.Value;

    /// <summary>What denies the next words; held against the text before a word.</summary>
    public Regex NotNear => notNear.Value;

    /// <summary>What denies the word before it; held against the text after that.</summary>
    public Regex NotAfter => notAfter.Value;

    /// <summary>What denies the act right before it; held against the text after that, in what is put together of several words.</summary>
    public Regex NotRightAfter => notRightAfter.Value;

    /// <summary>What tells from when on a thing is so: who has it no more since then, claims.</summary>
    public Regex Since => since.Value;

    /// <summary>What people built or remember for what ails; held against the text after that.</summary>
    public Regex InstitutionAfter => institutionAfter.Value;

    /// <summary>The same, held against the text before it.</summary>
    public Regex InstitutionBefore => institutionBefore.Value;

    /// <summary>What tells of a name given.</summary>
    public Regex Names => names.Value;

    /// <summary>What ends a denial's reach.</summary>
    public Regex But => but.Value;

    /// <summary>What keeps it up over commas.</summary>
    public Regex Or => or.Value;

    /// <summary>What begins a warning.</summary>
    public Regex WarnsFirst => warnsFirst.Value;

    /// <summary>What stands in warnings.</summary>
    public Regex Warns => warns.Value;

    /// <summary>What stands in no warning.</summary>
    public Regex WarnsNot => warnsNot.Value;

    /// <summary>What no product heals; held against the text after a word.</summary>
    public Regex Figure => figure.Value;

    /// <summary>What makes the capitalised word before it a place's name.</summary>
    public Regex PlaceAfter => placeAfter.Value;

    /// <summary>What makes the capitalised word after it a place's name.</summary>
    public Regex PlaceBefore => placeBefore.Value;

    /// <summary>What makes the capitalised words before it a business's name.</summary>
    public Regex HouseAfter => houseAfter.Value;

    /// <summary>What makes the capitalised words after it a business's name.</summary>
    public Regex HouseBefore => houseBefore.Value;

    /// <summary>What begins an answer that denies.</summary>
    public Regex Answers => answers.Value;

    /// <summary>Research or charity, named before a word.</summary>
    public Regex GivesBefore => givesBefore.Value;

    /// <summary>Research or charity, named after a word.</summary>
    public Regex GivesAfter => givesAfter.Value;

    /// <summary>What a story wounds and heals.</summary>
    public Regex Thing => thing.Value;

    /// <summary>What tells that a thing smells or is called like the word after it; held against the text before that.</summary>
    public Regex Sensed => sensed.Value;

    /// <summary>What tells that the word before it is a scent or a name; held against the text after that.</summary>
    public Regex Scent => scent.Value;

    /// <summary>What denies an ingredient named after it.</summary>
    public IReadOnlyList<string> Lacks { get; }

    /// <summary>What denies an ingredient named before it.</summary>
    public IReadOnlyList<string> Lacking { get; }

    /// <summary>Words of no weight between the two.</summary>
    public IReadOnlyList<string> Added { get; }

    /// <summary>What joins the ingredients denied.</summary>
    public IReadOnlyList<string> And { get; }

    private static Regex Words(string list) => At($@"(?<![\p{{L}}0-9]){list}(?![\p{{L}}0-9])");

    // The letters that show a name by their capital are told apart, all others are not.
    private static Regex At(string pattern) => new(
        pattern.Contains(@"\p{Lu}", StringComparison.Ordinal) || pattern.Contains(@"\p{Ll}", StringComparison.Ordinal)
            ? Cased(pattern)
            : "(?i:" + pattern + ")",
        RegexOptions.CultureInvariant, TimeSpan.FromSeconds(5));

    private static string Cased(string pattern) =>
        Regex.Replace(pattern, @"\\p\{L[ul]\}", m => $"(?-i:{m.Value})").Insert(0, "(?i:") + ")";
}
