namespace LabelForge.Print.Designs;

/// <summary>What an element of a design says.</summary>
public enum Role
{
    /// <summary>The business's trading name.</summary>
    Business,

    /// <summary>The product's own name.</summary>
    Name,

    /// <summary>The statement of identity.</summary>
    Identity,

    /// <summary>The net quantity statement.</summary>
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

    /// <summary>The lot code for a person to read.</summary>
    Lot,

    /// <summary>The lot's barcode.</summary>
    Barcode,

    /// <summary>A line of ink, for looks.</summary>
    Rule,

    /// <summary>The lot as a wide barcode for cartons: GS1-128 with the item's number, else Code 128.</summary>
    LotBarcode,

    /// <summary>The day of making as a wide barcode for cartons.</summary>
    DateBarcode,

    /// <summary>How many pieces a carton holds.</summary>
    Count,

    /// <summary>The open jar with the months in which to use up what was opened.</summary>
    PeriodAfterOpening,

    /// <summary>The date of minimum durability, after the hourglass or in words.</summary>
    BestBefore,

    /// <summary>The country of origin.</summary>
    Origin,

    /// <summary>The maker's own art.</summary>
    Art,

    /// <summary>What it smells of, in a few words: <c>blackberry, fig leaf, shea</c>.</summary>
    ScentLine,

    /// <summary>The maker's own words.</summary>
    Words,

    /// <summary>The price.</summary>
    Price,

    /// <summary>The maker's page, as a code to scan.</summary>
    Link,

    /// <summary>A claim.</summary>
    Claim,
}

/// <summary>Roles by the names that design files use.</summary>
public static class Roles
{
    /// <summary>The names, in the order of <see cref="Role"/>.</summary>
    public static IReadOnlyList<string> Names { get; } =
        ["business", "name", "identity", "net-quantity", "ingredients", "directions", "warnings", "responsible", "contact", "lot",
            "barcode", "rule", "lot-barcode", "date-barcode", "count", "period-after-opening", "best-before", "origin", "art",
            "scent-line", "words", "price", "link", "claim"];

    /// <summary>A role's name in files and messages.</summary>
    public static string NameOf(Role role) => Names[(int)role];
}
