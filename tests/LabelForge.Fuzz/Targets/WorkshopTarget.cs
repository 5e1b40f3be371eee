using System.Text;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>
/// Files of a workshop: the business, a material, a recipe. Always holds: a file is read, or refused with its own
/// name in the message and words on what to write.
/// </summary>
internal static class WorkshopTarget
{
    public static readonly string[] Words =
        ["name: ", "kind: base\n", "contains:\n", "  - ", "listed: label\n", "density: 1.05 g/mL\n", "materials:\n",
            "{ use: base, amount: 9 g }", "pieces: 8\n", "net: 113 g\n", "sold as: soap\n", "variants:\n", "business: ",
            "place: { city: Fairport }\n", "market: us\n", "&a ", "*a", "!!str ", "? ", "| ", "> ", "---\n", "...\n", "- [",
            "limits: { category 9: 5 % }\n", "packs: [ { size: 5 lb, price: 31.50 } ]\n", "#"];

    public static void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        Read(f => Business.Read(YamlFile.ReadText(text, f), MarketBook.Shipped));
        Read(f => MaterialFile.Read("thing", YamlFile.ReadText(text, f)));
        Read(f => RecipeFile.Read("thing", YamlFile.ReadText(text, f)));
    }

    private static void Read(Func<string, object> read)
    {
        const string File = "recipes/thing.yaml";
        try
        {
            Holds(read(File) is not null, "a file is read or refused");
        }
        catch (InputException refused)
        {
            Holds(refused.Message.StartsWith(File, StringComparison.Ordinal), "a refusal names the file");
        }
    }
}
