using System.Globalization;
using CsCheck;
using LabelForge.Checks;
using LabelForge.Markets;
using LabelForge.Tests.Checks;

namespace LabelForge.Tests.Finished;

/// <summary>A limit of the law is of the finished product, however it came about.</summary>
public class SameProductTests
{
    // Hydroxycitronellal: at most 1 % of any product (Annex III, 72).
    private const string Scent = "allergens: { Hydroxycitronellal: 60 % }\n";

    // What a product is drawn from: with limits on the substance, on the scent, on the kind of product, and without any.
    private static readonly (string Contains, string Kind, string More)[] Materials =
    [
        ("Glycerin", "additive", ""),
        ("Ricinus Communis (Castor) Seed Oil", "additive", ""),
        ("Benzoic Acid", "additive", ""),
        ("Sodium Benzoate", "additive", ""),
        ("BHT", "additive", ""),
        ("Salicylic Acid", "additive", ""),
        ("Cuminum Cyminum (Cumin) Seed Oil", "additive", ""),
        ("Red 36 (CI 12085)", "colourant", ""),
        ("Fragrance", "fragrance",
            "limits: { category 5A: 1.2 %, category 9: 3 % }\nallergens: { Hydroxycitronellal: 40 %, Isoeugenol: 0.5-2 %, "
                + "Linalool: 10 % }\n"),
        ("Fragrance", "fragrance", "limits: { category 5A: 0.6 % }\nallergens: { Coumarin: 1 %, Methyl 2-Octynoate: <= 2 % }\n"),
    ];

    private static readonly Gen<(int[] Milligrams, int Water, int Boiled, int Cut, int Times)> Batches = Gen.Select(
        Gen.OneOf(Gen.Int[0, 400], Gen.Int[1, 30_000], Gen.Const(0)).Array[Materials.Length], Gen.Int[5_000, 60_000], Gen.Int[1, 80_000],
        Gen.Int[1, 9], Gen.Int[2, 7]);

    [Fact]
    public void An_allergen_over_its_limit_is_found_in_a_cream_that_was_boiled_down()
    {
        using var straight = new CheckedRecipe().Add(460, "Water").Add(30, "Glycerin").Add(10, "Fragrance", "fragrance", Scent);
        using var boiled = new CheckedRecipe { More = "yield: 500 g\n" }.Add(960, "Water").Add(30, "Glycerin")
            .Add(10, "Fragrance", "fragrance", Scent);
        string[] expected = ["substance.over-limit must"];
        Assert.Equal(expected, straight.Substances(Market.Eu));
        Assert.Equal(expected, boiled.Substances(Market.Eu));
    }

    [Fact]
    public void A_scent_without_papers_counts_by_its_share_of_the_finished_product()
    {
        using var straight = new CheckedRecipe().Add(99.998m, "Water").Add(0.002m, "Fragrance", "fragrance");
        using var boiled = new CheckedRecipe { More = "yield: 100 g\n" }.Add(299.998m, "Water").Add(0.002m, "Fragrance", "fragrance");
        Assert.NotEmpty(straight.Found(Market.Eu, "allergen.undeclared"));
        Assert.Equal(straight.Found(Market.Eu, "allergen.undeclared"), boiled.Found(Market.Eu, "allergen.undeclared"));
    }

    [Fact]
    public void Two_ways_to_the_same_finished_product_get_the_same_findings() => Batches.Sample(b =>
    {
        var straight = Findings(Straight(b.Milligrams, b.Water));
        var ways = new (string Way, CheckedRecipe Recipe)[]
        {
            ("boiled down to a yield", Straight(b.Milligrams, b.Water + b.Boiled, $"yield: {Grams(b.Milligrams.Sum() + b.Water)} g\n")),
            ("boiled down by a loss", Straight(b.Milligrams, b.Water + b.Boiled, $"loss: {Grams(b.Boiled)} g water\n")),
            ("several times as much", Straight([.. b.Milligrams.Select(m => m * b.Times)], b.Water * b.Times)),
            ("poured in two parts", Poured(b.Milligrams, b.Water, b.Cut)),
            ("mixed beforehand", Blended(b.Milligrams, b.Water, b.Cut)),
        };
        foreach (var (way, recipe) in ways)
        {
            var found = Findings(recipe);
            Assert.True(straight.SequenceEqual(found),
                $"{way}:\n{string.Join('\n', straight.Except(found))}\n---\n{string.Join('\n', found.Except(straight))}");
        }
    });

    private static string Grams(int milligrams) => (milligrams / 1000m).ToString(CultureInfo.InvariantCulture);

    private static CheckedRecipe Straight(int[] milligrams, int water, string more = "")
    {
        var recipe = new CheckedRecipe { More = more }.Add(water / 1000m, "Water");
        for (var i = 0; i < milligrams.Length; i++)
            recipe.Material(i, Materials[i].Contains, Materials[i].Kind, Materials[i].More).Use(milligrams[i] / 1000m, $"m{i}");
        return recipe;
    }

    private static CheckedRecipe Poured(int[] milligrams, int water, int cut)
    {
        // A scent keeps its one certificate, whose limit is of the whole of it.
        int[] first = [.. milligrams.Select((m, i) => Materials[i].Kind == "fragrance" ? m : m * cut / 10)];
        var recipe = Straight(first, water);
        for (var i = 0; i < milligrams.Length; i++)
            recipe.Material(i, Materials[i].Contains, Materials[i].Kind, Materials[i].More, copy: true)
                .Use((milligrams[i] - first[i]) / 1000m, $"n{i}");
        return recipe;
    }

    // What stands before the cut is mixed with some of the rest; the mix is used whole.
    private static CheckedRecipe Blended(int[] milligrams, int water, int cut)
    {
        var recipe = Straight([.. milligrams.Select((m, i) => i < cut ? 0 : m)], water);
        var inside = milligrams.Select((m, i) => (Milligrams: m, At: i)).Where(m => m.At < cut && m.Milligrams > 0).ToArray();
        if (inside.Length == 0)
            return recipe;
        recipe.File("materials/mix.yaml",
            $"name: Mix\nkind: additive\nmade from:\n{string.Concat(inside.Select(m => $"  - {{ use: m{m.At}, amount: {Grams(m.Milligrams)} g }}\n"))}");
        return recipe.Use(inside.Sum(m => m.Milligrams) / 1000m, "mix");
    }

    // Everything that is found in any market, but for what names a line of the recipe to change.
    private static string[] Findings(CheckedRecipe recipe)
    {
        using (recipe)
        {
            return [.. Market.All
                .SelectMany(m => recipe.In(m).Findings.Where(f => !f.Rule.StartsWith("net-quantity.", StringComparison.Ordinal))
                    .Select(
                        f =>
                            $"{m.Id} {f.Rule} {f.Severity} {f.Source} {(f.Rule.StartsWith("fragrance.", StringComparison.Ordinal) ? "" : f.Message)}")).Order(StringComparer.Ordinal)];
        }
    }
}
