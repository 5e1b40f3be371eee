using System.Collections.Immutable;
using LabelForge.Markets;

namespace LabelForge.Checks;

/// <summary>How grave a finding is.</summary>
public enum Severity
{
    /// <summary>The rule requires it.</summary>
    Must,

    /// <summary>Good practice, or a risk.</summary>
    Should,

    /// <summary>Worth knowing.</summary>
    Note,
}

/// <summary>Something a check found.</summary>
/// <param name="Rule">The rule's id.</param>
/// <param name="Severity">How grave it is.</param>
/// <param name="Message">What was found, in plain words.</param>
/// <param name="Fix">What to do.</param>
/// <param name="Source">The regulation and paragraph, or the certificate or practice, behind it.</param>
/// <param name="Where">Where it was found: a file, a panel, an element.</param>
/// <param name="Basis">Whether the source was read: the rule's own, or that of the row of a table that it was found by.</param>
public sealed record Finding(string Rule, Severity Severity, string Message, string Fix, string Source, string Where, Basis Basis)
{
    /// <summary>What would take the product out of the rule and is not settled, in words; empty where nothing would.</summary>
    public ImmutableArray<string> Unless { get; init; } = [];

    /// <summary>The same finding by a row of a table, which brings its own source.</summary>
    public Finding By(Basis basis) => this with { Basis = basis };
}
