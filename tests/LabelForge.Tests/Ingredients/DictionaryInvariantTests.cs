using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Ingredients;

public class DictionaryInvariantTests
{
    private static readonly IngredientDictionary Dictionary = IngredientDictionary.Shipped;

    [Fact]
    public void At_least_six_hundred_ingredients_are_known() => Assert.InRange(Dictionary.Entries.Length, 600, 5000);

    [Fact]
    public void Every_name_finds_its_own_ingredient_or_a_colourant_that_shares_the_name()
    {
        var strays =
            from ingredient in Dictionary.Entries
            from name in ingredient.Names
            let found = Dictionary.Find(name)
            where !ReferenceEquals(found, ingredient) && !(ingredient.IsColourant && found is { IsColourant: true })
            select $"{name} of {ingredient.Us} finds {found?.Us ?? "nothing"}";
        Assert.Empty(strays);
    }

    [Fact]
    public void Every_key_finds_its_own_ingredient() =>
        Assert.Empty(Dictionary.Entries.Where(i => !ReferenceEquals(Dictionary.Find(i.Key), i)).Select(i => i.Key));

    [Fact]
    public void Every_colourant_has_a_colour_index_number_or_a_us_colour_name() =>
        Assert.Empty(Dictionary.Entries
            .Where(i => i.IsColourant && i.ColourIndex.IsEmpty && IngredientDictionary.Shipped.Colours.Find(i.Us) is null && i.Eu == i.Us)
            .Where(i => i.Us is not "Zinc Stearate" and not "Magnesium Stearate")
            .Select(i => i.Us));

    [Fact]
    public void What_has_the_role_of_an_allergen_is_flagged_as_one_and_the_other_way() =>
        Assert.Empty(Dictionary.Entries.Where(i => i.IsAllergen != i.Roles.Contains(IngredientRole.Allergen)).Select(i => i.Us));

    [Fact]
    public void Latin_names_with_a_common_name_on_us_labels_lose_it_on_eu_labels() =>
        Assert.Empty(Dictionary.Entries.Where(i => i.Eu.Contains('(', StringComparison.Ordinal)).Select(i => i.Eu));

    [Fact]
    public void Saponification_values_of_fats_lie_where_fats_can() =>
        Assert.All(
            Dictionary.Entries.Where(i => i.Saponification is not null),
            i => Assert.InRange(i.Saponification!.Middle, 40m, 350m));

    [Theory]
    // Codex Alimentarius CXS 210, Table 2 (coconut, palm kernel, palm); CXS 33 (olive); mg KOH/g.
    [InlineData("coconut oil", 248, 265)]
    [InlineData("palm kernel oil", 230, 254)]
    [InlineData("palm oil", 190, 209)]
    [InlineData("olive oil", 184, 196)]
    public void Saponification_values_are_the_codex_ranges(string oil, int low, int high) =>
        Assert.Equal(new SaponificationValue(low, high), Dictionary.Find(oil)!.Saponification);

    [Theory]
    // 1000 * M(KOH) / M(acid): 56.105 against lauric 200.32, stearic 284.48, oleic 282.46 g/mol (IUPAC weights).
    [InlineData("Lauric Acid", 200.32)]
    [InlineData("Myristic Acid", 228.37)]
    [InlineData("Palmitic Acid", 256.42)]
    [InlineData("Stearic Acid", 284.48)]
    [InlineData("Oleic Acid", 282.46)]
    public void Saponification_values_of_pure_acids_follow_from_their_molar_mass(string acid, double molarMass) =>
        Assert.Equal(56105.0 / molarMass, (double)Dictionary.Find(acid)!.Saponification!.Middle, 0.2);

    // Cosmetic Regulations (Canada), C.R.C., c. 869, s. 21.2(4)(c) and schedule: the EU name, the INCI name and the French one together.
    [Fact]
    public void A_canadian_name_in_three_tongues_gives_trivial_english_and_french_names_of_one_thing()
    {
        var three = Dictionary.Entries.Where(e => e.Canada?.Contains('/', StringComparison.Ordinal) == true).ToArray();
        Assert.InRange(three.Length, 20, 200);
        Assert.All(three, e =>
        {
            Assert.Equal(3, e.Canada!.Split('/').Length);
            Assert.Same(e, Dictionary.Find(e.Canada!));
            Assert.Contains("c. 869, schedule", e.Source, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("Aqua/Water/Eau")]
    [InlineData("Mel/Honey/Miel")]
    [InlineData("Cera Alba/Beeswax/Cire d'abeille")]
    [InlineData("Ovum/Egg/Œuf")]
    [InlineData("Adeps Suillus/Lard/Saindoux")]
    public void The_schedule_s_names_are_those_of_a_canadian_label(string name) =>
        Assert.Equal(name, Dictionary.Find(name)!.NameIn(MarketBook.Shipped.Find("ca").OrRefuse()));

    // The schedule itself, C.R.C., c. 869, consolidation of May 2026: a name in three tongues is a row of it, and a row of it that
    // the dictionary knows has its name.
    [Fact]
    public void A_name_in_three_tongues_is_a_row_of_the_schedule_and_no_row_that_is_known_here_lacks_it()
    {
        var schedule = ReferenceTable.RowsOrSkip("law/ca-cosmetic-regulations-schedule.csv")
            .Where(r => r.Length == 4 && int.TryParse(r[0], out _))
            .Select(r => string.Join('/', r[1], r[2], r[3]).Replace('\u2019', '\''))
            .ToArray();
        Assert.Equal(64, schedule.Length);
        Assert.All(Dictionary.Entries.Where(e => e.Canada?.Contains("/", StringComparison.Ordinal) == true),
            e => Assert.Contains(e.Canada!, schedule));
        Assert.All(schedule,
            row => Assert.True(Dictionary.Find(row.Split("/")[1]) is not { } known
                || known.Canada == row
                || row is "Faex/Lactic Yeasts/Levures lactiques", row));
    }
}
