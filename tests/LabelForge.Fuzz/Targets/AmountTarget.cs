using System.Globalization;
using System.Text;
using LabelForge.Measures;
using LabelForge.Quantities;
using LabelForge.Recipes;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>
/// Amounts, shares, sums of money, panels. Always holds: nothing is thrown; a refusal says what is wrong and what to write; an
/// amount is above zero and has a mass or a volume; what is printed of a value is read as the same value.
/// </summary>
internal static class AmountTarget
{
    public static readonly string[] Words = ["g", "kg", "mg", "oz", "lb", "mL", "fl oz", "tsp", "drops", "% of batch", "1/2", "1 1/2",
        "by superfat", "<=", "≥", "-", "x", "in", "mm", ".", "/"];

    public static void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        if (Read(Amount.Parse(text)) is { } amount)
        {
            Holds(amount.Figure is > 0 and <= 1_000_000_000m, "an amount is above zero and bounded");
            Holds(!amount.IsMass || amount.AsMass().Grams > 0, "a mass is above zero");
            Holds(!amount.IsVolume || amount.AsVolume().Millilitres > 0, "a volume is above zero");
            var plain = Amount.Parse(string.Create(CultureInfo.InvariantCulture, $"{amount.Figure} g"));
            Holds(plain.IsValue && plain.Value.Figure == amount.Figure, "a figure printed is read as the same");
        }
        if (Range(ShareText.Parse(text)) is { } range)
        {
            Holds(range.Low.Fraction >= 0 && range.High.Fraction <= 1 && range.Low.Fraction <= range.High.Fraction,
                "a share runs upward inside the whole");
            Holds(Range(ShareText.Parse(MaterialDraft.Share(range))) == range, "a share printed is read as the same");
        }
        _ = Read(NetAmount.Parse(text));
        _ = Read(Panel.Parse(text));
        if (MoneyText.Parse(text) is { IsValue: true, Value: var money })
            Holds(MoneyText.Parse(money.ToString(CultureInfo.InvariantCulture)).Value == money, "money printed is read as the same");
        _ = MoneyText.Margin(text);
    }

    private static ShareRange? Range(Parsed<ShareRange> parsed) => parsed.IsValue ? parsed.Value : null;

    private static T? Read<T>(Parsed<T> parsed) where T : class
    {
        Holds(parsed.IsValue || (parsed.Wrong.Length > 0 && parsed.Write.Length > 0), "a refusal says what is wrong and what to write");
        return parsed.IsValue ? parsed.Value : null;
    }
}
