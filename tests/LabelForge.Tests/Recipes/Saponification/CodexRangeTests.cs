using LabelForge.Ingredients;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Tests.Recipes.Saponification;

public class CodexRangeTests
{
    // Codex Alimentarius CXS 210-1999, Standard for Named Vegetable Oils, Table 2 (chemical and physical characteristics of
    // crude vegetable oils), saponification value in mg KOH/g; olive: CXS 33-1981; lard and tallow: CXS 211-1999.
    // From memory of those tables, but for sunflower: read in the amendment of December 2022.
    public static TheoryData<string, int, int> Ranges => new()
    {
        { "Arachis Hypogaea (Peanut) Oil", 187, 196 },
        { "Orbignya Oleifera Seed Oil", 245, 256 },
        { "Cocos Nucifera (Coconut) Oil", 248, 265 },
        { "Gossypium Herbaceum (Cotton) Seed Oil", 189, 198 },
        { "Vitis Vinifera (Grape) Seed Oil", 188, 194 },
        { "Zea Mays (Corn) Oil", 187, 195 },
        { "Elaeis Guineensis (Palm) Oil", 190, 209 },
        { "Elaeis Guineensis (Palm) Kernel Oil", 230, 254 },
        { "Brassica Campestris (Rapeseed) Seed Oil", 168, 181 },
        { "Canola Oil", 182, 193 },
        { "Carthamus Tinctorius (Safflower) Seed Oil", 186, 198 },
        { "Sesamum Indicum (Sesame) Seed Oil", 186, 195 },
        { "Glycine Soja (Soybean) Oil", 189, 195 },
        { "Helianthus Annuus (Sunflower) Seed Oil", 187, 194 },
        { "Olea Europaea (Olive) Fruit Oil", 184, 196 },
        { "Lard", 192, 203 },
        { "Tallow", 190, 202 },
    };

    [Theory]
    [MemberData(nameof(Ranges))]
    public void The_lye_is_counted_from_the_codex_range(string oil, int low, int high) =>
        Assert.Equal(new SaponificationValue(low, high), IngredientDictionary.Shipped.Find(oil)!.Saponification);

    // The middle of a range turned into NaOH for 1000 g of oil: middle / 56.105 * 39.997.
    [Theory]
    [InlineData("coconut oil", 182.858)] // 256.5 / 56.105 * 39.997
    [InlineData("olive oil", 135.450)] // 190
    [InlineData("palm oil", 142.223)] // 199.5
    [InlineData("castor oil", 129.391)] // 181.5
    public void A_kilogram_of_oil_takes_this_much_sodium_hydroxide(string oil, double grams) => Assert.Equal(
        (decimal)grams,
        decimal.Round(
            IngredientDictionary.Shipped.Find(oil)!.Saponification!.Middle * MolarMass.SodiumHydroxide / MolarMass.PotassiumHydroxide, 3));

    // Tripalmitin, C51H98O6: 51 * 12.011 + 98 * 1.008 + 6 * 15.999 = 807.339 g/mol; 3 * 56105 / 807.339 = 208.48 mg KOH/g,
    // just inside the range of palm oil, which holds some lighter fats and unsaponifiable matter.
    [Fact]
    public void The_value_of_a_pure_triglyceride_follows_from_its_molar_mass()
    {
        var tripalmitin = 51 * 12.011m + 98 * 1.008m + 6 * 15.999m;
        Assert.Equal(807.339m, tripalmitin);
        Assert.InRange(3000 * MolarMass.PotassiumHydroxide / tripalmitin, 190m, 209m);
    }

    [Fact]
    public void Molar_masses_are_those_of_the_abridged_atomic_weights() => Assert.Equal(
        [39.997m, 56.105m, 18.015m, 92.094m],
        [MolarMass.SodiumHydroxide, MolarMass.PotassiumHydroxide, MolarMass.Water, MolarMass.Glycerin]);

    [Fact]
    public void Every_fat_and_every_soap_of_the_table_is_in_the_dictionary_under_that_name()
    {
        var names = SoapTable.All.SelectMany(e => new[] { e.Fat, e.Sodium, e.Potassium }).OfType<string>().ToArray();
        Assert.InRange(names.Length, 80, 500);
        Assert.DoesNotContain(names, n => IngredientDictionary.Shipped.Find(n)?.Us != n);
    }

    [Fact]
    public void Soaps_of_sodium_and_potassium_are_named_after_their_alkali() => Assert.All(SoapTable.All, e =>
    {
        Assert.True(e.Sodium?.StartsWith("Sodium ", StringComparison.Ordinal) ?? true);
        Assert.True(e.Potassium?.StartsWith("Potassium ", StringComparison.Ordinal) ?? true);
    });
}
