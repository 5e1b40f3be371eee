using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Markets;

public class LawBookTests
{
    private const string Whole = """
        - id: letters.height
          what: Least height of letters
          value: 0.0625 in
          citation: 21 CFR 701.3(b)
          in force from: 1974-03-15
          published: 1974-03-15
          checked: 2026-11-25
          basis: memory
        """;

    [Theory]
    [InlineData("what")]
    [InlineData("value")]
    [InlineData("citation")]
    [InlineData("in force from")]
    [InlineData("published")]
    [InlineData("checked")]
    [InlineData("basis")]
    public void An_entry_that_lacks_its_citation_or_a_date_is_not_loaded(string key)
    {
        Assert.Single(LawBook.Read("law.yaml", Whole).Entries);
        var gap = string.Join('\n', Whole.Split('\n').Where(l => !l.TrimStart().StartsWith(key + ":", StringComparison.Ordinal)));
        var refused = Assert.Throws<InputException>(() => LawBook.Read("law.yaml", gap));
        Assert.Equal(("law.yaml", 1), (refused.Problem.File, refused.Problem.Line));
        Assert.Contains("letters.height", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("citation: 21 CFR 701.3(b)", "citation:", 4)]
    [InlineData("1974-03-15\n  published", "15 March 1974\n  published", 5)]
    [InlineData("0.0625 in", "0.0625", 3)]
    [InlineData("0.0625 in", "a sixteenth in", 3)]
    [InlineData("basis: memory", "basis: hearsay", 8)]
    [InlineData("basis: memory", "basis: text", 8)]
    [InlineData("basis: memory", "basis: memory\n  read: us-cfr21-701", 9)]
    [InlineData("basis: memory", "basis: text\n  read: nobody-read-this", 9)]
    [InlineData("basis: memory", "basis: memory\n  untill: 2030-01-01", 9)]
    [InlineData("basis: memory", "basis: memory\n  until: 1970-01-01", 9)]
    public void A_malformed_entry_is_refused_at_its_line(string from, string to, int line)
    {
        var refused = Assert.Throws<InputException>(() => LawBook.Read("law.yaml", Whole.Replace(from, to, StringComparison.Ordinal)));
        Assert.Equal(line, refused.Problem.Line);
        Assert.NotEmpty(refused.Problem.Write);
    }

    [Fact]
    public void Two_versions_in_force_on_one_day_are_refused() =>
        Assert.Contains("two versions", Assert.Throws<InputException>(() => LawBook.Read("law.yaml", Whole + "\n" + Whole)).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("{ up to: 5, is: 1 }, { up to: 5, is: 2 }, { is: 3 }")]
    [InlineData("{ up to: 5, is: 1 }, { up to: 9, is: 2 }")]
    [InlineData("{ is: 1 }, { up to: 9, is: 2 }")]
    public void A_table_whose_bounds_do_not_rise_or_that_ends_is_refused(string steps) =>
        Assert.Throws<InputException>(() => LawBook.Read("law.yaml",
            Whole.Replace("value: 0.0625 in", $"of: sq in\n  gives: in\n  steps: [{steps}]", StringComparison.Ordinal)));

    /// <summary>
    /// Regulation (EU) 2023/1545, footnotes: the old list serves until 31 July 2026 for what is placed on the market and until
    /// 31 July 2028 for what is made available, those days included; the UK keeps the shorter list.
    /// </summary>
    [Theory]
    [InlineData("eu", "allergens.list-new-products", "2026-07-31", "short")]
    [InlineData("eu", "allergens.list-new-products", "2026-08-01", "extended")]
    [InlineData("eu", "allergens.list-on-market", "2028-07-31", "short")]
    [InlineData("eu", "allergens.list-on-market", "2028-08-01", "extended")]
    [InlineData("ca", "allergens.list-new-products", "2026-04-11", "none")]
    [InlineData("ca", "allergens.list-new-products", "2026-04-12", "short")]
    [InlineData("ca", "allergens.list-new-products", "2026-07-31", "short")]
    [InlineData("ca", "allergens.list-new-products", "2026-08-01", "extended")]
    [InlineData("uk", "allergens.list-new-products", "2026-07-31", "short")]
    public void Old_and_new_allergen_lists_answer_on_both_sides_of_their_date(string market, string id, string on, string list) =>
        Assert.Equal(list, Market.Named(market).On(DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture)).Figure(id).Word);

    [Fact]
    public void A_day_before_any_known_law_is_refused_and_so_is_a_figure_that_the_market_lacks()
    {
        var refused = Assert.Throws<InputException>(() => Market.Us.On(new DateOnly(1975, 3, 2)).Figure("warnings.letter-height"));
        Assert.Contains("1975-03-03", refused.Message, StringComparison.Ordinal);
        var lacks = Assert.Throws<InputException>(() => Market.Us.On(new DateOnly(2026, 1, 1)).Figure("no.such.provision"));
        Assert.Contains("no.such.provision", lacks.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us", "ingredients.letter-height", 1.5875)]       // 1/16 in, 21 CFR 701.3(b)
    [InlineData("us", "ingredients.letter-height-small", 0.79375)] // 1/32 in, 21 CFR 701.3(p)
    [InlineData("us", "warnings.letter-height", 1.5875)]          // 1/16 in, 21 CFR 740.2(a)
    public void Letter_heights_are_read_as_lengths(string market, string id, double millimetres) =>
        Assert.Equal((decimal)millimetres, Market.Named(market).On(new DateOnly(2026, 11, 25)).Figure(id).Length.Millimetres);

    [Theory]
    [InlineData("us", "net-quantity.bottom-of-panel", 30, "21 CFR 701.13(f)")]
    [InlineData("us", "net-quantity.bottom-of-panel-exempt", 5, "21 CFR 701.13(f)(1)")]
    [InlineData("us", "net-quantity.letter-proportion", 3, "21 CFR 701.13(h)(1)")]
    [InlineData("us", "ingredients.one-percent-line", 1, "21 CFR 701.3(f)(2)")]
    [InlineData("us", "ingredients.small-package-below", 12, "21 CFR 701.3(p)")]
    public void Figures_come_with_the_paragraph_that_sets_them(string market, string id, int figure, string citation)
    {
        var entry = Market.Named(market).On(new DateOnly(2026, 11, 25)).Figure(id);
        Assert.Equal((figure, citation), (entry.Figure, entry.Citation));
    }

    [Fact]
    public void Every_shipped_entry_was_published_before_it_was_checked() =>
        Assert.All(MarketBook.Shipped.All.SelectMany(m => m.Figures.Entries), e => Assert.True(e.Published <= e.LastChecked, e.Id));
}
