using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>One rule of a market, as data. An id of the form <c>rule/case</c> is a case of a rule
/// with words or weight of its own.</summary>
public sealed record Rule(string Id, Severity Severity, string Message, string Fix, string Source, DateOnly InForceFrom,
    DateOnly LastChecked)
{
    /// <summary>The rule's name in findings: the id without its case.</summary>
    public string Name => Id.Split('/')[0];

    /// <summary>What to do on a page with fields, where <see cref="Fix"/> says it of the file; null where the two are the same.</summary>
    public string? PageFix { get; init; }

    /// <summary>The last day on which it holds; null while no end is known.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>Whether it holds on a day.</summary>
    public bool HoldsOn(DateOnly day) => InForceFrom <= day && (Until is null || day <= Until);

    /// <summary>Whether its source was read.</summary>
    public Basis Basis { get; init; } = Basis.Memory;

    /// <summary>The id of the text that was read (<see cref="LawTexts"/>); null where none was.</summary>
    public string? Read { get; init; }

    /// <summary>The product kinds that it applies to; empty where it applies to all.</summary>
    public ImmutableArray<string> Products { get; init; } = [];

    /// <summary>Whether it binds cosmetics alone, and no soap that is sold as soap (21 CFR 701.20).</summary>
    public bool BindsCosmeticsOnly { get; init; }

    /// <summary>What takes a product out of the rule; any one of them does. Empty where nothing does.</summary>
    public ImmutableArray<Exemption> Unless { get; init; } = [];

    /// <summary>The folder whose words in other languages it has (<see cref="LawWords"/>); null where it has none.</summary>
    internal string? WordsOf { get; init; }

    /// <summary>Whether it binds a product. One of a kind that is not known may be any.</summary>
    /// <param name="kind">The kind's id, or null.</param>
    /// <param name="isSoap">Whether it is sold as soap.</param>
    public bool Binds(string? kind, bool isSoap) =>
        (Products.IsEmpty || kind is null || Products.Contains(kind)) && !(BindsCosmeticsOnly && isSoap);

    /// <summary>A finding by this rule; the arguments fill the places {0}, {1}, ... of its sentences.</summary>
    public Finding Find(string where, params object[] arguments) => Find(where, Unless, arguments);

    /// <summary>The same where some of its exemptions are still open: the finding names them and asks.</summary>
    /// <param name="where">Where it was found.</param>
    /// <param name="open">The exemptions that nobody has ruled out.</param>
    /// <param name="arguments">What fills the places of its sentences.</param>
    public Finding Find(string where, ImmutableArray<Exemption> open, object[] arguments)
    {
        var (message, fix) = Told(LawWords.English, false, open, arguments);
        return new(Name, Severity, message, fix, Fill(Source, arguments), where, Basis)
        {
            Unless = [.. open.Select(e => e.Words)],
            Asks = [.. open.Select(e => e.Fact)],
            Told = new Telling((language, onPage) => Told(language, onPage, open, arguments)),
        };
    }

    // Where a language has no words for the rule, all of it is told in English: half a sentence of each helps nobody.
    private (string Message, string Fix) Told(string language, bool onPage, ImmutableArray<Exemption> open, object[] arguments)
    {
        // On a page each question stands by itself, with its answers.
        var asked = onPage ? [] : open;
        var words = WordsOf is null || language == LawWords.English ? null
            : LawWords.All($"{WordsOf}/words-{language}").GetValueOrDefault(Id);
        if (words is null)
            return (Fill(Message, arguments) + Exemption.Sentence(open, LawWords.English),
                Fill((onPage ? PageFix : null) ?? Fix, arguments) + Exemption.Question(asked, LawWords.English));
        object[] filled = [.. arguments.Select(a => a is ClaimSaid claim ? claim.In(language) : a)];
        return (Fill(words.OptionalText("message")!.Text, filled) + Exemption.Sentence(open, language),
            Fill((onPage ? words.OptionalText("page") : null)?.Text ?? words.OptionalText("fix")!.Text, filled)
                + Exemption.Question(asked, language));
    }

    private static string Fill(string sentence, object[] arguments) => string.Format(CultureInfo.InvariantCulture, sentence, arguments);
}
