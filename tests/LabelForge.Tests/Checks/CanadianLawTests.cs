using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Checks;

/// <summary>Canada: what is held of the hotlist, the Regulations on colours and names, the importer's words.</summary>
public sealed class CanadianLawTests
{
    // Hotlist, changes of 2025: retinol and esters 0.2 % in leave-on products for the whole body, 1 % in others, as retinol.
    [Theory]
    [InlineData("body-lotion", "Retinol", 0.25, "2025-02-28", "substance.over-limit must")]
    [InlineData("body-lotion", "Retinol", 0.25, "2025-02-27", "")]
    [InlineData("body-lotion", "Retinyl Palmitate", 0.25, "2025-02-28", "")]
    [InlineData("face-cream", "Retinol", 0.25, "2025-02-28", "")]
    [InlineData("face-cream", "Retinol", 1.1, "2025-02-28", "substance.over-limit must")]
    [InlineData("face-cream", "Retinal", 0.06, "2025-02-28", "substance.over-limit must")]
    [InlineData("face-cream", "Benzoyl Peroxide", 0.5, "2025-02-28", "substance.prohibited must")]
    [InlineData("face-cream", "Benzoyl Peroxide", 0.5, "2025-02-27", "")]
    [InlineData("shampoo", "Hydrogen Peroxide", 11, "2026-11-26", "substance.over-limit must")]
    [InlineData("body-lotion", "Glyceryl Thioglycolate", 0.1, "2026-11-26", "substance.prohibited must")]
    [InlineData("body-lotion", "m-Cresol", 0.05, "2026-11-26", "")]
    [InlineData("lip-balm", "m-Cresol", 0.05, "2026-11-26", "substance.prohibited must")]
    // Cosmetic Regulations, ss. 15 and 15.1.
    [InlineData("body-lotion", "Chloroform", 0.01, "2020-01-01", "substance.prohibited must")]
    [InlineData("body-lotion", "Thimerosal", 0.01, "2020-01-01", "substance.prohibited must")]
    [InlineData("eye-cream", "Thimerosal", 0.001, "2020-01-01", "substance.prohibited should")]
    public void The_lists_of_canada_are_looked_up_as_far_as_they_are_held(string kind, string substance, double grams, string on,
        string found)
    {
        using var recipe = new CheckedRecipe { Kind = kind, On = DateOnly.Parse(on, System.Globalization.CultureInfo.InvariantCulture) };
        recipe.Add(100 - (decimal)grams, "Glycerin").Add((decimal)grams, substance);
        Assert.Equal(found.Length == 0 ? [] : found.Split(','), recipe.Substances(Market.Ca));
    }

    [Fact]
    public void What_is_not_held_of_the_hotlist_is_said()
    {
        using var recipe = new CheckedRecipe();
        Assert.Contains("only the changes of 2025",
            recipe.Add(100, "Glycerin").In(Market.Ca).Findings.Single(f => f.Rule == "outside.hotlist").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Aqua, Glycerin, Glyceryl Thioglycolate", "substance.prohibited")]
    [InlineData("Aqua, Glycerin, Retinol", "substance.conditions")]
    public void A_label_made_elsewhere_is_looked_up_by_its_names(string names, string rule) =>
        Assert.Contains(Of("body-lotion", $"Body lotion / Lotion pour le corps\n200 mL\nIngredients/Ingrédients: {names}.\n"),
            f => f.Rule == rule);

    // C.R.C., c. 869, s. 14.
    [Theory]
    [InlineData("eye-shadow", "CI 42090", true)]
    [InlineData("eye-shadow", "CI 77491", false)]
    [InlineData("lipstick", "CI 42090", false)]
    public void No_coal_tar_dye_goes_to_the_area_of_the_eye(string kind, string colour, bool found) =>
        Assert.Equal(found,
            Of(kind, $"Colour / Couleur\n5 g\nIngredients/Ingrédients: Talc, {colour}.\n").Any(f => f.Rule == "colour.not-permitted"));

    // s. 21.2(3).
    [Theory]
    [InlineData("Lavender oil", true)]
    [InlineData("Lavandula Angustifolia Oil", false)]
    [InlineData("Lavandula Angustifolia (Lavender) Oil", false)]
    public void A_plant_is_named_by_genus_and_species(string name, bool found) =>
        Assert.Equal(found,
            Of("body-lotion", $"Body lotion / Lotion pour le corps\n200 mL\nIngredients/Ingrédients: Aqua, Glycerin, {name}.\n")
                .Any(f => f.Rule == "ingredients.name-foreign" && f.Message.Contains("genus", StringComparison.Ordinal)));

    // C.R.C., c. 417, s. 31(2) to (4).
    [Theory]
    [InlineData("Example Works, 1 Example Lane, Fairport, ME 00000, USA", "Example Imports, 2 Example Rd, Exampleton, ON K0A 0A0, Canada",
        true)]
    [InlineData("Example Works, 1 Example Lane, Fairport, ME 00000, USA",
        "Imported by / Importé par Example Imports, 2 Example Rd, Exampleton, ON K0A 0A0, Canada", false)]
    public void A_foreign_product_with_a_canadian_name_says_who_imported_it_or_where_it_was_made(string maker, string importer,
        bool found) =>
        Assert.Equal(found,
            Of("body-lotion",
                $"Body lotion / Lotion pour le corps\n200 mL\nIngredients/Ingrédients: Aqua, Glycerin.\n\n{maker}\n\n{importer}\n")
                .Any(f => f.Message.Contains("neither the set words", StringComparison.Ordinal)));

    [Theory]
    [InlineData("Example Imports, 2 Example Rd, Exampleton ON K0A 0A0, Canada",
        "Imported by / Importé par Example Imports, 2 Example Rd, Exampleton ON K0A 0A0, Canada")]
    [InlineData("Imported for / Importé pour Example Imports, Exampleton ON",
        "Imported for / Importé pour Example Imports, Exampleton ON")]
    [InlineData("Importé par Example Imports, Exampleton ON", "Importé par Example Imports, Exampleton ON")]
    public void The_set_words_stand_before_an_importer_once(string written, string printed)
    {
        using var folder = new BenchFolder();
        folder.Write("workshop.yaml",
            $"business: Example Works\nplace: {{ street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + $"}}\nresponsible: {{ ca: \"{written}\" }}\nmarket: ca\n");
        folder.Write("materials/base.yaml", "name: Base\nkind: base\ncontains: Glycerin\n");
        folder.Write("recipes/soap.yaml",
            "name: Soap\nidentity: Bar soap\nproduct: soap-bar\npieces: 1\nnet: 100 g\nmaterials:\n  - { use: base, amount: 100 g }\n");
        var workshop = Workshop.Open(folder.Path);
        var batch = BatchFormula.Of(workshop, workshop.Recipe("soap"));
        var (kind, on) = (ProductKindOf.Recipe(batch.Recipe), new DateOnly(2026, 11, 26));
        var content = LabelContentBuilder.Build(workshop, batch, kind, DeclarationBuilder.Build(workshop, batch, kind, Market.Ca, on),
            Panel.Rectangle(Length.FromInches(2), Length.FromInches(4)), null, on);
        Assert.Equal(printed, content.Responsible);
    }

    private static Finding[] Of(string kind, string text) => CheckedLabel.Found(text, Market.Ca, kind);
}
