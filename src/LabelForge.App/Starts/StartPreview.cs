using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;

namespace LabelForge.Starts;

/// <summary>A label of a workshop that is only being answered for yet.</summary>
/// <param name="Name">The product's name.</param>
/// <param name="Layout">The label.</param>
public sealed record PreviewLabel(string Name, LabelLayout Layout);

/// <summary>Draws the labels of a start as far as the answers go. What is not answered stands on
/// them as the question that it waits for.</summary>
public static class StartPreview
{
    // More are seen once the workshop is there.
    private const int Most = 6;

    /// <summary>What stands on a label where an answer is missing.</summary>
    /// <param name="Order">In the place of the ingredients.</param>
    /// <param name="Weight">In the place of the net quantity.</param>
    public sealed record Waiting(string Order, string Weight);

    /// <summary>The labels, the first six; none before there is a name and something bought.</summary>
    /// <param name="waiting">What to write where one is missing.</param>
    /// <param name="dictionary">The names known.</param>
    /// <param name="markets">The markets known.</param>
    /// <param name="on">The day to judge by.</param>
    /// <param name="stop">Set once they are no longer wanted.</param>
    /// <exception cref="InputException">An answer cannot be used; the message says what to write.</exception>
    public static ImmutableArray<PreviewLabel> Of(StartAnswers answers, Waiting waiting, IngredientDictionary dictionary,
        MarketBook markets, DateOnly on, CancellationToken stop = default)
    {
        answers = Readable(answers);
        var missing = WorkshopStart.Asked(answers).Where(a => string.IsNullOrWhiteSpace(answers.Amounts.GetValueOrDefault(a.Key)))
            .ToArray();
        // Only to have a batch at all: nothing that follows from these figures is shown.
        var filled = answers with
        {
            Amounts = answers.Amounts
            .SetItems(missing.Select((m, i) => KeyValuePair.Create(m.Key, i == 0 ? "500 g" : "5 g")))
        };
        var (noOrder, noWeight) = (missing.Length > 0, missing.Length > 0 || string.IsNullOrWhiteSpace(answers.Pieces));
        if (noWeight)
            filled = filled with { Pieces = "1", Net = string.IsNullOrWhiteSpace(answers.Net) || noOrder ? "10 g" : answers.Net };
        var folder = Directory.CreateTempSubdirectory("labelforge-start-").FullName;
        try
        {
            WorkshopStart.WriteTo(folder, WorkshopStart.Files(filled, dictionary, markets));
            var workshop = Workshop.Open(folder, dictionary, markets);
            var labels = ImmutableArray.CreateBuilder<PreviewLabel>();
            foreach (var product in workshop.ProductsOf(WorkshopStart.Products(answers).Recipe).Take(Most))
            {
                stop.ThrowIfCancellationRequested();
                if (One(product, noOrder ? waiting.Order : null, noWeight ? waiting.Weight : null, on) is { } layout)
                    labels.Add(new(product.Recipe.Name, layout));
            }
            return labels.ToImmutable();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // What cannot be read yet is told at its field, and waits as what is not there.
    private static StartAnswers Readable(StartAnswers answers)
    {
        var scents = ScentLine.Read(answers.Scents);
        return answers with
        {
            Contact = answers.Contact.Trim().Length > 0 && ContactWay.Parse(answers.Contact).IsValue ? answers.Contact : "",
            Amounts = answers.Amounts.Where(a => Amount.Parse(a.Value).IsValue).ToImmutableDictionary(),
            Pieces = PlainFigure.Whole(answers.Pieces.Trim()) is > 0 and var pieces ? answers.Pieces : "",
            Net = Amount.Parse(answers.Net).IsValue ? answers.Net : "",
            Scents = ScentLine.Wrong(scents) is null
                ? answers.Scents
                : string.Join('\n',
                    scents.DistinctBy(s => s.Name, StringComparer.OrdinalIgnoreCase)
                        .Select(s => string.Join(", ", new[] { s.Name, s.Fragrance, s.ColourGood?.Material.Name }.OfType<string>()))),
        };
    }

    private static LabelLayout? One(Product product, string? order, string? weight, DateOnly on)
    {
        var job = LabelJob.Prepare(product, product.Workshop.Market, null, order is null && weight is null ? new LotCode(on, 1) : null,
            on);
        if (job.Fit is not Fit.Fits { Layout: var layout })
            return null;
        if (order is null && weight is null)
            return layout;
        var content = job.Content with
        {
            Ingredients = order is null ? job.Content.Ingredients : [order],
            NetQuantity = weight ?? job.Content.NetQuantity,
        };
        return LabelFitter.Fit(layout.Design, content) is Fit.Fits fits ? fits.Layout : layout;
    }
}
