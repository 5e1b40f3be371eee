using LabelForge.Declarations;
using LabelForge.Print.Output;
using LabelForge.Recipes.Files;
using LabelForge.Web.Editing;

namespace LabelForge.Cli.Verbs;

/// <summary><c>ask</c>: one message a supplier with the fewest questions that settle most of what
/// is open, over the whole workshop or for one recipe.</summary>
internal static class AskVerb
{
    public static Command Build()
    {
        var verb = new Verb("ask",
            "One message a supplier: the fewest facts that settle most of the order of ingredients, and where the market wants allergens "
                + "named, the certificates that are missing");
        var recipe = verb.Recipe(required: false);
        recipe.Description = "Only for this recipe: its file, or its id in the workshop (default: every product of the workshop)";
        var workshop = verb.Workshop();
        var market = verb.Market();
        var format = verb.Format();
        var asked = verb.Option<bool>("--asked",
            "Write down in the materials that their suppliers were asked today: labelforge today tells it, and asks about "
                + "others first");
        return verb.Runs(r =>
        {
            var (questions, folder) = Questions(r.GetValue(recipe), r.GetValue(workshop), r.GetValue(market));
            if (r.GetValue(format) == "json")
                JsonOut.Write(AskReport.Data(questions));
            else if (questions is { Open: 0, Letters.IsEmpty: true })
                Console.WriteLine("Nothing to ask: the order of every product is proved from what the suppliers say.");
            else if (questions.Letters.IsEmpty)
                Console.WriteLine(
                    $"{questions.Open} pairs are open, and no single figure of a supplier settles them; labelforge declare "
                        + $"--explain shows each.");
            else
                AskReport.Write(questions);
            if (r.GetValue(asked))
                WriteDown(questions, folder);
            return Exit.Done;
        });
    }

    private static void WriteDown(SupplierQuestions questions, string folder)
    {
        var day = Shared.Date(null).ToIso();
        foreach (var material in questions.Letters.SelectMany(l => l.Questions).Select(q => q.Material).DistinctBy(m => m.Id))
        {
            var path = Path.Combine(folder, "materials", $"{material.Id}.yaml");
            var text = YamlEdit.Set(File.ReadAllText(path), [MaterialFile.AskedKey], day);
            AtomicFile.Write(path, text);
            Console.Error.WriteLine($"{material.File}: asked: {day}");
        }
    }

    private static (SupplierQuestions Questions, string Folder) Questions(string? recipe, string? workshop, string? market)
    {
        var today = Shared.Date(null);
        if (recipe is null)
        {
            var all = Shipped.Open(workshop ?? Directory.GetCurrentDirectory());
            return (SupplierQuestions.ForAll(all, today, market is null ? null : Shared.MarketOf(market, all)), all.Folder);
        }
        var products = Shared.Products(recipe, workshop);
        return (SupplierQuestions.For(products, Shared.MarketOf(market, products[0].Workshop).On(today)), products[0].Workshop.Folder);
    }
}
