using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Files;

/// <summary>A problem names its place in a file by keys and positions, so that a field can be found without its line.</summary>
public class NodePathTests
{
    private const string Recipe = """
        name: Moss Wall
        materials:
          - { use: clear-base, amount: 900 g }
          - use: castor-oil
            amount: 27 g
        place: { street: 1 Example Lane, lines: [a, [b, c]] }
        """;

    [Fact]
    public void Every_value_knows_its_place()
    {
        var root = YamlFile.ReadText(Recipe, "moss.yaml");
        var materials = (ListNode)root["materials"]!;
        Assert.Equal("materials/1/amount", ((MapNode)materials.Items[1])["amount"]!.Path!.ToString());
        Assert.Equal("materials/0/use", ((MapNode)materials.Items[0]).Entry("use")!.Name.Path!.ToString());
        var lines = (ListNode)root.OptionalMap("place")!["lines"]!;
        Assert.Equal("place/lines/1/0", ((ListNode)lines.Items[1]).Items[0].Path!.ToString());
        Assert.Null(root.Path);
    }

    [Fact]
    public void What_is_refused_is_refused_at_its_place()
    {
        var amount = ((MapNode)((ListNode)YamlFile.ReadText(Recipe, "moss.yaml")["materials"]!).Items[1])["amount"]!;
        var problem = amount.Refuse("amount.no-unit", ("text", "27")).Problem;
        Assert.Equal(("moss.yaml", 5, "materials/1/amount", "amount.no-unit"), (problem.File, problem.Line, problem.Path, problem.Code));
    }

    [Fact]
    public void A_key_that_is_missing_has_the_place_where_it_belongs()
    {
        var place = YamlFile.ReadText(Recipe, "moss.yaml").OptionalMap("place")!;
        Assert.Equal("place/city", Assert.Throws<InputException>(() => place.Required("city", "Fairport")).Problem.Path);
    }

    [Fact]
    public void A_key_that_is_unknown_has_its_own_place() =>
        Assert.Equal("materials/1/amuont", Assert.Throws<InputException>(() =>
            ((MapNode)((ListNode)YamlFile.ReadText(Recipe.Replace("    amount: 27", "    amuont: 27", StringComparison.Ordinal),
                "moss.yaml")["materials"]!).Items[1]).OnlyKeys("A material", "use", "amount")).Problem.Path);
}
