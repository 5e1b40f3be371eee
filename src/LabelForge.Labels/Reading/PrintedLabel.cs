using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>A part of a label that its design may print or leave out.</summary>
public enum LabelPart
{
    /// <summary>The product's own name.</summary>
    Name,

    /// <summary>The statement of identity.</summary>
    Identity,

    /// <summary>The net quantity.</summary>
    NetQuantity,

    /// <summary>The ingredients with their heading.</summary>
    Ingredients,

    /// <summary>Directions for use.</summary>
    Directions,

    /// <summary>Warnings.</summary>
    Warnings,

    /// <summary>Who answers for the product, and where.</summary>
    Responsible,

    /// <summary>How to reach the business.</summary>
    Contact,

    /// <summary>The lot.</summary>
    Lot,

    /// <summary>The open jar.</summary>
    PeriodAfterOpening,

    /// <summary>The date of minimum durability.</summary>
    BestBefore,

    /// <summary>The country of origin.</summary>
    Origin,
}

/// <summary>Puts together what a workshop's own label says: of what was meant, only what is printed.</summary>
internal sealed class PrintedLabel
{
    private readonly StringBuilder text = new();
    private readonly Dictionary<LabelPart, TextSpan> spans = [];

    /// <summary>The statement of a label of one's own.</summary>
    /// <param name="content">What it is to say.</param>
    /// <param name="declaration">Its ingredients.</param>
    /// <param name="recipe">The recipe, whose claims stand on it too.</param>
    /// <param name="kind">The product's kind.</param>
    /// <param name="workshop">The workshop whose label it is.</param>
    /// <param name="printed">The parts that are printed, on it or on a label beside it; null
    /// where it is not laid out, so that all are taken as printed.</param>
    public static LabelStatement Of(LabelContent content, Declaration declaration, Recipe recipe, ProductKind kind, Workshop workshop,
        ImmutableHashSet<LabelPart>? printed)
    {
        var label = new PrintedLabel();
        label.Add(LabelPart.Name, content.ProductName, printed);
        label.Add(LabelPart.Identity, content.Identity, printed);
        label.Add(LabelPart.NetQuantity, content.NetQuantity, printed);
        label.Add(LabelPart.Directions, content.Directions, printed);
        foreach (var claim in recipe.Claims)
            label.Line(claim);
        label.Add(LabelPart.Warnings, string.Join("\n", content.Warnings), printed);
        label.Add(LabelPart.Ingredients,
            content.Ingredients.IsEmpty ? null : $"{content.IngredientHeading} {string.Join(", ", content.Ingredients)}.", printed);
        label.Add(LabelPart.Responsible, content.Responsible, printed);
        label.Add(LabelPart.Contact, content.Contact, printed);
        label.Add(LabelPart.Lot, content.Lot is { } lot ? $"Lot {lot}" : null, printed);
        label.Add(LabelPart.BestBefore, content.BestBefore, printed);
        label.Add(LabelPart.PeriodAfterOpening, content.PeriodAfterOpening, printed);
        label.Add(LabelPart.Origin, content.Origin, printed);
        return label.Statement(content, declaration, recipe, kind, workshop);
    }

    private LabelStatement Statement(LabelContent content, Declaration declaration, Recipe recipe, ProductKind kind, Workshop workshop)
    {
        var business = workshop.Business;
        var place = business.Place;
        var says = LabelText.Of(text.Append('.').ToString(), recipe.File, isMeasured: true);
        var quantities = spans.TryGetValue(LabelPart.NetQuantity, out var net)
            ? NetQuantityReader.Read(content.NetQuantity).Select(q => q with { Span = net }).ToImmutableArray()
            : [];
        var shown = spans.ContainsKey(LabelPart.Responsible);
        var country = place.Country?.Trim().ToUpperInvariant();
        var words = new[] { recipe.Name, content.Identity, content.Directions }.Concat(recipe.Claims).Concat(content.Warnings)
            .Where(t => !string.IsNullOrWhiteSpace(t));
        return new(
            says,
            spans.TryGetValue(LabelPart.Identity, out var identity) ? new IdentityRead(identity, content.Identity, kind) : null,
            quantities,
            spans.TryGetValue(LabelPart.Ingredients, out var list)
                ? new IngredientListRead(list, content.IngredientHeading, Items(declaration, workshop.Dictionary))
                : null,
            shown
                ? new BusinessRead([spans[LabelPart.Responsible]], business.Name, null, place.Street, place.City, place.Region,
                    place.Postcode, null)
                : new([], null, null, null, null, null, null, null),
            spans.TryGetValue(LabelPart.Contact, out var contact)
                ? new ContactRead([contact], Given(business.Phone), Given(business.Email), Given(business.Web))
                : new([], [], [], []),
            spans.TryGetValue(LabelPart.Lot, out var lot) ? new LotRead(lot, content.Lot!) : null,
            spans.ContainsKey(LabelPart.Origin) ? recipe.Words.Origin : null,
            string.Join(".\n", words))
        {
            Dictionary = workshop.Dictionary,
            Own = business,
            Addresses = shown && place.Line.Length > 0
                ? [new AddressRead(spans[LabelPart.Responsible], business.Name, place.Line, country, place.Street is not null, null)]
                : [],
            DrawsOpenJar = spans.ContainsKey(LabelPart.PeriodAfterOpening),
            DrawsBestBefore = spans.ContainsKey(LabelPart.BestBefore),
            Cautions = string.Join("\n",
                (spans.ContainsKey(LabelPart.Warnings) ? content.Warnings : [])
                    .Append(spans.ContainsKey(LabelPart.Directions) ? content.Directions ?? "" : "")),
        };
    }

    private static ImmutableArray<IngredientRead> Items(Declaration declaration, IngredientDictionary dictionary) =>
    [
        .. declaration.Ingredients.Select(i => new IngredientRead(i.Name, dictionary.Find(i.Name), false)),
        .. declaration.MayContain.Select(n => new IngredientRead(n, dictionary.Find(n), true)),
    ];

    private static ImmutableArray<string> Given(string? way) => string.IsNullOrWhiteSpace(way) ? [] : [way];

    private void Add(LabelPart part, string? words, ImmutableHashSet<LabelPart>? printed)
    {
        if (string.IsNullOrWhiteSpace(words) || printed?.Contains(part) == false)
            return;
        spans[part] = new TextSpan(text.Length, words.Length);
        Line(words);
    }

    private void Line(string words) => text.Append(words).Append("\n\n");
}
