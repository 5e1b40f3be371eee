using System.Collections.Concurrent;
using LabelForge.Checks;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Recipes.Files;
using LabelForge.Records.Books;

namespace LabelForge.Web.Workbench;

/// <summary>Goes the whole way from a recipe's text to the picture of its label.</summary>
public sealed class LabelViews(WorkshopCache shelf, BooksCache books, TemporaryDownloads papers, ServeOptions options)
{
    private const int MostKnown = 30;
    private static readonly TimeSpan BeforeOthers = TimeSpan.FromMilliseconds(150);
    private readonly ConcurrentDictionary<(string Id, LabelWish Wish),
        (Workshop Workshop, DateOnly On, int Books, string Text, LabelView View)> _last = [];
    private readonly ConcurrentDictionary<string, SemaphoreSlim> _turns = [];

    /// <summary>What it came to the last time, where nothing has changed since: a page that is opened again shows its label with its
    /// first drawing. Null where it has to be made.</summary>
    /// <param name="id">The recipe's id.</param>
    /// <param name="text">Its text, perhaps unsaved.</param>
    /// <param name="wish">How the label is wanted.</param>
    public LabelView? Known(string id, string text, LabelWish wish) =>
        _last.TryGetValue((id, wish), out var last) && ReferenceEquals(last.Workshop, shelf.Read().Workshop) && last.On == options.Today()
            // What was weighed for a lot may change without a change of the files.
            && (!wish.IsBegun || last.Books == books.Version)
            && last.Text == text && last.View.Pictures.All(p => papers.Has(p.Address)) ? last.View with { MadeAt = DateTime.Now } : null;

    /// <summary>What a recipe comes to. Never throws on what a person wrote: the view says what is wrong.</summary>
    /// <remarks>Several windows on one recipe ask the same at once: it is worked out once, and the others are given it.</remarks>
    /// <param name="id">The recipe's id.</param>
    /// <param name="text">Its text, perhaps unsaved.</param>
    /// <param name="wish">How the label is wanted.</param>
    /// <param name="stop">Set once the view is no longer wanted.</param>
    /// <param name="soon">Told the view of a recipe with scents before the others of them are
    /// judged; null where nobody waits for it.</param>
    public async Task<LabelView> OfAsync(string id, string text, LabelWish wish, CancellationToken stop, Action<LabelView>? soon = null)
    {
        try
        {
            var (workshop, trouble) = shelf.Read();
            if (workshop is null)
                return new LabelView { Problem = trouble };
            var version = books.Version;
            var first = await Alone(id, stop, () => Known(id, text, wish) ?? Remembered(First()));
            if (first.IsWhole)
                return first;
            soon?.Invoke(first);
            // Who types on does not wait for ten labels after each letter.
            if (soon is not null)
                await Task.Delay(BeforeOthers, stop);
            return await Alone(id, stop, () => Known(id, text, wish) is { IsWhole: true } known
                ? known
                : Remembered(first with { Others = Others(workshop, id, text, wish, stop), IsWhole = true }));

            LabelView First()
            {
                var job = Prepare(workshop, id, text, wish, out var changes);
                stop.ThrowIfCancellationRequested();
                var view = new LabelView { Job = job, Pictures = [.. Fits(job).Select(Draw)], LotChanges = [.. changes] };
                stop.ThrowIfCancellationRequested();
                return Checked(view, job) with { IsWhole = wish.Variant is not null || job.Product.Recipe.VariantName is null };
            }

            LabelView Remembered(LabelView made)
            {
                if (_last.Count >= MostKnown)
                    _last.Clear();
                _last[(id, wish)] = (workshop, options.Today(), version, text, made);
                return made;
            }
        }
        catch (InputException e)
        {
            return new LabelView { Problem = e.Problem };
        }
    }

    private async Task<LabelView> Alone(string id, CancellationToken stop, Func<LabelView> work)
    {
        var turn = _turns.GetOrAdd(id, _ => new SemaphoreSlim(1));
        await turn.WaitAsync(stop);
        try
        {
            return work();
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>The way from a recipe's text to its laid-out label.</summary>
    /// <exception cref="InputException">Something in it cannot be used.</exception>
    public LabelJob Prepare(Workshop workshop, string id, string text, LabelWish wish, out IReadOnlyList<string> changes)
    {
        var recipe = RecipeFile.Read(id, YamlFile.ReadText(text, $"recipes/{id}.yaml"));
        // Of a recipe with variants the first product is shown until another is chosen.
        if ((wish.Variant ?? recipe.Variants.FirstOrDefault()?.Name) is { } variant)
            recipe = recipe.Variant(variant);
        var product = Product.Planned(workshop, recipe);
        var market = wish.Market ?? workshop.Market;
        // The books are opened and read whole: not at each keystroke for a lot that nobody has begun.
        if (wish is { IsBegun: true, Lot: { } lot })
            product = LotProducts.Of(product, lot, market, options.Today());
        changes = product.Weighed?.Changes ?? [];
        return LabelJob.Prepare(product, market, wish.Design, wish.Lot, options.Today());
    }

    // A recipe stands for all its products: what is wrong with the last alone is found too.
    private ImmutableArray<OtherProduct> Others(Workshop workshop, string id, string text, LabelWish wish, CancellationToken stop)
    {
        var others = ImmutableArray.CreateBuilder<OtherProduct>();
        foreach (var variant in RecipeFile.Read(id, YamlFile.ReadText(text, $"recipes/{id}.yaml")).Variants.Skip(1))
        {
            stop.ThrowIfCancellationRequested();
            try
            {
                var job = Prepare(workshop, id, text, wish with { Variant = variant.Name }, out _);
                others.Add(new OtherProduct(variant.Name,
                    [.. RecipeCheck.Run(job.Facts).Findings.Concat(job.Declaration.Findings).Distinct()], null));
            }
            catch (InputException e)
            {
                others.Add(new OtherProduct(variant.Name, [], e.Problem));
            }
        }
        return others.ToImmutable();
    }

    private static IEnumerable<LabelLayout> Fits(LabelJob job) =>
        job.Companions.OrderBy(c => c.Key, StringComparer.Ordinal).Select(c => c.Value).Prepend(job.Fit).OfType<Fit.Fits>()
            .Select(f => f.Layout);

    private LabelPicture Draw(LabelLayout layout)
    {
        using var svg = new MemoryStream();
        LabelFile.WriteSvg(svg, layout.OnStock(), layout.Design.Id);
        return new LabelPicture(papers.Put(svg.ToArray(), "image/svg+xml", "label.svg"), layout.Design.Id, layout.Design.Width.Millimetres,
            layout.Design.Height.Millimetres);
    }

    private static LabelView Checked(LabelView view, LabelJob job)
    {
        try
        {
            return view with { Report = RecipeCheck.Run(job.Facts) };
        }
        catch (InputException e)
        {
            return view with { Problem = e.Problem };
        }
    }
}
