using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Lots;
using LabelForge.Papers;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;

namespace LabelForge.Selling;

/// <summary>A card of a product, or of a set of products, laid out.</summary>
/// <param name="Product">What it is of.</param>
/// <param name="Layout">The card.</param>
public sealed record TableCard(string Product, LabelLayout Layout)
{
    /// <summary>What had a place on the card and no room, in sentences. A card says less than a label, and that is no lack.</summary>
    public IEnumerable<string> LeftOut =>
        Layout.LeftOut
            .Where(l => Layout.Design.Panels.SelectMany(p => p.Elements)
                .Any(e => l.Contains($"The {Roles.NameOf(e.Role)} has no room", StringComparison.Ordinal)));
}

/// <summary>What stands on the table beside the products, fitted as labels are.</summary>
public sealed class TableCards
{
    private readonly Workshop _workshop;
    private readonly Market _market;
    private readonly DateOnly _on;
    private readonly PaperWords _words;

    /// <summary>Cards of a workshop.</summary>
    public TableCards(Workshop workshop, Market market, DateOnly on, PaperWords? words = null) =>
        (_workshop, _market, _on, _words) = (workshop, market, on, words ?? PaperWords.English);

    /// <summary>The card of one product.</summary>
    /// <param name="card">The card's id, as in <see cref="CardDesign.Known"/>; a gift set is of several products.</param>
    /// <param name="words">The maker's own words, where the card has a place for them; null for the usual.</param>
    /// <exception cref="InputException">There is no such card, it does not fit, or it needs a price and there is none.</exception>
    public TableCard Of(string card, Product product, string? words = null)
    {
        var design = CardDesign.Load(card);
        var job = LabelJob.Prepare(product, _market, null, null, _on);
        var content = job.Content with { Price = PriceOf(product.Recipe), Lot = null, OwnWords = words };
        content = card switch
        {
            "price-tag" or "shelf-sign" when content.Price is null =>
                throw SellAtTable.NoPrice(new ProductOnTable(product.Name, product.Recipe, 0)),
            "ingredient-card" =>
                content with
                {
                    Ingredients = [.. content.Ingredients.Select(WithEveryday)],
                    OwnWords = words ?? Allergens([product], _words),
                },
            "tester-sign" => content with { OwnWords = words ?? _words["tester"] },
            _ => content,
        };
        return new TableCard(product.Name, Fitted(design, content, product.Recipe));
    }

    /// <summary>The label of a gift set: its own net contents, and the ingredients product by
    /// product. It is a label, and judged as one.</summary>
    /// <param name="lot">The package's own lot; null where the pieces in it carry theirs.</param>
    /// <exception cref="InputException">A product is not known, or there is no room for all that it must say.</exception>
    public LabelJob GiftSet(GiftSet set, LotCode? lot = null)
    {
        var job = SetLabel.Prepare(_workshop, set, _market, lot, _on);
        var left = new TableCard(set.Name, job.Fit.OrRefuse()).LeftOut.ToArray();
        return left.Length == 0
            ? job
            : throw new InputException(set.File, 0, "set.no-room", ("name", set.Name), ("list", string.Join(' ', left)));
    }

    /// <summary>The stock for a card: what the workshop has at hand and it fits, else what is nearest to its size.</summary>
    public LabelStock StockFor(LabelDesign design, string? asked) =>
        StockShelf.Of(_workshop.Folder).For(design, _workshop.Business.LabelStock, asked);

    /// <summary>What a supplier's allergen sheet names, product by product; what has no sheet is said to have none.</summary>
    public static string Allergens(IEnumerable<Product> products, PaperWords words)
    {
        var scents = products.SelectMany(p => p.Batch.Lines.Select(l => l.Material)).Where(m => m.Kind == MaterialKind.Fragrance)
            .DistinctBy(m => m.Id).ToArray();
        var named = scents.SelectMany(s => s.Allergens.Select(a => a.Name)).Distinct(StringComparer.OrdinalIgnoreCase)
            .Order(StringComparer.OrdinalIgnoreCase).ToArray();
        var unknown = scents.Where(s => s.Allergens.IsEmpty).Select(s => s.Name).ToArray();
        return string.Join(' ', new[]
        {
            scents.Length == 0 ? words["no-fragrance"] : named.Length > 0 ? words["allergens", string.Join(", ", named)] : null,
            unknown.Length > 0 ? words["no-allergen-sheet", string.Join(", ", unknown)] : null,
        }.OfType<string>());
    }

    private string WithEveryday(string name)
    {
        var known = _workshop.Dictionary.Find(name);
        // A name that everyday names hold already is plain enough: glycerin, water, fragrance.
        // Letters that stand for it are plain to nobody.
        return known?.Everyday.FirstOrDefault(e => e != e.ToUpperInvariant()) is { } everyday
            && !known.Everyday
                .Any(e => e.Contains(name, StringComparison.OrdinalIgnoreCase) || name.Contains(e, StringComparison.OrdinalIgnoreCase))
            ? $"{name} ({everyday})" : name;
    }

    private string? PriceOf(Recipe recipe) => recipe.Price is { } price ? Money(price) : null;

    private string Money(decimal price) => _workshop.Business.Currency switch
    {
        "USD" or "CAD" => Invariant($"${price:0.00}"),
        "EUR" => Invariant($"€{price:0.00}"),
        "GBP" => Invariant($"£{price:0.00}"),
        var currency => Invariant($"{price:0.00} {currency}"),
    };

    private LabelLayout Fitted(LabelDesign design, LabelContent content, Recipe recipe)
    {
        var link = TableLink.Of(_workshop, recipe);
        var extras = TableLink.Drawn(link);
        content = content with { Link = link };
        // A card wears the colours of the label that it stands beside; plain where all that it says has no room so.
        var look = WorkshopRange.Of(_workshop, recipe).LookOf(recipe);
        return LabelFitter.Fit(design.In(RangeFit.Over(design, look, [content], null, extras)), content, null, extras) is Fit.Fits looked
            && !new TableCard("", looked.Layout).LeftOut.Any()
            ? looked.Layout : LabelFitter.Fit(design, content, null, extras).OrRefuse();
    }
}
