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
        var asked =
            Facts.Best(
                [Prover.Prove([Part("Base", 0.9m, ListedOrder.Label, "A: 80 %", "B: 19 %", "C: 1 %"),
                    Part("Oil", 0.1m, ListedOrder.Label, "D")])]);

        Assert.Equal(0, asked.Open);
        Assert.Empty(asked.Facts);
    }

    [Fact]
    public void The_one_figure_that_settles_a_pair_is_asked_for()
    {
        // B may be 5 to 15 % of the base, so 4.5 to 13.5 % of the product, against 10 % of D.
        var asked =
            Facts.Best(
                [Prover.Prove([Part("Base", 0.9m, ListedOrder.Label, "A", "B: 5-15 %"), Part("Oil", 0.1m, ListedOrder.Label, "D")])]);

        var fact = Assert.Single(asked.Facts);
        Assert.Equal("Base", fact.Material);
        Assert.Equal(1, fact.Settles);
        Assert.Equal(1, asked.Open);
    }

    [Fact]
    public void The_same_products_are_asked_the_same_questions()
    {
        var proof = Prover.Prove([Part("Base", 0.9m, ListedOrder.Label, "A", "B", "C", "D", "E"),
            Part("Oil", 0.07m, ListedOrder.Label, "F"), Part("Scent", 0.03m, ListedOrder.Label, "G")]);

        Assert.Equal(Facts.Best([proof]).Facts.Select(f => (f.Material, f.Constituent, f.Line)),
            Facts.Best([proof]).Facts.Select(f => (f.Material, f.Constituent, f.Line)));
        Assert.NotEmpty(Facts.Best([proof]).Facts);
    }

    [Fact]
    public void At_most_three_are_asked_about_a_material_and_only_where_somebody_can_be_asked()
    {
        var proof = Prover.Prove([Part("Base", 0.8m, ListedOrder.Label, "A", "B", "C", "D", "E", "F", "G", "H"),
            Part("Oil", 0.1m, ListedOrder.Label, "I", "J", "K"), Part("Scent", 0.1m, ListedOrder.Label, "L")]);
        var asked = Facts.Best([proof]);

        Assert.All(asked.Facts.GroupBy(f => f.Material), g => Assert.InRange(g.Count(), 1, Facts.MostForOneSupplier));
        Assert.DoesNotContain(Facts.Best([proof], m => m == "Base" ? null : m).Facts, f => f.Material == "Base");
    }

    [Fact]
    public void One_supplier_of_two_materials_is_asked_three_questions_in_all()
    {
        var proof = Prover.Prove([Part("Base", 0.4m, ListedOrder.Label, "A", "B", "C", "D", "E", "F"),
            Part("Other base", 0.4m, ListedOrder.Label, "G", "H", "I", "J", "K"), Part("Oil", 0.2m, ListedOrder.Label, "L")]);

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
                Assert.All(at.Select((s, c) => (s, c)),
                    x => Assert.InRange(x.s, (double)set.LeastShares[x.c] - 1e-9, (double)set.GreatestShares[x.c] + 1e-9));
                Assert.All(set.Chain.Zip(set.Chain.Skip(1)), pair => Assert.True(at[pair.First] >= at[pair.Second] - 1e-9));
            }
        }
    }

    [Fact]
    public void Who_gives_no_figures_may_be_asked_for_bands_of_the_whole_list()
    {
        var asked = Facts.Best([Prover.Prove([
            Part("Base", 0.5m, ListedOrder.Label, [.. Enumerable.Range(0, 14).Select(i => $"A{i}")]),
            Part("Other base", 0.5m, ListedOrder.Label, [.. Enumerable.Range(0, 14).Select(i => $"B{i}")])])]);

        Assert.Contains(asked.Facts, f => f.IsBands);
        Assert.All(asked.Facts, f => Assert.True(f.Settles > 0));
    }

    [Fact]
    public void On_published_formulas_three_questions_a_supplier_settle_nine_of_ten_open_pairs()
    {
        var all = QuestionMeasure.All();

        Assert.All(all, a => Assert.True(a.Measure.Part >= 0.9, $"{a}"));
        Assert.All(all, a => Assert.True(a.Measure.Median >= 0.9, $"{a}"));
        Repository.Table("suppliers.md", "questions", QuestionMeasure.Table(all));
    }
}
