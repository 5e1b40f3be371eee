using System.Text;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Measures;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>The words of a label. Always holds: they are read or refused; whatever is found lies inside the text.</summary>
internal static class LabelTarget
{
    public static readonly string[] Words =
        ["Net Wt 4 oz (113 g)", "NET CONTENTS ", "Ingredients: ", "Glycerin", "Water (Aqua)", "Lot 26R25-01E", "Distributed by ",
            "Fairport, ME 00000", "555-0100", "www.rooksedge.example", "Made in USA", "Bar soap", "oils of ", "contains: ", "may contain",
            "e 113 g", "\n\n", "LLC", "(", "°"];

    public static void Run(byte[] input)
    {
        try
        {
            var text = LabelText.Of(Encoding.UTF8.GetString(input), "label.txt");
            var read = LabelStatement.Read(text, IngredientDictionary.Shipped);
            Holds(read.NetQuantities.All(q => Inside(q.Span, text)), "a net quantity stands in the text");
            Holds(read.Ingredients is null || Inside(read.Ingredients.Span, text), "the ingredients stand in the text");
            Holds(read.Lot is null || Inside(read.Lot.Span, text), "the lot stands in the text");
        }
        catch (InputException)
        {
        }
    }

    private static bool Inside(TextSpan span, LabelText text) => span.Start >= 0 && span.Start <= span.End && span.End <= text.Text.Length;
}
