using LabelForge.Declarations;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Drawing;
using LabelForge.Print.Output;
using LabelForge.Quantities;

namespace LabelForge.Print.Tests;

/// <summary>Invented content and a stand-in for a barcode.</summary>
internal static class Samples
{
    public static readonly DocumentInfo Info = new("Fen Meadow, lot 7MQ4-K", new DateTimeOffset(2026, 11, 25, 8, 0, 0, TimeSpan.Zero));

    public static readonly Length Sixteenth = Length.FromInches(1m / 16m);

    public static readonly Length ThirtySecond = Length.FromInches(1m / 32m);

    public static LetterFloors Floors(Length ingredients) => new(
        new LetterFloor(Sixteenth, "21 CFR 701.13(i)"), new LetterFloor(ingredients, "21 CFR 701.3(b)"),
        new LetterFloor(Sixteenth, "21 CFR 740.2(b)"), LetterFloor.None);

    public static LabelContent Bar { get; } = new()
    {
        BusinessName = "Rooksedge Bodycare",
        ProductName = "Fen Meadow",
        Identity = "Glycerin bar soap",
        NetQuantity = "Net Wt 3.9 oz (113 g)",
        IngredientHeading = "Ingredients:",
        Ingredients =
        [
            "Glycerin", "Water", "Sodium Stearate", "Propylene Glycol", "Sorbitol", "Sodium Laurate", "Sodium Laureth Sulfate",
            "Butyrospermum Parkii (Shea) Butter", "Ricinus Communis (Castor) Seed Oil", "Fragrance", "Sodium Chloride",
            "Pentasodium Pentetate", "Mica", "Titanium Dioxide", "Ultramarines",
        ],
        Responsible = "Rooksedge Bodycare, 1 Example Lane, Fairport, ME 00000",
        Contact = "rooksedge.example",
        Lot = "7MQ4-K",
        Market = Market.Us,
        On = new DateOnly(2026, 11, 25),
        Floors = Floors(Sixteenth),
    };

    /// <summary>A square of stripes as large as a small matrix code.</summary>
    public static InkBlock Block(decimal width = 9m, decimal height = 9m, string? caption = null) => new(
        Length.FromMillimetres(width), Length.FromMillimetres(height),
        [.. Enumerable.Range(0, (int)(width - 2)).Select(i => new InkRectangle(1m + i, 1m, 0.508m, height - 2m))], caption);
}
