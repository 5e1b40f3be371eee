using LabelForge.Markets;

namespace LabelForge.Declarations;

/// <summary>Above which share a fragrance allergen is named in the European Union.</summary>
public static class AllergenThreshold
{
    /// <summary>The threshold in mass percent (Regulation (EC) No 1223/2009, Annex III, column Other).</summary>
    public static decimal For(ProductKind kind, DateOnly on) => LawBook.Shipped
        .Get(kind.Use == ProductUse.LeaveOn ? "allergens.threshold-leave-on.eu" : "allergens.threshold-rinse-off.eu", on).Figure;
}
