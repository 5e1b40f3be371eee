using LabelForge.Checks.Words;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether what is sold as soap is soap: what cleans in it must be the salts of fatty acids alone, whether a label names another
/// cleanser or a recipe holds one.</summary>
internal static partial class SoapChecks
{
    public static void Check(CheckCase label)
    {
        if (label.SoldAs != SoldAs.Soap)
            return;
        // A soap need not list what is in it: of a recipe its composition tells.
        var names = label.Product is { } product
            ? product.Declaration.Ingredients.Select(i => (i.Name, Known: label.Dictionary.Find(i.Name)))
            : label.Names;
        var told = label.Product is null ? InSentences(label.Label.Rest) : [];
        if (names.Where(n => IsDetergent(n.Name, n.Known)).Select(n => n.Name).Concat(told).ToArray() is { Length: > 0 } found)
            label.Tell("claim.soap-with-detergent", "ingredients", string.Join(", ", found));
    }

    // "Made from lard, lye and sodium lauryl sulfate": a soap without a list says in its sentences what is in it.
    private static IEnumerable<string> InSentences(string text)
    {
        var words = new ClaimText(text);
        return InSentence().Matches(text).Where(m => !WordContext.IsDenied(words.At(m.Index, m.Length))).Select(m => m.Value.Trim());
    }

    private static bool IsDetergent(string name, Ingredient? known) =>
        known?.Roles[0] == IngredientRole.Surfactant || Synthetic().IsMatch(name);

    private const string Cleansers = "laureth sulfate|lauryl sulfate|coco[- ]sulfate|isethionate|sulfosuccinate|olefin sulfonate|[- "
        + "]betaine|glucoside|taurate|sulfoacetate";

    [GeneratedRegex(Cleansers, RegexOptions.IgnoreCase)]
    private static partial Regex Synthetic();

    [GeneratedRegex(@"(?:\p{L}+[ ])?(?:" + Cleansers + @")\b", RegexOptions.IgnoreCase)]
    private static partial Regex InSentence();
}
