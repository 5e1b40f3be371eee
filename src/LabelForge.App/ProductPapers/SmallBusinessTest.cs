using LabelForge.Print.Documents;

namespace LabelForge.ProductPapers;

/// <summary>What came of a test for small businesses.</summary>
public enum SmallBusiness
{
    /// <summary>Not all of it is answered, and what is does not decide it.</summary>
    Open,

    /// <summary>By the answers, it is exempt.</summary>
    Exempt,

    /// <summary>By the answers, it is not.</summary>
    NotExempt,
}

/// <summary>Whether a business is exempt from registration and listing as a small one: sales and
/// four questions (FD&amp;C Act, section 612).</summary>
/// <param name="Outcome">What came of it.</param>
/// <param name="Why">Why, in a sentence.</param>
/// <param name="Average">The average of the sales; null where the years are not all written.</param>
public sealed record SmallBusinessTest(SmallBusiness Outcome, string Why, decimal? Average)
{
    /// <summary>What takes the exemption away where the business makes any product that does it
    /// (section 612(b)): the name in papers.yaml, and the question.</summary>
    public static ImmutableArray<(string Key, string Question)> Asked { get; } =
    [
        ("touches the eye",
            "Does any product regularly come into contact with the mucous membrane of the eye, as it is customarily used?"),
        ("is injected", "Is any product injected?"),
        ("for internal use", "Is any product for internal use?"),
        ("lasts over 24 hours",
            "Does any product alter the appearance for more than 24 hours, so that its removal by the consumer is no part of its "
                + "customary use?"),
    ];

    /// <summary>Makes the test.</summary>
    /// <param name="rules">The law of the day, which has the figures.</param>
    public static SmallBusinessTest Of(PaperAnswers answers, RulesOf rules)
    {
        var (line, years) = ((LawFigure)rules.Figure("listing.small-business-sales").Value,
            (int)((LawFigure)rules.Figure("listing.small-business-years").Value).Figure);
        int[] wanted = [.. Enumerable.Range(1, years).Select(back => rules.Day.Year - back)];
        decimal? average = wanted.All(answers.Sales.ContainsKey) ? wanted.Sum(y => answers.Sales[y]) / years : null;
        if (Asked.Where(a => answers.Makes.GetValueOrDefault(a.Key)).ToArray() is { Length: > 0 } barred)
            return new(SmallBusiness.NotExempt,
                $"A product {string.Join(", and one ", barred.Select(b => b.Key))}: then sales do not matter (section 612(b)).", average);
        if (average >= line.Figure)
            return new(SmallBusiness.NotExempt,
                Invariant($"The average of {average:0.00} is not under {line.Figure:0} {line.Unit}. The figure is adjusted for inflation and the adjusted one is not held here: where you are near it, look it up."), average);
        string[] open = [.. average is null
            ? [$"sales of {string.Join(", ", wanted.Where(y => !answers.Sales.ContainsKey(y)).Order())}"]
            : (string[])[], .. Asked.Where(a => !answers.Makes.ContainsKey(a.Key)).Select(a => a.Key)];
        return open.Length > 0
            ? new(SmallBusiness.Open, $"Open: {string.Join("; ", open)}.", average)
            : new(SmallBusiness.Exempt,
                Invariant($"The average of {average:0.00} is under {line.Figure:0} {line.Unit}, and no product is of a kind that section 612(b) names: by these answers sections 606 and 607 (registration and listing) do not bind the business."), average);
    }

    /// <summary>The test as a part of a paper, each question with its answer.</summary>
    internal static PaperSection Section(PaperItem item, PaperCase of)
    {
        var test = Of(of.Answers, of.Rules);
        var years = (int)((LawFigure)of.Rules.Figure("listing.small-business-years").Value).Figure;
        return new PaperSection(item.Id, item.What, item.At)
        {
            Facts =
            [
                .. Enumerable.Range(1, years).Select(back => of.On.Year - back).Order()
                    .Select(year => of.Answers.Sales.TryGetValue(year, out var sum)
                    ? PaperFact.Of($"sales-{year}", $"Gross sales of cosmetics in {of.Market.Name}, {year}",
                        Invariant($"{sum:0.00}"), PaperAnswers.FileName, sum)
                    : PaperFact.Lacking($"sales-{year}", $"Gross sales of cosmetics in {of.Market.Name}, {year}",
                        $"{PaperAnswers.FileName}: sales of cosmetics: {{ {year}: 8200.00 }}; 0 for a year without sales.")),
                .. Asked.Select(a => of.Answers.Makes.TryGetValue(a.Key, out var so)
                    ? PaperFact.Of(a.Key.Replace(' ', '-'), a.Question, so ? "yes" : "no", PaperAnswers.FileName, so)
                    : PaperFact.Lacking(a.Key.Replace(' ', '-'), a.Question, $"{PaperAnswers.FileName}: we make: {{ {a.Key}: no }}")),
                PaperFact.Of("outcome", "By these answers", test.Why, of.Rules.Figure("listing.small-business-sales").Citation,
                    test.Outcome switch { SmallBusiness.Exempt => "exempt", SmallBusiness.NotExempt => "not exempt", _ => "open" }),
            ],
        };
    }
}
