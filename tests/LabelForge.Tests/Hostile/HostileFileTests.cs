using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Hostile;

/// <summary>Files of a workshop that somebody sends, made to do harm.</summary>
public sealed class HostileFileTests
{
    [Fact]
    public void A_file_that_doubles_itself_by_references_is_refused_at_the_first()
    {
        var lines = Enumerable.Range(1, 30).Select(i => $"a{i}: &a{i} [*a{i - 1}, *a{i - 1}]");
        var refused = Refused("a0: &a0 [x, x]\n" + string.Join('\n', lines));
        Assert.Contains("mean a reference", refused);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    [InlineData("- ")]
    public void Lists_inside_lists_without_end_are_refused(string opening) =>
        Assert.Contains("too deeply", Refused("name: x\ncontains:\n  " + string.Concat(Enumerable.Repeat(opening, 20_000))));

    [Theory]
    [InlineData("name: x\ncontains:\n\t- Water\n", 3)]
    [InlineData("materials:\n  - use: a\n  \tamount: 3 g\n", 3)]
    [InlineData("business:\n\tname: x\n", 2)]
    public void A_line_set_in_by_a_tab_is_named_with_what_to_write(string text, int line)
    {
        var refused = Assert.Throws<InputException>(() => YamlFile.ReadText(text, "recipes/bar.yaml")).Problem;
        Assert.Equal((line, "The line is set in by a tab."), (refused.Line, refused.Wrong));
    }

    [Fact]
    public void A_file_larger_than_a_megabyte_is_refused_unread()
    {
        using var bench = new BenchFolder();
        bench.Write("recipes/bar.yaml", "name: " + new string('x', 1_100_000));
        Assert.Contains("larger than a megabyte", Assert.Throws<InputException>(() => Workshop.Open(bench.Path).Recipe("bar")).Message);
    }

    [Fact]
    public void A_letter_that_is_not_UTF_8_is_refused_with_its_line_and_not_lost()
    {
        using var bench = new BenchFolder();
        bench.Write("recipes/bar.yaml", "");
        var file = Path.Combine(bench.Path, "recipes", "bar.yaml");
        File.WriteAllBytes(file, System.Text.Encoding.Latin1.GetBytes("product: soap-bar\nname: Café bar\n"));
        var refused = Assert.Throws<InputException>(() => Workshop.Open(bench.Path).Recipe("bar")).Message;
        Assert.StartsWith("recipes/bar.yaml, line 2:", refused);
        Assert.Contains("UTF-8", refused);
        File.WriteAllText(file, "product: soap-bar\nname: Café bar\n", System.Text.Encoding.Unicode);
        Assert.EndsWith("name: Café bar\n", YamlFile.TextOf(file, "bar.yaml"));
    }

    [Theory]
    [InlineData("name: Bar #4", "\"Bar #4\"", 1)]
    [InlineData("variants:\n  - name: Moss Wall #12\n    item: \"2\"", "\"Moss Wall #12\"", 2)]
    public void A_name_is_not_cut_at_its_number(string text, string write, int line)
    {
        var refused = Refused(text + "\n");
        Assert.StartsWith($"recipes/bar.yaml, line {line}:", refused);
        Assert.Contains(write, refused);
    }

    [Fact]
    public void Variants_keyed_by_their_names_are_told_to_be_a_list()
    {
        using var bench = new BenchFolder();
        bench.Write("recipes/bar.yaml", """
            name: Bar
            product: soap-bar
            materials: [ { use: clear-base, amount: 900 g } ]
            pieces: 8
            net: 4 oz
            variants:
              Orchard:
                add: [ { use: castor-oil, amount: 10 g } ]
            """);
        var refused = Assert.Throws<InputException>(() => Workshop.Open(bench.Path).Recipe("bar")).Message;
        Assert.StartsWith("recipes/bar.yaml, line 7:", refused);
        Assert.Contains("- name: Orchard", refused);
    }

    [Theory]
    [InlineData("name: \"Bar #4\"", "Bar #4")]
    [InlineData("name: Bar # the 4th", "Bar")]
    [InlineData("name: \"Bar\" #4", "Bar")]
    [InlineData("name: Bar#4", "Bar#4")]
    public void A_quoted_name_keeps_its_number_and_a_remark_stays_one(string text, string name) =>
        Assert.Equal(name, Assert.IsType<TextNode>(YamlFile.ReadText(text + "\n", "recipes/bar.yaml").Entries[0].Value).Text);

    [Fact]
    public void A_file_of_a_hundred_thousand_keys_is_refused_as_what_it_is() =>
        Assert.Contains("stands twice", Refused(string.Concat(Enumerable.Range(0, 100_000).Select(i => $"k{i}: 1\n")) + "k7: 2\n"));

    [Fact]
    public void A_file_on_which_the_parser_gives_up_is_refused_with_its_name() =>
        Assert.StartsWith("recipes/bar.yaml",
            Refused("contains:\n  net: 113 g\n- Water (Aqua)\n - Sorbitol\n  - Glycerin: 18-24 %\n   Stearate: 10-20 %\n"));

    [Theory]
    [InlineData("!!python/object:os.system [x]")]
    [InlineData("!<tag:yaml.org,2002:binary> aGk=")]
    public void A_tag_that_asks_for_an_object_is_refused(string value) => Assert.Contains("tag", Refused($"name: {value}"));

    [Theory]
    [InlineData("79228162514264337593543950335 g")]
    [InlineData("79228162514264337593543950335 79228162514264337593543950335/1 g")]
    [InlineData("99999999999999999999999999999999999999 kg")]
    [InlineData("1/0 g")]
    [InlineData("1000000001 lb")]
    [InlineData("0.00000000000000000000000000000000001 g")]
    public void An_amount_beyond_all_measure_is_refused_in_words(string amount)
    {
        var parsed = Amount.Parse(amount);
        Assert.False(parsed.IsValue);
        Assert.NotEmpty(parsed.Write!);
    }

    [Theory]
    [InlineData("../../etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("..\\..\\secret")]
    [InlineData("nul\0.yaml")]
    public void A_recipe_named_by_a_way_out_of_the_workshop_is_not_found(string id)
    {
        using var bench = new BenchFolder();
        File.WriteAllText(Path.Combine(bench.Path, "passwd.yaml"), "name: Secret\n");
        Assert.Throws<InputException>(() => Workshop.Open(bench.Path).Recipe(id));
    }

    [Fact]
    public void A_share_with_every_digit_that_fits_is_written_and_read_as_the_same()
    {
        var share = ShareText.Parse(".503030303030303030303030303030 %").Value;
        Assert.Equal(share, ShareText.Parse(MaterialDraft.Share(share)).Value);
    }

    // Figures of other scripts are digits to a pattern and no digits to a reader of numbers.
    [Theory]
    [InlineData("Bar soap. Net Wt \u0663/\u0664 oz")]
    [InlineData("Bar soap. Net Wt \u0661\u0661\u0663 g")]
    public void Figures_of_another_script_are_borne_with_on_a_label(string text) =>
        Assert.Empty(LabelForge.Checks.Reading.LabelStatement
            .Read(LabelForge.Checks.Reading.LabelText.Of(text, "label.txt"),
                LabelForge.Ingredients.IngredientDictionary.Shipped).NetQuantities);

    private static string Refused(string text) => Assert.Throws<InputException>(() => YamlFile.ReadText(text, "recipes/bar.yaml")).Message;
}
