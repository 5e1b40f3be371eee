namespace LabelForge.Quantities;

/// <summary>The customary part of a US net quantity, in the units that 21 CFR 701.13(j) and (k) ask for.</summary>
/// <param name="Text">The part, such as <c>24 oz (1 lb 8 oz)</c>.</param>
/// <param name="HasParentheses">Whether it ends in parentheses, so that the metric part stands without its own.</param>
/// <remarks>16 oz to the pound; 16 fl oz to the pint, 32 to the quart, 128 to the gallon: NIST Handbook 44, Appendix C.</remarks>
internal sealed record CustomaryQuantity(string Text, bool HasParentheses)
{
    /// <summary>States ounces by weight.</summary>
    public static CustomaryQuantity Weight(decimal ounces, RulesOf rules) => State(
        ounces, "oz", [("lb", 16m)], "net-quantity.pounds-beside-from", "net-quantity.pounds-only-from", rules);

    /// <summary>
    /// States US fluid ounces. Gallons stand only where no fluid ounces stand before them, so the same ladder
    /// of units serves below a gallon and above.
    /// </summary>
    public static CustomaryQuantity Fluid(decimal fluidOunces, RulesOf rules) => State(
        fluidOunces, "fl oz", [("gal", 128m), ("qt", 32m), ("pt", 16m)], "net-quantity.pints-beside-from",
        "net-quantity.gallons-only-from", rules);

    private static CustomaryQuantity State(
        decimal ounces, string unit, IReadOnlyList<(string Unit, decimal Ounces)> larger, string besideFrom, string onlyFrom,
        RulesOf rules)
    {
        var small = $"{RoundedDown.Text(ounces)} {unit}";
        if (ounces < rules.Figure(besideFrom).Figure)
            return new(small, false);
        var large = Ladder(ounces, unit, larger);
        return ounces < rules.Figure(onlyFrom).Figure
            ? new($"{small} ({large})", true)
            : new(large, false);
    }

    // The largest whole units, then what remains in ounces: 21 CFR 701.13(j)(1).
    private static string Ladder(decimal ounces, string unit, IReadOnlyList<(string Unit, decimal Ounces)> larger)
    {
        var parts = new List<string>();
        foreach (var (name, size) in larger)
        {
            var whole = decimal.Truncate(ounces / size);
            if (whole > 0)
                parts.Add($"{RoundedDown.Text(whole)} {name}");
            ounces -= whole * size;
        }
        if (ounces > 0)
            parts.Add($"{RoundedDown.Text(ounces)} {unit}");
        return string.Join(" ", parts);
    }
}
