using LabelForge.Ingredients;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Jobs;

/// <summary>
/// Begins what every label needs and no workshop changes, beside the reading of the workshop: the dictionary, the tables,
/// the law, the type. Each is made once, whoever asks first; where one cannot be, whoever needs it is told.
/// </summary>
public static class Prewarm
{
    private static readonly Action[] Needed =
    [
        () => _ = Shipped.Dictionary.Allergens,
        () => _ = BundledFaces.Regular.Shape("o").Width + BundledFaces.SemiBold.SmallLetterHeight,
        () => _ = (Shipped.Markets.Usual.Figures, ProductKinds.All),
    ];

    /// <summary>Begins, and does not wait.</summary>
    public static void Begin()
    {
        foreach (var make in Needed)
            Task.Run(make);
    }
}
