using LabelForge.Checks;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Output;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>A product that looks are tried on, as its text stands.</summary>
/// <param name="Id">The recipe's id.</param>
/// <param name="Text">Its text.</param>
/// <param name="Variant">Which of its scents, from 0; null for a recipe without any.</param>
/// <param name="Wish">How its label is wanted.</param>
/// <param name="Before">The look that it has.</param>
/// <param name="Language">The language in which it is told what is wrong.</param>
public sealed record LookSubject(string Id, string Text, int? Variant, LabelWish Wish, LookTry Before, string Language);

/// <summary>A look tried on a product.</summary>
/// <param name="Of">The look.</param>
/// <param name="Layout">The label in it; null where it does not fit.</param>
/// <param name="Whole">Where its picture is served.</param>
/// <param name="Front">Where the picture of its front is.</param>
/// <param name="Wrong">What a rule requires that it does not keep, or why there is none; null where nothing is wrong.</param>
/// <param name="Advice">What would be better.</param>
public sealed record LookDraft(LookTry Of, LabelLayout? Layout, string? Whole, string? Front, string? Wrong, string? Advice);

/// <summary>Draws products in looks that are being tried; nothing is written.</summary>
public sealed class LookPictures(WorkshopCache shelf, LabelViews views, TemporaryDownloads papers)
{
    /// <summary>A product in a look, judged. Never throws on what a person wrote.</summary>
    public LookDraft Of(LookSubject subject, LookTry tried, CancellationToken stop)
    {
        try
        {
            if (shelf.Read() is not { Workshop: { } workshop })
                return new(tried, null, null, null, shelf.Read().Problem?.Wrong, null);
            var job = views.Prepare(workshop, subject.Id, tried.Into(subject.Text, subject.Variant, subject.Before), subject.Wish, out _);
            stop.ThrowIfCancellationRequested();
            if (job.Fit is not Fit.Fits { Layout: var layout })
                return new(tried, null, null, null,
                    job.Fit is Fit.DoesNotFit not ? PageWords.Told(not.Problem, subject.Language) : null, null);
            var must = RecipeCheck.Run(job.Facts).Findings.FirstOrDefault(f => f.Severity == Severity.Must)?.In(subject.Language);
            return new(tried, layout, Put(layout), Front(layout), must is (var message, var fix) ? $"{message} {fix}" : null,
                string.Join(' ', job.LeftOut) is { Length: > 0 } advice ? advice : null);
        }
        catch (InputException e)
        {
            return new(tried, null, null, null, PageWords.Told(e.Problem, subject.Language), null);
        }
    }

    /// <summary>The front of a product in a look; null where the look falls back to another, or does not fit.</summary>
    public string? FrontOf(LookSubject subject, LookTry tried, CancellationToken stop)
    {
        try
        {
            stop.ThrowIfCancellationRequested();
            return shelf.Read().Workshop is { } workshop
                && views.Prepare(workshop, subject.Id, tried.Into(subject.Text, subject.Variant, subject.Before), subject.Wish,
                    out _).Fit is Fit.Fits { Layout: var layout }
                && layout.Design.Look?.Arrangement == tried.Arrangement ? Front(layout) : null;
        }
        catch (InputException)
        {
            return null;
        }
    }

    /// <summary>The fronts of a workshop's products where all share the arrangement, frame and
    /// types of a look; each keeps its own colour and ornament.</summary>
    public IEnumerable<(string Name, string Address)> Range(OpenDocuments documents, LookTry shared, int most, CancellationToken stop)
    {
        if (shelf.Read().Workshop is not { } workshop)
            yield break;
        foreach (var (product, _) in ProductChoices.Of(documents, workshop).Take(most))
        {
            stop.ThrowIfCancellationRequested();
            if (One(documents, workshop, product, shared) is { } front)
                yield return (ProductChoices.Name(documents, product), front);
        }
    }

    private string? One(OpenDocuments documents, Workshop workshop, string product, LookTry shared)
    {
        var at = product.IndexOf('/');
        var (id, variant) = at < 0 ? (product, null) : (product[..at], product[(at + 1)..]);
        try
        {
            if (documents.Open(OpenDocuments.Recipes, id) is not { Problem: null } file)
                return null;
            var text = LookTry.OutOf(file.Text);
            int? index = variant is null ? null : Array.IndexOf(ProductChoices.Variants(text), variant);
            var without = shared with { Arrangement = "", Frame = "", Types = "" };
            return views.Prepare(workshop, id, shared.Into(text, index, without), new LabelWish(Variant: variant),
                out _).Fit is Fit.Fits { Layout: var layout } ? Front(layout) : null;
        }
        catch (InputException)
        {
            return null;
        }
    }

    private string Put(LabelLayout layout)
    {
        using var svg = new MemoryStream();
        LabelFile.WriteSvg(svg, layout.OnStock(), layout.Design.Id);
        return papers.Put(svg.ToArray(), "image/svg+xml", "label.svg");
    }

    private string Front(LabelLayout layout) => papers.Put(FrontPicture.Of(layout).Svg, "image/svg+xml", "front.svg");
}
