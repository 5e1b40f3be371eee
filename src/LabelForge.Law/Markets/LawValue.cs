namespace LabelForge.Markets;

/// <summary>What a provision fixes: a figure, a table of steps, or a word.</summary>
public abstract record LawValue;

/// <summary>A figure and its unit, such as 0.0625 in or 1 %.</summary>
/// <param name="Figure">The figure, exact.</param>
/// <param name="Unit">The unit as written in the law file: <c>in</c>, <c>mm</c>, <c>%</c>, <c>oz</c>, <c>decimals</c>, ...</param>
public sealed record LawFigure(decimal Figure, string Unit) : LawValue;

/// <summary>A word that names which rule or list applies.</summary>
public sealed record LawWord(string Word) : LawValue;

/// <summary>One step of a table.</summary>
/// <param name="UpTo">The greatest measure the step covers, itself included; null for the last step, which has no end.</param>
/// <param name="Gives">What the table gives there.</param>
public sealed record LawStep(decimal? UpTo, decimal Gives);

/// <summary>A table of steps: each covers what is above the step before it, up to and including its own bound.</summary>
/// <param name="Of">The unit that the table is entered with, such as <c>sq in</c>.</param>
/// <param name="Gives">The unit of what it gives, such as <c>in</c>.</param>
/// <param name="Steps">The steps, bounds rising, the last without a bound.</param>
public sealed record LawSteps(string Of, string Gives, IReadOnlyList<LawStep> Steps) : LawValue
{
    /// <summary>What the table gives for a measure.</summary>
    public decimal At(decimal measure) => Steps.First(s => s.UpTo is null || measure <= s.UpTo).Gives;

    /// <summary>What the table gives for a measure, as a length; the table must give inches or millimetres.</summary>
    public Length LengthAt(decimal measure) => LawLength.From(At(measure), Gives);
}

/// <summary>Lengths out of law files.</summary>
internal static class LawLength
{
    public static Length From(decimal figure, string unit) => unit switch
    {
        "in" => Length.FromInches(figure),
        "mm" => Length.FromMillimetres(figure),
        _ => throw new InvalidOperationException($"{unit} does not measure length."),
    };
}
