using LabelForge.Checks;
using LabelForge.Declarations;
using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Looks;
using LabelForge.Quantities;

namespace LabelForge.Print.Jobs;

/// <summary>The label of several products in one package: what it holds in all, and the ingredients of each product by its name.</summary>
/// <remarks>
/// A job as any label's: laid out, judged and printed in the same way. Each product is judged by what of it stands on the
/// package, and the package's own statements once.
/// </remarks>
public static class SetLabel
{
    /// <summary>The design of such a label.</summary>
    public const string Design = "gift-set";

    /// <summary>Goes the whole way for a set.</summary>
    /// <param name="lot">The package's own lot; null where it has none, and the pieces in it carry theirs.</param>
    /// <param name="on">The date to judge by.</param>
    /// <param name="names">In whose words the ingredients are named.</param>
    /// <exception cref="InputException">A product is not known, or something in the workshop is wrong.</exception>
    public static LabelJob Prepare(Workshop workshop, GiftSet set, Market market, LotCode? lot, DateOnly on,
        NameStyle names = NameStyle.Market)
    {
        (Product Product, int Pieces,
            LabelJob Job)[] each = [.. GiftSet.Whole(set).Products(workshop)
                .Select(p => (p.Product, p.Pieces, LabelJob.Prepare(p.Product, market, null, null, on, names)))];
        var design = CardDesign.Load(Design);
        var front = design.Panels.First(p => p.Principal);
        var panel = set.Package?.PrincipalPanel(market.On(on)) ?? Panel.Rectangle(front.Width, front.Height);
        var net =
            SetQuantity.Of(
                [
                    .. each.Select(e => new SetHolds(e.Job.Content.ProductName, e.Job.Kind.Id, PieceQuantity.Of(e.Job.Batch, e.Job.Kind),
                        e.Pieces))], market, on);
        var first = each[0].Job;
        var content = first.Content with
        {
            ProductName = set.Name,
            Identity = set.Identity
                ?? $"Set of {set.Pieces}: {string.Join(", ", each.Select(e => e.Job.Content.Identity).Distinct(StringComparer.OrdinalIgnoreCase))}",
            ScentLine = set.Look.Line?.Text,
            OwnWords = set.Look.Words?.Text,
            Claim = set.Look.Claim?.Text,
            Price = set.Look.Price?.Text,
            Lot = lot?.ToString(),
            LotElementString = null,
            NetQuantity = net.Statement,
            // Each product's list stands behind its name: the order of weight holds within a product and not across them.
            Ingredients = Lists([.. each.Select(e => (e.Job.Content.ProductName, e.Job.Content.Ingredients))]),
            Directions = Joined(each.Select(e => e.Job.Content.Directions).OfType<string>()),
            Warnings = [.. each.SelectMany(e => e.Job.Content.Warnings).Distinct()],
            PrincipalPanel = panel,
            Floors = LetterFloors.For(market, net.Largest, panel, set.Package, on),
        };
        var fit = Fitted(workshop, set, design, content, [.. each.Select(e => e.Product)]);
        var job = first with
        {
            Content = content,
            Fit = fit,
            Companions = ImmutableDictionary<string, Fit>.Empty,
            IsPackageKnown = set.Package is not null,
        };
        return job with { InSet = [.. each.Select(e => (e.Product, Judged(job, e.Job, set)))] };
    }

    // A list ends with a semicolon before the next product's name; where one list is printed, the name says nothing.
    private static ImmutableArray<string> Lists(ImmutableArray<(string Product, ImmutableArray<string> Names)> of)
    {
        var all = ImmutableArray.CreateBuilder<string>();
        foreach (var (product, names) in of)
        {
            if (of.Length == 1)
                return names;
            if (names.IsEmpty)
                continue;
            var first = $"{product}: {names[0]}";
            if (all.Count > 0)
                all[^1] = $"{all[^1]}; {first}";
            else
                all.Add(first);
            all.AddRange(names[1..]);
        }
        return all.ToImmutable();
    }

    // What of one product stands on the package, and what stands there for all; the set's own name promises for each of them.
    private static RecipeFacts Judged(LabelJob set, LabelJob own, GiftSet named)
    {
        var recipe = own.Batch.Recipe;
        return (set with { Product = own.Product, Kind = own.Kind, Declaration = own.Declaration }).Facts with
        {
            Batch = own.Batch with { Recipe = recipe with { Name = named.Name } },
            Content = set.Content with { Ingredients = own.Content.Ingredients },
            Finished = FinishedProduct.Of(own.Workshop, own.Batch),
            IsOfSet = true,
        };
    }

    // In its own look, else in one proposed from its name and what is in it; plain where nobody asked for a look and that has no room.
    private static Fit Fitted(Workshop workshop, GiftSet set, LabelDesign design, LabelContent content, ImmutableArray<Product> products)
    {
        var look =
            RangeLooks.Of([new RangeProduct(set.Id, set.Name, set.Look.Over(workshop.Business.Look),
                [.. products.SelectMany(p => p.Batch.Lines.Select(l => l.Material)).DistinctBy(m => m.Id)])])[0];
        var link = set.Look.Link?.Text ?? TableLink.Of(workshop, products[0].Recipe);
        var extras = TableLink.Drawn(link);
        content = content with { Link = link };
        var looked = LabelFitter.Fit(design.In(RangeFit.Over(design, look, [content], null, extras)), content, null, extras);
        return looked is Fit.Fits || set.Look != LookWish.None ? looked : LabelFitter.Fit(design, content, null, extras);
    }

    private static string? Joined(IEnumerable<string> texts) =>
        texts.Distinct().ToArray() is { Length: > 0 } all ? string.Join(' ', all) : null;
}
