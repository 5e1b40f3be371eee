using System.Globalization;
using System.Text;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Benchmarks;

/// <summary>What to ask the suppliers: bases whose lists have no figures, with an oil and a scent
/// weighed in, and the whole workshop at once.</summary>
internal static class AskPart
{
#if DEBUG
    private const bool IsDebug = true;
#else
    private const bool IsDebug = false;
#endif

    public static string Measure()
    {
        var text =
            new StringBuilder(
                $"{Machine.Line()} In this process, warm, the best of several; two bases of bare lists, an oil and a scent. The "
                    + $"declaration holds the estimate; the questions hold the proof of "
                    + $"every product.{(IsDebug ? " A debug build." : "")}\n\n| ingredients | products | open pairs | declaration | "
                    + $"questions | times the declarations | their answers would settle |\n| ---: | ---: | ---: | ---: | ---: | "
                    + $"---: | ---: |\n");
        foreach (var (ingredients, products) in new[] { (12, 1), (30, 1), (60, 1), (30, 10), (30, 40) })
        {
            var folder = Write(ingredients, products);
            var day = BenchWorkshop.Day;
            SupplierQuestions Ask() => SupplierQuestions.ForAll(Workshop.Open(folder), day);
            Declaration Declare()
            {
                var workshop = Workshop.Open(folder);
                var batch = BatchFormula.Of(workshop, workshop.Recipe("bar-1"));
                return DeclarationBuilder.Build(workshop, batch, ProductKindOf.Recipe(batch.Recipe), Market.Us, day);
            }
            Timing.WarmUp(() => Ask(), () => Declare());
            var questions = Ask();
            var (declaring, asking) = (Timing.Best(() => Declare()), Timing.Best(() => Ask()));
            text.Append(CultureInfo.InvariantCulture,
                $"| {ingredients} | {products} | {questions.Open} | {Figures.Time(declaring)} | {Figures.Time(asking)} | {asking / (products * declaring):0.0} | {(questions.Open == 0 ? 1 : questions.Settled / questions.Open):P0} |\n");
        }
        return text.ToString();
    }

    private static string Write(int ingredients, int products)
    {
        var folder = Scratch.Path($"ask-{ingredients}-{products}");
        // What a base may hold, in the dictionary's order: which names they are matters little to the work.
        var names = IngredientDictionary.Shipped.Entries
            .Where(e => !e.IsColourant
                && !e.IsAllergen
                && e.Roles[0] is IngredientRole.Soap or IngredientRole.Surfactant or IngredientRole.Humectant or IngredientRole.Emollient
                    or IngredientRole.Emulsifier or IngredientRole.Preservative)
            .Select(e => e.Us).Where(n => !n.Contains("Castor", StringComparison.Ordinal)).Distinct().Take(ingredients - 2)
            .Chunk((ingredients - 1) / 2).ToArray();
        Put("workshop.yaml",
            "business: Quarry Lane Suds\nplace: { street: 3 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\" }\nmarket: us\n");
        for (var i = 0; i < names.Length; i++)
            Put($"materials/base-{i}.yaml",
                $"name: Base {i}\nkind: base\nsupplier: Mill {i} Supplies\ncontains:\n{string.Concat(names[i].Select(n => $"  - \"{n}\"\n"))}");
        Put("materials/castor-oil.yaml", "name: Castor oil\nkind: oil\ncontains: Ricinus Communis Seed Oil\n");
        Put("materials/scent.yaml", "name: Scent\nkind: fragrance\ncontains: Fragrance\n");
        for (var p = 1; p <= products; p++)
        {
            var bases = string.Concat(Enumerable.Range(0, names.Length)
                .Select(i => $"  - {{ use: base-{i}, amount: {300 + (50 * i) + p} g }}\n"));
            Put($"recipes/bar-{p}.yaml",
                $"name: Bar {p}\nidentity: Bar soap\nproduct: "
                    + $"soap-bar\nmaterials:\n{bases}  - {{ use: castor-oil, amount: {10 + p} g }}\n  - {{ use: "
                    + $"scent, amount: {5 + (p % 7)} g }}\npieces: 6\n");
        }
        return folder;

        void Put(string file, string text)
        {
            var path = Path.Combine(folder, file);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
    }
}
