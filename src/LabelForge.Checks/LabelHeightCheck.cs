using System.Globalization;
using LabelForge.Checks.Reading;
using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Checks;

/// <summary>Checks measured letter heights; what was not measured is said to be so, never passed.</summary>
/// <remarks>Where lower-case letters are used, the lower-case o counts, else the capitals (21 CFR 701.13(h)(2)).</remarks>
public static class LabelHeightCheck
{
    private static readonly RuleBook Rules = RuleBook.Us;

    // Flat letters stand a hair below the o by which the law measures, and drawing programs round coordinates: what lies
    // within this is no finding. Common practice: type is cut with round letters about 2 percent higher.
    private static readonly Length Tolerance = Length.FromMillimetres(0.07m);

    /// <summary>The findings.</summary>
    public static IEnumerable<Finding> Find(LabelFacts facts) => NetQuantity(facts).Concat(Ingredients(facts));

    private static IEnumerable<Finding> NetQuantity(LabelFacts facts)
    {
        if (facts.Reading.NetQuantity is not { } read)
            yield break;
        var entry = RuleBook.MarketUs.On(facts.On).Figure("net-quantity.letter-height");
        var least = entry.Table.LengthAt(facts.Panel?.Area.SquareInches ?? 0m);
        var height = Height(facts.Reading.Text, read.Span);
        if (height is null || facts.Panel is null)
        {
            var why = height is null ? "the label came as text, or its letters have no outlines" : "the size of the panel is not known; give it with --panel";
            yield return Rules["net-quantity.type-not-measured"].Find(read.Written, why, facts.Panel is null ? "1.59 mm (1/16 in), and more on a panel above 5 square inches" : Millimetres(least));
        }
        if (height is { } measured && measured.Millimetres + Tolerance.Millimetres < least.Millimetres)
        {
            var panel = facts.Panel is { } p ? p.Area.SquareInches.ToString("0.##", CultureInfo.InvariantCulture) + " square inches" : "any size";
            // A page may hold several panels: only a panel that was given, or the least of any size, makes it certain.
            var isCertain = facts.PanelGiven || measured.Millimetres + Tolerance.Millimetres < entry.Table.LengthAt(0m).Millimetres;
            yield return Rules[isCertain ? "net-quantity.type-too-small/label" : "net-quantity.type-too-small/page"].Find(read.Written, read.Written, Millimetres(measured), panel, Millimetres(least));
        }
    }

    private static IEnumerable<Finding> Ingredients(LabelFacts facts)
    {
        if (facts.Reading.Ingredients is not { } list || Height(facts.Reading.Text, list.Span) is not { } height)
            yield break;
        var least = RuleBook.MarketUs.On(facts.On).Figure("ingredients.letter-height").Length;
        var small = RuleBook.MarketUs.On(facts.On).Figure("ingredients.letter-height-small").Length;
        if (height.Millimetres + Tolerance.Millimetres < small.Millimetres)
            yield return Rules["ingredients.type-too-small/label"].Find("ingredients", Millimetres(height), Millimetres(small), Millimetres(least));
        else if (height.Millimetres + Tolerance.Millimetres < least.Millimetres)
            yield return Rules["ingredients.type-too-small/small-package"].Find("ingredients", Millimetres(height), Millimetres(least));
    }

    /// <summary>The height of the smallest word in a place, by its lower-case letters where it has any; null where none is measured.</summary>
    private static Length? Height(LabelText text, TextSpan span)
    {
        var words = text.Heights.Where(w => w.Span.Overlaps(span)).ToArray();
        var lower = words.Select(w => w.Lower).OfType<Length>().ToArray();
        var heights = lower.Length > 0 ? lower : words.Select(w => w.Upper).OfType<Length>().ToArray();
        return heights.Length == 0 ? null : heights.Min();
    }

    private static string Millimetres(Length length) => length.Millimetres.ToString("0.00", CultureInfo.InvariantCulture) + " mm";
}
