using System.Text;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>
/// Suppliers' papers: lists, tables, certificates. Always holds: a paper is read or refused in words; no name is empty; the
/// material's file made of a list reads back with as many ingredients as the list surely has.
/// </summary>
internal static class DeclarationTarget
{
    public static readonly string[] Words =
        ["Water (Aqua)", "Glycerin", "Ingredients: ", "INCI: ", "10-20%", "<1%", "CAS 56-81-5", "May contain: ", "+/- ", "*", "organic",
            "CI 77891", " and ", ".", "name,share\n", "Category 9: 5.2 %", "Linalool 12 %", "&", "nano", ": "];

    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    public static void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        Read(() => SuppliedText.Read(text, Matcher.Knows));
        Read(() => CsvDeclaration.Read("list.csv", text, Matcher.Knows));
        try
        {
            _ = CertificateText.Read(text, IngredientDictionary.Shipped.Allergens);
        }
        catch (InputException)
        {
        }
    }

    private static void Read(Func<SuppliedList> read)
    {
        try
        {
            var list = read();
            Holds(!list.Names.IsEmpty && list.Names.All(n => n.Text.Trim().Length > 0), "no name is empty");
            // The nearest names are looked for in the whole dictionary, which takes longest of all; a few names show as much as many.
            if (list.Names.Length > 5)
                return;
            var draft = new MaterialDraft("thing", "Thing", MaterialKind.Base, ListedOrder.Label, Matcher.Match(list));
            var sure = draft.Matches.Count(m => !m.Written.MayContain);
            var back = MaterialFile.Read("thing", YamlFile.ReadText(draft.ToYaml(IngredientDictionary.Shipped), "materials/thing.yaml"));
            Holds(back.Contains.Length == sure, "a material's file holds every name of the list");
        }
        catch (InputException refused)
        {
            Holds(!refused.Message.StartsWith("materials/thing.yaml", StringComparison.Ordinal)
                || refused.Message.Contains("twice", StringComparison.Ordinal),
                $"what is written for the maker can be read: {refused.Message}");
        }
    }
}
