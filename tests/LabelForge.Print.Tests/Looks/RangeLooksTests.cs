using System.Runtime.CompilerServices;
using System.Text.Json;
using LabelForge.Measures;
using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Looks;
using LabelForge.Print.Ornaments;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Tests.Looks;

public class RangeLooksTests
{
    private static readonly string[] Ten = ["Bramble & Shea", "Peach Morning", "Beeswing", "Hayloft", "Moss Lane", "Salt Meadow",
        "Tideline", "Rainy Day", "Harbour Wall", "Winter Smoke"];

    [Fact]
    public void Ten_scents_get_ten_ornaments_and_hues_a_good_way_apart()
    {
        var looks = RangeLooks.Of([.. Ten.Select(n => Product(n))]);
        Assert.Equal(10, looks.Select(l => l.Ornament!.Family.Id).Distinct().Count());
        var hues = looks.Select(l => l.Palette.Hue).Order().ToList();
        Assert.All(hues.Zip(hues.Skip(1).Append(hues[0] + 360)), p => Assert.True(p.Second - p.First >= 20, $"{p.First} and {p.Second}"));
    }

    [Fact]
    public void A_name_says_what_its_label_shows()
    {
        var looks = RangeLooks.Of([Product("Lavender Field"), Product("Honey & Oat"), Product("Lemon Peel"), Product("Tideline")]);
        Assert.Equal(["spikes", "comb", "slices", "tide"], looks.Select(l => l.Ornament!.Family.Id));
    }

    [Fact]
    public void The_same_range_looks_the_same_every_time()
    {
        string Said() =>
        string.Join(';',
            RangeLooks.Of([.. Ten.Select(n => Product(n))])
                .Select(l => $"{l.Ornament!.Family.Id} {l.Palette.Hue:0.###} {l.Palette.Strength}"));
        Assert.Equal(Said(), Said());
    }

    [Fact]
    public void What_is_written_goes_before_what_is_proposed_and_the_others_keep_away_from_it()
    {
        var looks = RangeLooks.Of([Product("Tideline"),
            Product("Plain Bar",
                "look: { arrangement: medallion, frame: rope, types: soft, ornament: { family: tide, seed: x, density: 1.2 }, palette: { "
                    + "hue: 214 } }")]);
        Assert.Equal(("medallion", "rope", "soft", "tide", "x", 1.2),
            (looks[1].Arrangement, looks[1].Frame!.Id, looks[1].Types, looks[1].Ornament!.Family.Id, looks[1].Ornament!.Seed,
                looks[1].Ornament!.Density));
        Assert.NotEqual("tide", looks[0].Ornament!.Family.Id);
        Assert.True(Math.Abs(looks[0].Palette.Hue - 214) >= 20);
    }

    [Fact]
    public void No_ornament_may_be_wanted() => Assert.Null(RangeLooks.Of([Product("Tideline", "look: { ornament: none }")])[0].Ornament);

    [Theory]
    [InlineData("look: { arrangement: stak }", "Did you mean \"stack\"?")]
    [InlineData("look: { frame: ropes }", "rope")]
    [InlineData("look: { ornament: ferns }", "Did you mean \"fern\"?")]
    [InlineData("look: { ornament: { family: fern, density: 9 } }", "from 0.4 to 2.5")]
    [InlineData("look: { palette: { hue: 400 } }", "from 0 to 360")]
    [InlineData("look: { types: gothic }", "Known")]
    [InlineData("look: { scent: nice }", "citrus")]
    [InlineData("look: { stock: brown }", "#c9a77c")]
    [InlineData("look: { colour: red }", "palette")]
    public void A_look_that_names_what_is_not_known_is_refused_with_its_line(string look, string says)
    {
        var problem = Assert.Throws<InputException>(() => RangeLooks.Of([Product("Tideline", look)])).Problem;
        Assert.Equal(("recipes/a.yaml", 2), (problem.File, problem.Line));
        Assert.Contains(says, $"{problem.Wrong} {problem.Write}");
    }

    [Fact]
    public void A_variants_look_goes_before_its_recipes_and_that_before_the_workshops()
    {
        var shop = Read("look: { arrangement: stack, types: soft, palette: 10 }");
        var recipe = Read("look: { types: deco, ornament: fern }");
        var variant = Read("look: { palette: 200 }");
        var wish = variant.Over(recipe.Over(shop));
        Assert.Equal(("stack", "deco", "fern", "200"), (wish.Arrangement!.Text, wish.Types!.Text, wish.Ornament!.Text, wish.Hue!.Text));
    }

    [Fact]
    public void The_schema_knows_what_the_reader_knows()
    {
        var path = Path.GetFullPath(Path.Combine(Here(), "..", "..", "..", "templates", "look.schema.json"));
        using var schema = JsonDocument.Parse(File.ReadAllText(path));
        var keys = schema.RootElement.GetProperty("properties");
        IEnumerable<string> Words(JsonElement part) =>
        part.GetProperty("enum").EnumerateArray().Select(v => v.GetString()!).Order(StringComparer.Ordinal);
        Assert.Equal(LookWish.KnownKeys.Order(StringComparer.Ordinal),
            keys.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
        Assert.Equal(ArrangementFile.Known, Words(keys.GetProperty("arrangement")));
        Assert.Equal(FrameFamily.All.Select(f => f.Id).Append("none").Order(StringComparer.Ordinal), Words(keys.GetProperty("frame")));
        Assert.Equal(DesignStyle.Known, Words(keys.GetProperty("types")));
        Assert.Equal(Enum.GetNames<ScentFamily>().Select(n => n.ToLowerInvariant()).Order(StringComparer.Ordinal),
            Words(keys.GetProperty("scent")));
        Assert.Equal(OrnamentFamily.All.Select(f => f.Id).Concat(["none", "proposed"]).Order(StringComparer.Ordinal),
            Words(schema.RootElement.GetProperty("$defs").GetProperty("family")));
    }

    private static string Here([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;

    private static LookWish Read(string look) => LookWish.Read(YamlFile.ReadText("name: x\n" + look + "\n", "recipes/a.yaml"));

    private static RangeProduct Product(string name, string? look = null) =>
        new(name, name, look is null ? LookWish.None : Read(look), []);
}
