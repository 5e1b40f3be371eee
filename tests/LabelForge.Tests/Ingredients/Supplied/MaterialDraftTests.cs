using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Ingredients.Supplied;

public class MaterialDraftTests
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    private static string Yaml(string paper, string name = "Clear shea base") =>
        new MaterialDraft("clear-shea-base", name, MaterialKind.Base, ListedOrder.Label,
            Matcher.Match(SuppliedText.Read(paper, Matcher.Knows))).ToYaml(IngredientDictionary.Shipped);

    private static Material Read(string yaml) =>
        MaterialFile.Read("clear-shea-base", YamlFile.ReadText(yaml, "materials/clear-shea-base.yaml"));

    [Fact]
    public void What_is_written_is_what_the_paper_says()
    {
        var material =
            Read(
                Yaml(
                    "GLYCERIN 10-30%, AQUA, SODIUM STEARATE (<=20%), Castor Oil* 5%, Sodium Chloride <1%. *organic. May contain: "
                        + "Titanium Dioxide"));
        Assert.Equal(("Clear shea base", MaterialKind.Base, ListedOrder.Label), (material.Name, material.Kind, material.Listed));
        Assert.Equal(["Glycerin", "Water", "Sodium Stearate", "Ricinus Communis (Castor) Seed Oil", "Sodium Chloride"],
            material.Contains.Select(c => c.Name));
        Assert.Equal(["10 % to 30 %", "0 % to 100 %", "0 % to 20 %", "5 %", "0 % to 1 %"],
            material.Contains.Select(c => c.Share.ToString()));
    }

    // Found by fuzzing: lines without a comma became one name, longer than a file can hold before a share.
    [Fact]
    public void Names_run_together_into_one_are_told_with_what_to_write()
    {
        var refused = Assert.Throws<InputException>(() => Yaml(string.Concat(Enumerable.Repeat("Watery ", 200)) + "30-60 %, Glycerin"));
        Assert.Equal("material.name-too-long", refused.Problem.Code);
    }

    [Fact]
    public void An_unknown_name_stays_as_written_and_is_marked_with_what_is_nearest()
    {
        var yaml = Yaml("Glycerin, Sodium Stearatte, Water");
        Assert.Contains("SETTLE THIS: \"Sodium Stearatte\" is not in the dictionary. Nearest there: Sodium Stearate", yaml,
            StringComparison.Ordinal);
        Assert.Equal("Sodium Stearatte", Read(yaml).Contains[1].Name);
    }

    [Fact]
    public void What_may_be_contained_waits_behind_a_comment_sign()
    {
        var yaml = Yaml("Glycerin, Water. +/- Titanium Dioxide");
        Assert.Contains("# - Titanium Dioxide", yaml, StringComparison.Ordinal);
        Assert.Equal(3, Read(yaml.Replace("# - ", "- ", StringComparison.Ordinal)).Contains.Length);
    }

    [Fact]
    public void The_mark_of_a_nanomaterial_is_kept() =>
        Assert.EndsWith("[nano]", Read(Yaml("Water, TITANIUM DIOXIDE [NANO]")).Contains[1].Name, StringComparison.Ordinal);

    [Fact]
    public void One_ingredient_under_two_names_is_refused_with_both()
    {
        var message = Assert.Throws<InputException>(() => Yaml("Water, Glycerin, Aqua")).Message;
        Assert.Contains("\"Water\" (place 1) and \"Aqua\" (place 3)", message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Weird: \"name\" # of it, Water")]
    [InlineData("- {a: b}, Water")]
    [InlineData("&anchor, Water, !tag")]
    [InlineData("Back\\slash, ~, Water")]
    [InlineData("Xx ? yy: zz:, Water")]
    public void Signs_that_mean_something_in_YAML_do_no_harm(string paper)
    {
        var names = SuppliedText.Read(paper, Matcher.Knows).Names.Select(n => n.Text);
        Assert.Equal(names, Read(Yaml(paper, "Base: \"1\" # 2")).Contains.Select(c => c.Name));
    }

    [Fact]
    public void Every_ingredient_is_written_under_a_name_that_finds_it_again()
    {
        foreach (var entry in IngredientDictionary.Shipped.Entries)
            Assert.Equal(entry.Key, IngredientDictionary.Shipped.Find(entry.Key)?.Key);
    }

    [Theory]
    [InlineData("Clear shea base", "clear-shea-base")]
    [InlineData("  Base No. 4 (opaque) ", "base-no-4-opaque")]
    [InlineData("../../etc", "etc")]
    public void An_id_is_made_of_the_name(string name, string id) => Assert.Equal(id, MaterialDraft.IdOf(name));

    [Theory]
    [InlineData("Nul")]
    [InlineData("COM1")]
    [InlineData("lpt9")]
    public void A_name_that_some_systems_keep_for_a_device_asks_for_an_id(string name) =>
        Assert.Contains("--id", Assert.Throws<InputException>(() => MaterialDraft.IdOf(name)).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("COM10", "com10")]
    [InlineData("Comfrey", "comfrey")]
    public void A_name_that_only_begins_like_a_device_is_a_name(string name, string id) => Assert.Equal(id, MaterialDraft.IdOf(name));

    [Fact]
    public void A_name_without_letters_asks_for_an_id() =>
        Assert.Contains("--id", Assert.Throws<InputException>(() => MaterialDraft.IdOf("???")).Message, StringComparison.Ordinal);
}
