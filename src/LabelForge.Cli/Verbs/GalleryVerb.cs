using LabelForge.Files;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>gallery</c>: a product in every arrangement, or without one the whole range as it
/// would be printed, at actual size.</summary>
internal static class GalleryVerb
{
    public static Command Build()
    {
        var verb = new Verb("gallery",
            "A product in every arrangement, at actual size; without RECIPE, every product of the workshop as it would be printed");
        var named = verb.Recipe(required: false);
        var folder = verb.Workshop();
        var market = verb.Market();
        var design = verb.Design();
        var variant = verb.Variant();
        var on = verb.On();
        var format = verb.Format();
        var output = new OutputOption("The PDF to write", FileKind.Pdf).AddTo(verb);
        return verb.Runs(r =>
        {
            var path = output.Path(r);
            var day = Shared.Date(r.GetValue(on));
            var labels = r.GetValue(named) is { } recipe
                ? OfProducts(recipe, r.GetValue(folder), r.GetValue(variant), r.GetValue(market), r.GetValue(design), day)
                : OfRange(Shared.OpenFolder(r.GetValue(folder) ?? Directory.GetCurrentDirectory()), r.GetValue(market), r.GetValue(design),
                    day);
            var info = new DocumentInfo(labels.Title, day);
            ContactSheet.WritePdf(path, labels.Title, labels.All, Length.FromInches(8.5m), Length.FromInches(11m), info);
            Shared.Say(r, format, () => new JsonObject
            {
                ["file"] = path,
                ["title"] = labels.Title,
                ["labels"] = labels.All.ToJson(l => l.Caption),
            },
                $"{path}: {labels.All.Count} labels. Under each stands what to write to have it so.");
            return Exit.Done;
        });
    }

    private static (string Title,
        IReadOnlyList<ContactLabel> All) OfProducts(string named, string? folder, string? variant, string? market, string? design,
            DateOnly on)
    {
        var products = Shared.Products(named, folder, variant);
        var all = Product.Each(products, p => Gallery.Of(p, Shared.MarketOf(market, p.Workshop), design, new LotCode(on, 1), on))
            .SelectMany(g => g).ToList();
        var name = string.Join(", ", products.Select(p => p.Recipe.Name));
        return all.Count == 0
            ? throw new InputException(products[0].Recipe.File, 0, "call.no-room", ("name", name))
            : ($"{name}, in every arrangement", [.. all.Select(g => new ContactLabel(g.Layout, $"--design {g.Design}"))]);
    }

    private static (string Title, IReadOnlyList<ContactLabel> All) OfRange(Workshop workshop, string? market, string? design, DateOnly on)
    {
        Shared.SayRecipesLeftOut(workshop);
        var (all, where) = (new List<ContactLabel>(), Shared.MarketOf(market, workshop));
        foreach (var product in WorkshopRange.Of(workshop).Products)
        {
            if (LabelJob.Prepare(Product.Planned(workshop, product), where, design, new LotCode(on, 1), on).Fit is Fit.Fits fits)
                all.Add(new ContactLabel(fits.Layout, Said(product, fits.Layout)));
            else
                Console.Error.WriteLine($"Note: {product.Name} does not fit its design, and is left out.");
        }
        return ($"The range of {workshop.Business.Name}", all);
    }

    internal static string Said(Recipe product, LabelLayout layout) => layout.Design.Look is { } look
        ? Invariant($"{product.Name}: {look.Ornament?.Family.Id ?? "none"}, hue {look.Palette.Hue:0}")
        : product.Name;
}
