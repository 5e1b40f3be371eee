using LabelForge.Papers;
using LabelForge.Print.Drawing;

namespace LabelForge.Print.Documents;

/// <summary>What stands on the sheet that lies on the bench while a batch is made.</summary>
public sealed record BatchSheetContent
{
    /// <summary>The product, as the recipe names it.</summary>
    public required string Title { get; init; }

    /// <summary>A line under the title: business, identity, date, as the caller likes; or null.</summary>
    public string? Subtitle { get; init; }

    /// <summary>The lot code for a person to read.</summary>
    public required string LotCode { get; init; }

    /// <summary>The lot's barcode, or null.</summary>
    public InkBlock? LotBarcode { get; init; }

    /// <summary>The materials in the order of weighing.</summary>
    public required ImmutableArray<BatchSheetMaterial> Materials { get; init; }

    /// <summary>How many pieces are expected, in words: <c>18 bars of 113 g</c>.</summary>
    public required string PiecesExpected { get; init; }

    /// <summary>The language of the sheet.</summary>
    public PaperWords Words { get; init; } = PaperWords.English;

    /// <summary>Cautions, one each.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];

    /// <summary>Notes, one each.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>A line in the foot of every page, as which broken rules it is printed over; null where there is none.</summary>
    public string? MarginNote { get; init; }
}

/// <summary>One material to weigh.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Mass">How much at this batch's size.</param>
/// <param name="AsWritten">The recipe's own words for the amount where they are not a mass, such as <c>0.5 tsp</c>; or null.</param>
public sealed record BatchSheetMaterial(string Name, Mass Mass, string? AsWritten = null);

/// <summary>Masses as a bench scale shows them; the steps are common practice.</summary>
public static class BenchMass
{
    /// <summary>Grams: to 1 g from 1000 g, 0.1 g from 10 g, 0.01 g below.</summary>
    public static string Grams(Mass mass) => Rounded(mass.Grams, mass.Grams >= 1000m ? 0 : mass.Grams >= 10m ? 1 : 2);

    /// <summary>Ounces: to 0.01 oz from 1 oz, 0.001 oz below.</summary>
    public static string Ounces(Mass mass) => Rounded(mass.Ounces, mass.Ounces >= 1m ? 2 : 3);

    // What is there but rounds to nothing is shown as less than the last step, not as none.
    private static string Rounded(decimal value, int places)
    {
        var rounded = Math.Round(value, places, MidpointRounding.AwayFromZero);
        return rounded == 0m && value > 0m
            ? "< 0." + new string('0', places - 1) + "1"
            : rounded.ToString("F" + places, CultureInfo.InvariantCulture);
    }
}
