using System.Globalization;
using CsCheck;
using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Declarations;

/// <summary>What holds of every declaration whose figures are all known, worked out here a second way.</summary>
public class DeclarationProperties
{
    private static readonly string[] Known =
        ["Glycerin", "Water", "Castor Oil", "Coconut Oil", "Beeswax", "Sodium Chloride", "Titanium Dioxide", "CI 77491", "Ultramarines",
            "Citric Acid"];

    private static readonly string[] Allergens = ["Linalool", "Limonene", "Geraniol", "Linalyl Acetate", "Vanillin", "Coumarin"];

    [Fact]
    public void What_exceeds_one_percent_stands_in_descending_order_then_the_rest_then_the_colours() =>
        Gen.Int[1, 60].Array[10].Sample(grams =>
        {
            // Cubes spread the shares over four orders of magnitude, so that some fall under 1 %.
            var uses = Known.Select((name, i) => (Name: name, Grams: (decimal)grams[i] * grams[i] * grams[i])).ToArray();
            var bench = new MakerBench();
            using var _ = bench;
            for (var i = 0; i < uses.Length; i++)
                bench.Material($"m{i}", "additive", uses[i].Name);
            bench.Recipe("soap-bar", "", [.. uses.Select((u, i) => ($"m{i}", FormattableString.Invariant($"{u.Grams} g")))]);
            var total = uses.Sum(u => u.Grams);
            foreach (var market in MarketBook.Shipped.All)
            {
                var declared = bench.Declare(market).Ingredients;
                var weight = uses.ToDictionary(u => IngredientDictionary.Shipped.Find(u.Name)!.NameIn(market), u => u.Grams / total * 100);
                Assert.Equal(weight.Keys.Order(), declared.Select(d => d.Name).Order());
                Assert.All(declared, d => Assert.Equal(weight[d.Name], d.High, 12));
                var main = declared.TakeWhile(d => d.Part == Part.Main).ToArray();
                Assert.All(main, d => Assert.True(weight[d.Name] > 1));
                Assert.Equal(main.OrderByDescending(d => weight[d.Name]).Select(d => d.Name), main.Select(d => d.Name));
                Assert.All(declared.Skip(main.Length), d => Assert.True(d.Part == Part.Colour || weight[d.Name] <= 1));
                Assert.Equal(declared.Select(d => d.Part).Order(), declared.Select(d => d.Part));
            }
        }, iter: 8, threads: 1);

    [Fact]
    public void An_allergen_is_named_exactly_where_its_sources_can_together_exceed_the_threshold() =>
        Gen.Select(Gen.Int[1, 400].Array[12], Gen.Int[1, 30].Array[2], Gen.Bool).Sample((tenths, grams, leaveOn) =>
        {
            // Two scents, each with six allergens from tenths of a per mille; 10 kg of product.
            string Certificate(int scent) => string.Join(", ", Allergens.Select((a, i) =>
                string.Create(CultureInfo.InvariantCulture, $"{a}: 0-{tenths[scent * 6 + i] / 100m} %")));
            using var bench = new MakerBench()
                .Material("oil", "oil", "Castor Oil")
                .Material("one", "fragrance", "Fragrance", $"allergens: {{ {Certificate(0)} }}\n")
                .Material("two", "fragrance", "Fragrance", $"allergens: {{ {Certificate(1)} }}\n")
                .Recipe(leaveOn ? "body-oil" : "soap-bar", "", ("oil", $"{10000 - grams[0] - grams[1]} g"), ("one", $"{grams[0]} g"),
                    ("two", $"{grams[1]} g"));
            var threshold = leaveOn ? 0.001m : 0.01m;
            bool Exceeds(int i) => (grams[0] * tenths[i] + grams[1] * tenths[6 + i]) / 100m / 10000m > threshold;
            foreach (var (on, list) in new[] { ("2026-07-31", new[] { 0, 1, 2, 5 }), ("2026-08-01", [0, 1, 2, 3, 4, 5]) })
            {
                var named = bench.Declare(Market.Eu, on).Ingredients.Where(d => d.IsAllergen).Select(d => d.Name);
                Assert.Equal(list.Where(Exceeds).Select(i => Allergens[i]).Order(), named.Order());
            }
        }, iter: 12, threads: 1);

    [Fact]
    public void Every_name_that_a_label_carries_is_read_back_as_the_same_ingredient()
    {
        var lost = new List<string>();
        foreach (var entry in IngredientDictionary.Shipped.Entries)
        {
            foreach (var (market, style) in MarketBook.Shipped.All.SelectMany(m => new[] { (m, NameStyle.Market), (m, NameStyle.Dual) }))
            {
                var name = new LabelNames(IngredientDictionary.Shipped, market, style,
                    market.On(new DateOnly(2026, 11, 25)).FigureIfAny("ingredients.nano") is not null, []).Of(entry.Key);
                var read = IngredientDictionary.Shipped.Find(name);
                // Colours that share a number or a name are told apart only together: CI 15850 is Red 6 and Red 7.
                if (read != entry && !(read is { IsColourant: true } && (read.Eu == entry.Eu || read.Us == entry.Us)))
                    lost.Add($"{name} for {entry.Key}: {read?.Key ?? "not found"}");
            }
        }
        Assert.Empty(lost.Distinct());
    }
}
