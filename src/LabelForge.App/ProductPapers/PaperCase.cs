using LabelForge.Declarations;
using LabelForge.Lots;
using LabelForge.Print.Jobs;
using LabelForge.Records.Books;

namespace LabelForge.ProductPapers;

/// <summary>What a paper is made of: a product as it stands on a day, for a market, with what the books know of it.</summary>
public sealed class PaperCase
{
    private readonly Lazy<LabelJob> _job;

    /// <summary>A case.</summary>
    /// <param name="books">The books; null where none are kept. They are asked here and not later.</param>
    /// <param name="lot">The lot on its label; null for none.</param>
    public PaperCase(Product product, Market market, DateOnly on, IBooks? books = null, LotCode? lot = null)
    {
        (Product, Market, On) = (product, market, on);
        if (books is not null)
        {
            History = books.HistoryOf(product.Recipe.Id, product.Recipe.VariantName);
            LastBatch = History.Last is { } last ? BatchRecord.Of(books, last) : null;
            OfMaterials = product.Batch.Lines.Select(l => l.Material.Id).Distinct()
                .ToDictionary(id => id, id => books.AttachmentsOf(AttachedTo.Material(id)));
        }
        Answers = PaperAnswers.Of(product.Workshop);
        Office = OfficeCategories.Of(market);
        _job = new(() => LabelJob.Prepare(product, market, null, lot, on));
    }

    /// <summary>The product.</summary>
    public Product Product { get; }

    /// <summary>The market.</summary>
    public Market Market { get; }

    /// <summary>The day.</summary>
    public DateOnly On { get; }

    /// <summary>What the books know of the product; null where no books are kept.</summary>
    public ProductHistory? History { get; }

    /// <summary>The record of its last batch; null where there is none.</summary>
    public BatchRecord? LastBatch { get; }

    /// <summary>What is attached to the materials in it, by their ids.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<Attachment>> OfMaterials { get; } =
        new Dictionary<string, IReadOnlyList<Attachment>>();

    /// <summary>What papers.yaml says.</summary>
    public PaperAnswers Answers { get; }

    /// <summary>What it says of this product.</summary>
    public ProductAnswers Own => Answers.Of(Product);

    /// <summary>How the office that is notified names kinds of product; null where its list is not held.</summary>
    public OfficeCategories? Office { get; }

    /// <summary>What it calls a product of this kind; null where nothing of its list is proposed.</summary>
    public OfficeCategory? OfOffice => Office?.ByKind.GetValueOrDefault(Product.Kind.Id);

    /// <summary>The workshop.</summary>
    public Workshop Workshop => Product.Workshop;

    /// <summary>The business.</summary>
    public Business Business => Workshop.Business;

    /// <summary>The law of the day.</summary>
    public RulesOf Rules => Market.On(On);

    /// <summary>The product's label, laid out.</summary>
    /// <exception cref="LabelForge.Measures.InputException">The product cannot be declared.</exception>
    public LabelJob Job => _job.Value;

    /// <summary>Its declaration, the same as <c>declare</c> gives.</summary>
    public Declaration Declaration => Job.Declaration;

    /// <summary>Its name as on the label.</summary>
    public string Name => Job.Content.ProductName;

    /// <summary>Whether the business is inside: in one of these countries, else in the market's territory; null where its country is not
    /// written, or nothing says what is inside.</summary>
    internal bool? IsInside(ImmutableArray<string> countries)
    {
        var inside = countries.IsEmpty ? Rules.FigureIfAny("territory")?.Word.Split(' ') : [.. countries];
        return inside is null || Business.Place.Country?.Trim().ToUpperInvariant() is not { Length: 2 } country
            ? null
            : inside.Contains(country);
    }
}
