using LabelForge.Composition;

namespace LabelForge.Cli.Explain;

/// <summary>The chart: a bar for each ingredient's range.</summary>
internal static class ChartLines
{
    private const int FiguresWidth = 18;

    // On a narrower page the name stands over its bar, so that the bar still says something.
    private const int NarrowPage = 90;

    public static IEnumerable<string> Of(Explanation e, int width)
    {
        var longest = e.Proof.Ingredients.Max(i => i.Name.Length);
        var names = width < NarrowPage ? 0 : Math.Clamp(longest + 1, 10, width * 2 / 5);
        var bar = new RangeBar(width - names - FiguresWidth - 7);
        yield return "HOW MUCH OF EACH THE FINISHED PRODUCT CAN HOLD, IN MASS PERCENT";
        foreach (var line in Page.Wrap(
            "Bars: = where it can be; o the best estimate; | (inside a bar +) the one-percent line; < less than the scale shows. Each "
                + "mark of the scale is ten times the one before.", width))
            yield return line;
        yield return "";
        yield return $"{new string(' ', 5 + names)}{bar.Scale()}";
        Part? part = null;
        for (var at = 0; at < e.Proof.Ingredients.Length; at++)
        {
            var i = e.Proof.Ingredients[at];
            if (i.Part != part)
            {
                part = i.Part;
                foreach (var line in Page.Wrap(Heading(i.Part), width))
                    yield return line;
            }
            var figures = i.Low == i.High
                ? $"{Page.Percent(i.Low * 100),16}"
                : $"{Page.Percent(i.Low * 100),7} - {Page.Percent(i.High * 100),6}";
            var drawn = $"{bar.Draw(i.Low * 100, i.High * 100, i.Estimate * 100)}  {figures}";
            if (i.Name.Length >= names)
            {
                // A name is never cut: it may be what is being looked for.
                yield return $"{at + 1,3}  {i.Name}";
                yield return new string(' ', 5 + names) + drawn;
            }
            else
            {
                yield return $"{at + 1,3}  {i.Name.PadRight(names)}{drawn}";
            }
        }
        var besides = e.Declaration.Ingredients.Where(i => i.IsAllergen).Select(i => i.Name).ToArray();
        if (besides.Length == 0)
            yield break;
        foreach (var line in Page.Wrap(
            $"Named besides, as parts of the fragrance or an oil above, so they add no weight: {string.Join(", ", besides)}.", width))
            yield return line;
    }

    private static string Heading(Part part) => part switch
    {
        Part.Main => "MAIN: can exceed 1 %, so in descending order",
        Part.Minor => "MINOR: cannot exceed 1 %, so after the others in any order",
        _ => "COLOUR: colour additives, last in any order",
    };
}
