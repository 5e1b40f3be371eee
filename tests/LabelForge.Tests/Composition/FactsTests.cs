using LabelForge.Composition;
using LabelForge.Composition.Asking;
using LabelForge.Formulas;
using LabelForge.Ingredients.Levels;
using LabelForge.Measures;
using static LabelForge.Tests.Composition.Lists;

namespace LabelForge.Tests.Composition;

/// <summary>The fewest facts that settle most.</summary>
public class FactsTests
{
    [Fact]
    public void Nothing_is_asked_where_the_order_is_proved()
    {
        var asked = Facts.Best([Prover.Prove([Part("Base", 0.9m, ListedOrder.Label, "A: 80 %", "B: 19 %", "C: 1 %"), Part("Oil", 0.1m, ListedOrder.Label, "D")])]);

        Assert.Equal(0, asked.Open);
        Assert.Empty(asked.Facts);
    }

    [Fact]
    public void The_one_figure_that_settles_a_pair_is_asked_for()
    {
        // B may be 5 to 15 % of the base, so 4.5 to 13.5 % of the product, against 10 % of D.
        var asked = Facts.Best([Prover.Prove([Part("Base", 0.9m, ListedOrder.Label, "A", "B: 5-15 %"), Part("Oil", 0.1m, ListedOrder.Label, "D")])]);

        var fact = Assert.Single(asked.Facts);
        Assert.Equal("Base", fact.Material);
        Assert.Equal(1, fact.Settles);
        Assert.Equal(1, asked.Open);
    }

    [Fact]
    public void The_same_products_are_asked_the_same_questions()
    {
        var proof = Prover.Prove([Part("Base", 0.9m, ListedOrder.Label, "A", "B", "C", "D", "E"), Part("Oil", 0.07m, ListedOrder.Label, "F"), Part("Scent", 0.03m, ListedOrder.Label, "G")]);

        Assert.Equal(Facts.Best([proof]).Facts.Select(f => (f.Material, f.Constituent, f.Line)), Facts.Best([proof]).Facts.Select(f => (f.Material, f.Constituent, f.Line)));
        Assert.NotEmpty(Facts.Best([proof]).Facts);
    }

    [Fact]
    public void At_most_three_are_asked_about_a_material_and_only_where_somebody_can_be_asked()
    {
        var proof = Prover.Prove([Part("Base", 0.8m, ListedOrder.Label, "A", "B", "C", "D", "E", "F", "G", "H"), Part("Oil", 0.1m, ListedOrder.Label, "I", "J", "K"), Part("Scent", 0.1m, ListedOrder.Label, "L")]);
        var asked = Facts.Best([proof]);

        Assert.All(asked.Facts.GroupBy(f => f.Material), g => Assert.InRange(g.Count(), 1, Facts.MostForOneSupplier));
        Assert.DoesNotContain(Facts.Best([proof], m => m == "Base" ? null : m).Facts, f => f.Material == "Base");
    }

    [Fact]
    public void One_supplier_of_two_materials_is_asked_three_questions_in_all()
    {
        var proof = Prover.Prove([Part("Base", 0.4m, ListedOrder.Label, "A", "B", "C", "D", "E", "F"), Part("Other base", 0.4m, ListedOrder.Label, "G", "H", "I", "J", "K"), Part("Oil", 0.2m, ListedOrder.Label, "L")]);

        Assert.InRange(Facts.Best([proof], _ => "one supplier").Facts.Length, 1, Facts.MostForOneSupplier);
        Assert.True(Facts.Best([proof]).Facts.Length > Facts.MostForOneSupplier);
    }

    [Fact]
    public void A_walk_stays_in_its_set()
    {
        var random = new Random(3);
        foreach (var part in Enumerable.Range(0, 60).SelectMany(_ => RandomProducts.Of(random)))
        {
            foreach (var set in new MaterialModel(part, 0.01m).Pieces)
            {
                var start = LeastEntropy.Over([set], [.. part.Constituents.Select(_ => random.NextDouble() + 1e-6)]);
                var at = Walk.From(set, start, random, 200);
                Assert.Equal(1, at.Sum(), 1e-9);
                Assert.All(at.Select((s, c) => (s, c)), x => Assert.InRange(x.s, (double)set.LeastShares[x.c] - 1e-9, (double)set.GreatestShares[x.c] + 1e-9));
                Assert.All(set.Chain.Zip(set.Chain.Skip(1)), pair => Assert.True(at[pair.First] >= at[pair.Second] - 1e-9));
            }
        }
    }

    [Fact]
    public void On_published_formulas_three_questions_with_true_answers_settle_nine_of_ten_open_pairs()
    {
        var (open, left) = (0, 0);
        foreach (var formula in PublishedFormula.All)
        {
            string[] names = [.. formula.Ingredients.Select(i => i.Name)];
            var usual = UsualLevels.Shipped.Of(names, UsualLevels.Shipped.FormOf(formula.Product), true);
            var bare = new MaterialPart("Base", 0.955m, ListedOrder.Label, [.. names.Select((n, at) => new Constituent(n, ShareRange.Unknown, false) { Usual = new UsualShare(usual[at], []) })]);
            MaterialPart[] rest = [Part("Oil", 0.03m, ListedOrder.Label, "Maker's oil"), Part("Scent", 0.015m, ListedOrder.Label, "Maker's scent")];
            var before = Prover.Prove([bare, .. rest]);
            var facts = Facts.Best([before]).Facts;
            Assert.InRange(facts.Length, 0, Facts.MostForOneSupplier);
            var truth = formula.Ingredients.ToDictionary(i => i.Name, i => (decimal)(i.Percent / formula.Ingredients.Sum(x => x.Percent)));
            var answered = facts.Aggregate(bare, (part, fact) => Answered(part, fact, truth));
            open += before.Unproven.Length;
            left += Prover.Prove([answered, .. rest]).Unproven.Length;
        }
        Assert.True(open > 300);
        Assert.True(left <= 0.1 * open, $"{left} of {open} are open still");
    }

    private static MaterialPart Answered(MaterialPart part, SupplierFact fact, Dictionary<string, decimal> truth) => part with
    {
        Constituents = [.. part.Constituents.Select(c => c with
        {
            Share = fact.Constituent is { } name
                ? c.Name == name ? Range(truth[name] - 1e-6m, truth[name] + 1e-6m) : c.Share
                : truth[c.Name] <= fact.Line!.Value.AtMost ? Range(c.Share.Low.Fraction, Math.Min(c.Share.High.Fraction, fact.Line.Value.AtMost))
                : Range(Math.Max(c.Share.Low.Fraction, Math.Min(truth[c.Name], fact.Line.Value.AtLeast)), c.Share.High.Fraction),
        })],
    };

    private static ShareRange Range(decimal low, decimal high) => new(Share.FromFraction(Math.Clamp(low, 0, 1)), Share.FromFraction(Math.Clamp(high, 0, 1)));
}
