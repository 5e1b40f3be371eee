using System.CommandLine;
using LabelForge.Declarations;
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
        var format = Shared.Format();
        var verb = new Command("ask", "One message a supplier: the fewest facts that settle most of the order of ingredients") { recipe, workshop, format };
        verb.SetAction(r => Exit.Run(() =>
        {
            var (products, today) = (r.GetValue(recipe) is { } named ? Shared.Products(named, r.GetValue(workshop)) : [], Shared.Date(null));
            var questions = products is [var first, ..]
                ? SupplierQuestions.For(products, Shared.MarketOf(null, first.Workshop.Business.Market).On(today))
                : SupplierQuestions.ForAll(Workshop.Open(r.GetValue(workshop) ?? Directory.GetCurrentDirectory()), today);
            if (r.GetValue(format) == "json")
                JsonOut.Write(AskReport.Data(questions));
            else if (questions.Open == 0)
                Console.WriteLine("Nothing to ask: the order of every product is proved from what the suppliers say.");
            else if (questions.Letters.IsEmpty)
                Console.WriteLine($"{questions.Open} pairs are open, and no single figure of a supplier settles them; labelforge declare --explain shows each.");
            else
                AskReport.Write(questions);
            return Exit.Done;
        }));
        return verb;
    }
}
