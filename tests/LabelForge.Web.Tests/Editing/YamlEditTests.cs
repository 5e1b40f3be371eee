using CsCheck;
using LabelForge.Recipes.Files;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Tests.Editing;

/// <summary>The page changes what it is told to change, and not a character more. The expected texts were written by hand.</summary>
public sealed class YamlEditTests
{
    private const string Recipe = """
        # My best seller. Do not touch the scent!
        name: Fen Meadow     # after the walk
        identity: Glycerin bar soap
        materials:
          # the base first
          - { use: clear-base,  amount: 900 g }   # 1 block
          - { use: castor-oil,  amount: 27 g }

          - { use: fen-fragrance, amount: 1.5 % of batch }
        pieces: 8
        net: "113 g"
        claims: ["Leaves skin soft"]
        """ + "\n";

    private static readonly string[] Order = ["name", "identity", "product", "claims", "materials", "superfat", "pieces", "net",
        "directions"];

    [Theory]
    [InlineData("[", 60_000)]
    [InlineData("[", 8_000)]
    [InlineData("[", 25)]
    [InlineData("{ a: ", 8_000)]
    [InlineData("- ", 8_000)]
    [InlineData("? ", 8_000)]
    [InlineData("a: 1\n", 300_000)]
    public void A_text_deeper_or_larger_than_any_file_of_a_workshop_is_read_as_none_and_the_program_lives(string piece, int times)
    {
        var text = "name: Fen Meadow\nmaterials: " + string.Concat(Enumerable.Repeat(piece, times));
        Assert.Null(YamlEdit.Get(text, "name"));
        Assert.Empty(YamlEdit.Keys(text));
    }

    [Theory]
    [InlineData("name", "Mill Race", "name: Fen Meadow     # after", "name: Mill Race     # after")]
    [InlineData("net", "4 oz", "net: \"113 g\"", "net: 4 oz")]
    [InlineData("net", "1: 2 # 3", "net: \"113 g\"", "net: \"1: 2 # 3\"")]
    [InlineData("identity", "", "identity: Glycerin bar soap", "identity: \"\"")]
    [InlineData("pieces", "08", "pieces: 8", "pieces: \"08\"")]
    public void A_value_is_changed_and_every_other_character_stays(string key, string value, string was, string becomes)
    {
        Assert.Contains(was, Recipe, StringComparison.Ordinal);
        Assert.Equal(Recipe.Replace(was, becomes, StringComparison.Ordinal), YamlEdit.Set(Recipe, [key], value));
        Assert.Equal(value, YamlEdit.Get(YamlEdit.Set(Recipe, [key], value), key));
    }

    [Fact]
    public void An_amount_is_changed_inside_its_braces()
    {
        var text = YamlEdit.Set(Recipe, ["materials", 0, "amount"], "1.5 lb");
        Assert.Equal(Recipe.Replace("amount: 900 g }   # 1 block", "amount: 1.5 lb }   # 1 block", StringComparison.Ordinal), text);
    }

    [Fact]
    public void A_new_key_goes_where_such_a_key_usually_stands()
    {
        var text = YamlEdit.Set(Recipe, ["superfat"], "5 %", Order);
        Assert.Equal(Recipe.Replace("of batch }\n", "of batch }\nsuperfat: 5 %\n", StringComparison.Ordinal), text);
        Assert.Equal(Recipe.Replace("\"113 g\"\n", "\"113 g\"\ndirections: Rinse well\n", StringComparison.Ordinal),
            YamlEdit.Set(Recipe, ["directions"], "Rinse well", Order));
        Assert.Equal("name: X\nproduct: soap-bar\n", YamlEdit.Set("name: X\n", ["product"], "soap-bar", Order));
        Assert.Equal("# top\nname: X\npieces: 8\n", YamlEdit.Set("# top\npieces: 8\n", ["name"], "X", Order));
    }

    [Fact]
    public void A_material_is_added_below_the_last_and_stands_as_the_others_do()
    {
        var text = YamlEdit.Add(Recipe, ["materials"], "{ use: mica, amount: 1 g }");
        Assert.Equal(Recipe.Replace("1.5 % of batch }\n", "1.5 % of batch }\n  - { use: mica, amount: 1 g }\n", StringComparison.Ordinal),
            text);
    }

    [Fact]
    public void A_material_is_taken_out_with_its_line_and_comments_above_it_stay()
    {
        var text = YamlEdit.Remove(Recipe, ["materials", 0]);
        Assert.Equal(Recipe.Replace("  - { use: clear-base,  amount: 900 g }   # 1 block\n", "", StringComparison.Ordinal), text);
    }

    [Fact]
    public void Two_materials_change_places()
    {
        var text = YamlEdit.Swap(Recipe, ["materials"], 0);
        Assert.Equal("castor-oil", YamlEdit.Get(text, "materials", 0, "use"));
        Assert.Equal("clear-base", YamlEdit.Get(text, "materials", 1, "use"));
        Assert.Equal(Recipe, YamlEdit.Swap(text, ["materials"], 0));
    }

    [Fact]
    public void A_list_in_brackets_grows_and_shrinks_in_its_brackets()
    {
        var two = YamlEdit.Add(Recipe, ["claims"], "\"Smells of hay\"");
        Assert.Contains("claims: [\"Leaves skin soft\", \"Smells of hay\"]\n", two, StringComparison.Ordinal);
        Assert.Equal(Recipe, YamlEdit.Remove(two, ["claims", 1]));
        Assert.Contains("claims: [\"Smells of hay\"]\n", YamlEdit.Remove(two, ["claims", 0]), StringComparison.Ordinal);
        Assert.Equal(Recipe.Replace("claims: [\"Leaves skin soft\"]\n", "", StringComparison.Ordinal),
            YamlEdit.Remove(Recipe, ["claims", 0]));
    }

    [Fact]
    public void A_suppliers_line_gets_and_loses_its_share()
    {
        const string material = "contains:\n  - Water\n  - Glycerin: 15-25 %   # by phone\n";
        Assert.Equal("contains:\n  - Water\n  - Glycerin: 20 %   # by phone\n",
            YamlEdit.Set(material, ["contains", 1, "Glycerin"], "20 %"));
        Assert.Equal("contains:\n  - Water\n  - Sorbitol: 15-25 %   # by phone\n",
            YamlEdit.Rename(material, ["contains", 1, "Glycerin"], "Sorbitol"));
        Assert.Equal("contains:\n  - Aqua\n  - Glycerin: 15-25 %   # by phone\n", YamlEdit.Set(material, ["contains", 0], "Aqua"));
    }

    [Theory]
    [InlineData("limits: { category 9: 4.5 % }\n", "limits: { category 9: 4.5 %, category 1: 0.5 % }\n")]
    [InlineData("limits:\n  category 9: 4.5 %  # 49th\nname: X\n", "limits:\n  category 9: 4.5 %  # 49th\n  category 1: 0.5 %\nname: X\n")]
    [InlineData("name: X\n", "name: X\nlimits: { category 1: 0.5 % }\n")]
    [InlineData("name: X\nlimits:\n", "name: X\nlimits: { category 1: 0.5 % }\n")]
    [InlineData("name: X", "name: X\nlimits: { category 1: 0.5 % }\n")]
    public void A_limit_is_added_however_the_others_are_written(string text, string becomes) =>
        Assert.Equal(becomes, YamlEdit.Set(text, ["limits", "category 1"], "0.5 %", ["name", "limits"]));

    [Fact]
    public void A_text_of_several_lines_is_replaced_whole()
    {
        const string text = "directions: |\n  Wet the bar.\n  Rinse.\nnet: 4 oz\n";
        Assert.Equal("directions: Use it up\nnet: 4 oz\n", YamlEdit.Set(text, ["directions"], "Use it up"));
        Assert.Equal("net: 4 oz\n", YamlEdit.Remove(text, ["directions"]));
        const string folded = "directions: >-\n  Wet the bar.\n  Rinse.\n\n# net\nnet: 4 oz\n";
        Assert.Equal("4 oz", YamlEdit.Get(YamlEdit.Set(folded, ["directions"], "Use it"), "net"));
    }

    [Fact]
    public void Line_ends_of_another_system_stay()
    {
        const string text = "name: X\r\npieces: 8\r\n";
        Assert.Equal("name: Z\r\npieces: 8\r\n", YamlEdit.Set(text, ["name"], "Z"));
        Assert.Equal("name: X\r\npieces: 8\r\nnet: 4 oz\r\n", YamlEdit.Set(text, ["net"], "4 oz", Order));
        Assert.Equal("name: X\r\n", YamlEdit.Remove(text, ["pieces"]));
    }

    [Fact]
    public void The_first_of_a_list_is_begun_where_there_was_none()
    {
        Assert.Equal("name: X\nwarnings:\n  - Keep out of eyes\n", YamlEdit.Add("name: X\n", ["warnings"], "Keep out of eyes"));
        Assert.Equal("name: X\nwarnings:\n  - Keep out of eyes\n", YamlEdit.Add("name: X\nwarnings:\n", ["warnings"], "Keep out of eyes"));
        Assert.Equal("warnings: [One, Two]\n", YamlEdit.Add("warnings: One\n", ["warnings"], "Two"));
    }

    [Fact]
    public void Whatever_is_typed_reads_back_as_typed() =>
        Gen.String[Gen.Char["abcXYZ 0189:#'\"\\{}[],&*!|>%@`-?\n\té<≤=~"], 0, 30].Sample(typed =>
        {
            foreach (var text in new[] { Recipe, "name: X\n", "{ name: X }\n" })
            {
                var set = YamlEdit.Set(text, ["name"], typed);
                Assert.Equal(typed, YamlEdit.Get(set, "name"));
                Assert.Equal(typed.Trim(), ((TextNode)YamlFile.ReadText(set, "x")["name"]!).Text);
            }
            Assert.Equal(typed, YamlEdit.Get(YamlEdit.Set(Recipe, ["materials", 1, "amount"], typed), "materials", 1, "amount"));
            Assert.Equal(typed, YamlEdit.Get(YamlEdit.Set(Recipe, ["directions"], typed, Order), "directions"));
        }, iter: 2000);
}
