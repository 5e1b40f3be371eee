namespace LabelForge.Measures;

/// <summary>A unit in which makers write amounts.</summary>
public enum AmountUnit
{
    /// <summary>Grams.</summary>
    Gram,

    /// <summary>Kilograms.</summary>
    Kilogram,

    /// <summary>Milligrams.</summary>
    Milligram,

    /// <summary>Avoirdupois ounces.</summary>
    Ounce,

    /// <summary>Avoirdupois pounds.</summary>
    Pound,

    /// <summary>Millilitres.</summary>
    Millilitre,

    /// <summary>Litres.</summary>
    Litre,

    /// <summary>US fluid ounces.</summary>
    FluidOunce,

    /// <summary>US gallons.</summary>
    Gallon,

    /// <summary>US liquid quarts.</summary>
    Quart,

    /// <summary>US liquid pints.</summary>
    Pint,

    /// <summary>US teaspoons.</summary>
    Teaspoon,

    /// <summary>US tablespoons.</summary>
    Tablespoon,

    /// <summary>Drops, 20 to the millilitre unless the material says otherwise.</summary>
    Drop,

    /// <summary>Percent by mass of something named.</summary>
    PercentOf,

    /// <summary>Of a lye: as much as the oils of the recipe take up, less its superfat.</summary>
    BySuperfat,
}

/// <summary>An amount as a person writes it: a figure above zero, its unit, and of what where it is a percentage.</summary>
/// <param name="Figure">The figure, always above zero.</param>
/// <param name="Unit">The unit.</param>
/// <param name="Of">What a percentage is of: <c>batch</c> or the id of a material; null for every other unit.</param>
public sealed partial record Amount(decimal Figure, AmountUnit Unit, string? Of)
{
    /// <summary>What a recipe writes for <see cref="BySuperfat"/>.</summary>
    public const string BySuperfatText = "by superfat";

    private const decimal MostFigure = 1_000_000_000m;

    private static readonly Dictionary<string, AmountUnit> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["g"] = AmountUnit.Gram,
        ["gram"] = AmountUnit.Gram,
        ["grams"] = AmountUnit.Gram,
        ["kg"] = AmountUnit.Kilogram,
        ["mg"] = AmountUnit.Milligram,
        ["oz"] = AmountUnit.Ounce,
        ["ounce"] = AmountUnit.Ounce,
        ["ounces"] = AmountUnit.Ounce,
        ["lb"] = AmountUnit.Pound,
        ["lbs"] = AmountUnit.Pound,
        ["pound"] = AmountUnit.Pound,
        ["pounds"] = AmountUnit.Pound,
        ["ml"] = AmountUnit.Millilitre,
        ["l"] = AmountUnit.Litre,
        ["litre"] = AmountUnit.Litre,
        ["liter"] = AmountUnit.Litre,
        ["fl oz"] = AmountUnit.FluidOunce,
        ["fl. oz."] = AmountUnit.FluidOunce,
        ["gal"] = AmountUnit.Gallon,
        ["gallon"] = AmountUnit.Gallon,
        ["gallons"] = AmountUnit.Gallon,
        ["qt"] = AmountUnit.Quart,
        ["quart"] = AmountUnit.Quart,
        ["quarts"] = AmountUnit.Quart,
        ["pt"] = AmountUnit.Pint,
        ["pint"] = AmountUnit.Pint,
        ["pints"] = AmountUnit.Pint,
        ["tsp"] = AmountUnit.Teaspoon,
        ["teaspoon"] = AmountUnit.Teaspoon,
        ["teaspoons"] = AmountUnit.Teaspoon,
        ["tbsp"] = AmountUnit.Tablespoon,
        ["tablespoon"] = AmountUnit.Tablespoon,
        ["tablespoons"] = AmountUnit.Tablespoon,
        ["drop"] = AmountUnit.Drop,
        ["drops"] = AmountUnit.Drop,
    };

    /// <summary>Once as much lye as the oils take up, less the superfat.</summary>
    public static Amount BySuperfat { get; } = new(1, AmountUnit.BySuperfat, null);

    /// <summary>Whether the unit measures mass.</summary>
    public bool IsMass => Unit <= AmountUnit.Pound;

    /// <summary>Whether the unit measures volume (drops and spoons too).</summary>
    public bool IsVolume => Unit is >= AmountUnit.Millilitre and <= AmountUnit.Drop;

    /// <summary>Reads an amount; decimal point only, a space before the unit optional, fractions
    /// such as <c>1/2</c> or <c>1 1/2</c> allowed.</summary>
    public static Parsed<Amount> Parse(string text)
    {
        var match = Shape().Match(text.Trim());
        if (!match.Success)
            return (FigureWithComma().IsMatch(text)
                ? Parsed<Amount>.Refused("amount.not-an-amount", ("text", text.Trim()))
                : Parsed<Amount>.Refused("amount.not-an-amount-of-this", ("text", text.Trim())));
        if (ReadFigure(match.Groups["figure"].Value) is not { } figure)
            return Parsed<Amount>.Refused("amount.unreadable-figure", ("figure", match.Groups["figure"].Value));
        if (match.Groups["sign"].Success || figure == 0)
            return Parsed<Amount>.Refused("amount.not-more-than-nothing", ("text", text.Trim()));
        var unit = Spaces().Replace(match.Groups["unit"].Value.Trim(), " ");
        if (unit.StartsWith('%'))
        {
            var of = unit[1..].Trim();
            return of.StartsWith("of ", StringComparison.OrdinalIgnoreCase) && of.Length > 3
                ? figure <= 100
                    ? Parsed<Amount>.Of(new Amount(figure, AmountUnit.PercentOf, of[3..].Trim()))
                    : Parsed<Amount>.Refused("amount.more-than-whole", ("text", text.Trim()))
                : Parsed<Amount>.Refused("amount.percent-of-what", ("text", text.Trim()), ("figure", figure));
        }
        if (unit.Length == 0)
            return Parsed<Amount>.Refused("amount.no-unit", ("text", text.Trim()));
        return Units.TryGetValue(unit, out var known)
            ? Parsed<Amount>.Of(new Amount(figure, known, null))
            : Parsed<Amount>.Refused("amount.not-a-unit", ("unit", unit));
    }

    /// <summary>The mass, where the unit measures mass.</summary>
    /// <exception cref="InvalidOperationException">The unit does not measure mass.</exception>
    public Mass AsMass() => Unit switch
    {
        AmountUnit.Gram => Mass.FromGrams(Figure),
        AmountUnit.Kilogram => Mass.FromGrams(Figure * 1000m),
        AmountUnit.Milligram => Mass.FromGrams(Figure / 1000m),
        AmountUnit.Ounce => Mass.FromOunces(Figure),
        AmountUnit.Pound => Mass.FromPounds(Figure),
        _ => throw new InvalidOperationException($"{Unit} does not measure mass."),
    };

    /// <summary>The volume, where the unit measures volume.</summary>
    /// <param name="dropsPerMillilitre">How many of this material's drops make a millilitre.</param>
    /// <exception cref="InvalidOperationException">The unit does not measure volume.</exception>
    public Volume AsVolume(decimal dropsPerMillilitre = Volume.DropsPerMillilitre) => Unit switch
    {
        AmountUnit.Millilitre => Volume.FromMillilitres(Figure),
        AmountUnit.Litre => Volume.FromMillilitres(Figure * 1000m),
        AmountUnit.FluidOunce => Volume.FromFluidOunces(Figure),
        AmountUnit.Gallon => Volume.FromFluidOunces(Figure * Volume.FluidOuncesPerGallon),
        AmountUnit.Quart => Volume.FromFluidOunces(Figure * Volume.FluidOuncesPerGallon / 4),
        AmountUnit.Pint => Volume.FromFluidOunces(Figure * Volume.FluidOuncesPerGallon / 8),
        AmountUnit.Teaspoon => Volume.FromMillilitres(Figure * Volume.MillilitresPerTeaspoon),
        AmountUnit.Tablespoon => Volume.FromMillilitres(Figure * Volume.MillilitresPerTablespoon),
        AmountUnit.Drop => Volume.FromMillilitres(Figure / dropsPerMillilitre),
        _ => throw new InvalidOperationException($"{Unit} does not measure volume."),
    };

    /// <summary>As a recipe writes it: <c>450 g</c>, <c>3 % of batch</c>.</summary>
    public override string ToString() => Unit switch
    {
        AmountUnit.BySuperfat => BySuperfatText,
        AmountUnit.PercentOf => Invariant($"{Figure:0.######} % of {Of}"),
        _ => Invariant($"{Figure:0.######} {Units.First(u => u.Value == Unit).Key}"),
    };

    private static decimal? ReadFigure(string text)
    {
        var parts = text.Split([' ', '/'], StringSplitOptions.RemoveEmptyEntries);
        if (!parts.All(p => PlainFigure.Read(p) is not null))
            return null;
        var numbers = parts.Select(p => decimal.Parse(p, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture)).ToArray();
        // No amount has parts like that, and their sum would not fit.
        if (numbers.Any(n => n > MostFigure))
            return null;
        var value = numbers switch
        {
            [var one] => one,
            [var top, var bottom] when bottom != 0 => top / bottom,
            [var whole, var top, var bottom] when bottom != 0 => whole + top / bottom,
            _ => (decimal?)null,
        };
        return value <= MostFigure ? value : null;
    }

    [GeneratedRegex(@"^(?<sign>-)?\s*(?<figure>[0-9]+\s+[0-9]+/[0-9]+|[0-9]+/[0-9]+|[0-9]*\.?[0-9]+|[0-9]+\.)\s*(?<unit>[%A-Za-z][\w\s.\-%]*)?$")]
    private static partial Regex Shape();

    [GeneratedRegex(@"[0-9],[0-9]")]
    private static partial Regex FigureWithComma();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
