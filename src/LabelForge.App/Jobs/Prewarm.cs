using LabelForge.Ingredients;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Jobs;

/// <summary>
/// Begins what every label needs and no workshop changes, beside the reading of the workshop: the dictionary, the tables,
/// the law, the type. Each is made once, whoever asks first; where one cannot be, whoever needs it is told.
/// </summary>
public static class Prewarm
{
    /// <summary>Begins, and does not wait.</summary>
    /// <param name="dictionary">Reads the dictionary, or has it.</param>
    /// <param name="markets">Reads the markets, or has them.</param>
    public static void Begin(Func<IngredientDictionary> dictionary, Func<MarketBook> markets)
    {
        Task.Run(() => _ = dictionary().Allergens);
        Task.Run(() => _ = BundledFaces.Regular.Shape("o").Width + BundledFaces.SemiBold.SmallLetterHeight);
        Task.Run(() => _ = (markets().Usual.Figures, ProductKinds.All));
    }
}
