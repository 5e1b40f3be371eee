using System.Diagnostics;
using System.Globalization;
using System.Text;
using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;

namespace LabelForge.Benchmarks.Page;

/// <summary>What the program itself does between a keystroke and the picture, in its parts and
/// without a browser: the name differs each time, as when it is typed.</summary>
internal static class KeystrokeParts
{
    private const int WarmUp = 30;
    private const int Counted = 60;

    private static readonly string[] Parts = ["read", "balance", "order", "range", "whole way to the layout", "checks", "picture"];

    /// <summary>The parts of each recipe as a table: milliseconds for half of the keystrokes.</summary>
    public static string Table(string folder, IReadOnlyList<string> recipes)
    {
        var workshop = Workshop.Open(folder);
        var market = MarketBook.Shipped.Find(workshop.Business.Market).OrRefuse();
        var text = new StringBuilder($"| recipe | {string.Join(" | ", Parts)} |\n| --- |{string.Concat(Parts.Select(_ => " ---: |"))}\n");
        foreach (var id in recipes)
        {
            var written = File.ReadAllText(Path.Combine(folder, "recipes", id + ".yaml"));
            var name = workshop.Recipe(id).Name;
            var times = Parts.Select(_ => new List<double>()).ToArray();
            for (var i = 0; i < WarmUp + Counted; i++)
            {
                var took = Once(workshop, market, id, written.Replace($"name: {name}", $"name: Number {i}", StringComparison.Ordinal));
                for (var p = 0; p < took.Length && i >= WarmUp; p++)
                    times[p].Add(took[p]);
            }
            text.Append(CultureInfo.InvariantCulture, $"| {id} |");
            foreach (var part in times)
                text.Append(CultureInfo.InvariantCulture, $" {part.Order().ElementAt(Counted / 2):0.0} ms |");
            text.Append('\n');
        }
        return text.ToString();
    }

    private static double[] Once(Workshop workshop, Market market, string id, string text)
    {
        var (took, clock) = (new List<double>(), Stopwatch.StartNew());
        T Timed<T>(Func<T> work)
        {
            clock.Restart();
            var made = work();
            took.Add(clock.Elapsed.TotalMilliseconds);
            return made;
        }
        var on = new DateOnly(2026, 11, 25);
        var recipe = Timed(() => RecipeFile.Read(id, YamlFile.ReadText(text, $"recipes/{id}.yaml")));
        recipe = recipe.Variants.IsEmpty ? recipe : recipe.Variant(recipe.Variants[0].Name);
        var product = Timed(() => Product.Planned(workshop, recipe));
        Timed(() => DeclarationBuilder.Build(workshop, product.Batch, product.Kind, market, on));
        Timed(() => WorkshopRange.Of(workshop, recipe));
        var job = Timed(() => LabelJob.Prepare(product, market, null, new LotCode(on, 1), on));
        Timed(() => RecipeCheck.Run(job.Facts));
        Timed(() =>
        {
            using var svg = new MemoryStream();
            foreach (var layout in job.Companions.Values.Prepend(job.Fit).OfType<Fit.Fits>().Select(f => f.Layout))
                LabelFile.WriteSvg(svg, layout, layout.Design.Id);
            return svg.Length;
        });
        return [.. took];
    }
}
