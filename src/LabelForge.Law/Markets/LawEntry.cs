namespace LabelForge.Markets;

/// <summary>One version of one provision: what it fixes, where that is written, and when it holds.</summary>
/// <param name="Id">The provision's name, the same for each of its versions.</param>
/// <param name="What">What it fixes, in plain words.</param>
/// <param name="Value">What it fixes, typed.</param>
/// <param name="Citation">Instrument and paragraph; or "common practice" where no instrument says so.</param>
/// <param name="InForceFrom">The first day on which it holds.</param>
/// <param name="Until">The last day on which it holds; null while no end is known.</param>
/// <param name="Published">The day on which the instrument, or this version of it, was published.</param>
/// <param name="LastChecked">The day on which a person or program last compared this entry with its source or with memory of it.</param>
/// <param name="Basis">Whether the instrument's text was read.</param>
/// <param name="Read">The id of the text that was read (<see cref="LawTexts"/>); null where none was.</param>
public sealed record LawEntry(
    string Id,
    string What,
    LawValue Value,
    string Citation,
    DateOnly InForceFrom,
    DateOnly? Until,
    DateOnly Published,
    DateOnly LastChecked,
    Basis Basis,
    string? Read)
{
    /// <summary>The figure that the provision fixes.</summary>
    /// <exception cref="InvalidOperationException">The provision fixes a table or a word.</exception>
    public decimal Figure => Value is LawFigure f ? f.Figure : throw Mismatch("a figure");

    /// <summary>The length that the provision fixes.</summary>
    /// <exception cref="InvalidOperationException">The provision fixes something else.</exception>
    public Length Length => Value is LawFigure f ? LawLength.From(f.Figure, f.Unit) : throw Mismatch("a length");

    /// <summary>The table that the provision fixes.</summary>
    /// <exception cref="InvalidOperationException">The provision fixes no table.</exception>
    public LawSteps Table => Value as LawSteps ?? throw Mismatch("a table");

    /// <summary>The word that the provision fixes.</summary>
    /// <exception cref="InvalidOperationException">The provision fixes a figure or a table.</exception>
    public string Word => Value is LawWord w ? w.Word : throw Mismatch("a word");

    /// <summary>Whether this version holds on a day.</summary>
    public bool HoldsOn(DateOnly day) => InForceFrom <= day && (Until is null || day <= Until);

    private InvalidOperationException Mismatch(string wanted) => new($"{Id} does not fix {wanted}.");
}
