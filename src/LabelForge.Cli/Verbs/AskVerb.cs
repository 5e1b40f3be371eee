using System.CommandLine;
using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Recipes;

namespace LabelForge.Cli.Verbs;

/// <summary><c>ask</c>: one message a supplier with the fewest questions that settle most of what is open, over the whole workshop or for one recipe.</summary>
internal static class AskVerb
{
    public static Command Build()
    {
        var recipe = Shared.RecipeArgument(required: false);
        recipe.Description = "Only for this recipe: its file, or its id in the workshop (default: every product of the workshop)";
        var workshop = Shared.Workshop();
        var market = Shared.Market();
        var format = Shared.Format();
        var verb = new Command("ask", "One message a supplier: the fewest facts that settle most of the order of ingredients, and where the market wants allergens named, the certificates that are missing") { recipe, workshop, market, format };
        verb.SetAction(r => Exit.Run(() =>
        {
            var questions = Questions(r.GetValue(recipe), r.GetValue(workshop), r.GetValue(market));
            if (r.GetValue(format) == "json")
                JsonOut.Write(AskReport.Data(questions));
            else if (questions is { Open: 0, Letters.IsEmpty: true })
                Console.WriteLine("Nothing to ask: the order of every product is proved from what the suppliers say.");
            else if (questions.Letters.IsEmpty)
                Console.WriteLine($"{questions.Open} pairs are open, and no single figure of a supplier settles them; labelforge declare --explain shows each.");
            else
                AskReport.Write(questions);
            return Exit.Done;
        }));
        return verb;
    }

    private static SupplierQuestions Questions(string? recipe, string? workshop, string? market)
    {
        var today = Shared.Date(null);
        if (recipe is null)
        {
            var all = Workshop.Open(workshop ?? Directory.GetCurrentDirectory());
            return SupplierQuestions.ForAll(all, today, market is null ? null : Shared.MarketOf(market));
        }
        var products = Shared.Products(recipe, workshop);
        return SupplierQuestions.For(products, Shared.MarketOf(market, products[0].Workshop).On(today));
    }
}
