using LabelForge.Quantities;

namespace LabelForge.Declarations;

/// <summary>Everything a label says, and how high its letters must be at least; where it stands is the design's affair.</summary>
public sealed record LabelContent
{
    /// <summary>The business's name as the maker trades.</summary>
    public required string BusinessName { get; init; }

    /// <summary>The product's own name, for example <c>Fen Meadow</c>.</summary>
    public required string ProductName { get; init; }

    /// <summary>The languages of its words, by ISO 639-1; none where they are not known.</summary>
    public ImmutableArray<string> Languages { get; init; } = [];

    /// <summary>The statement of identity, for example <c>Glycerin bar soap</c>.</summary>
    public required string Identity { get; init; }

    /// <summary>What it smells of, in a few words; null where the look has none.</summary>
    public string? ScentLine { get; init; }

    /// <summary>The maker's own words; null where the look has none.</summary>
    public string? OwnWords { get; init; }

    /// <summary>A claim on the front; null where the look has none.</summary>
    public string? Claim { get; init; }

    /// <summary>The price as the maker writes it; null where the look has none.</summary>
    public string? Price { get; init; }

    /// <summary>The address of the maker's page, for a code to scan; null where the look has none.</summary>
    public string? Link { get; init; }

    /// <summary>The whole net quantity statement, for example <c>Net Wt 4 oz (113 g)</c>.</summary>
    public required string NetQuantity { get; init; }

    /// <summary>What stands before the ingredients, with its colon: <c>Ingredients:</c>.</summary>
    public required string IngredientHeading { get; init; }

    /// <summary>The names in label order; they are joined with a comma and a space, the last without a full stop.</summary>
    public required ImmutableArray<string> Ingredients { get; init; }

    /// <summary>Directions for use, or null.</summary>
    public string? Directions { get; init; }

    /// <summary>Warnings, each a sentence or more; none where empty.</summary>
    public ImmutableArray<string> Warnings { get; init; } = [];

    /// <summary>Who answers for the product and where: <c>Rooksedge Bodycare, 1 Example Lane, Fairport, ME 00000</c>.</summary>
    public required string Responsible { get; init; }

    /// <summary>How to reach the business, or null.</summary>
    public string? Contact { get; init; }

    /// <summary>The lot code as a person reads it, or null.</summary>
    public string? Lot { get; init; }

    /// <summary>The months in which to use up what was opened, as <c>12M</c>; null where the recipe gives none.</summary>
    public string? PeriodAfterOpening { get; init; }

    /// <summary>The date of minimum durability with the words before it; null where the recipe gives none.</summary>
    public string? BestBefore { get; init; }

    /// <summary>The country of origin with the words before it; null where the recipe gives none.</summary>
    public string? Origin { get; init; }

    /// <summary>How many pieces a carton holds, in words; null where none is packed.</summary>
    public string? CartonCount { get; init; }

    /// <summary>The raw text that the lot's barcode encodes, or null.</summary>
    public string? LotElementString { get; init; }

    /// <summary>The market whose rules the label follows.</summary>
    public required Market Market { get; init; }

    /// <summary>The day whose rules it follows.</summary>
    public required DateOnly On { get; init; }

    /// <summary>The principal display panel; null where only the design's own is known.</summary>
    public Panel? PrincipalPanel { get; init; }

    /// <summary>The least letter heights, each with where it is written.</summary>
    public required LetterFloors Floors { get; init; }
}
