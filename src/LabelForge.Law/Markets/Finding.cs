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

    /// <summary>The facts of the product that it turns on and that nobody has settled, each a question of yes or no.</summary>
    public ImmutableArray<ProductFact> Asks { get; init; } = [];

    /// <summary>What was found and what to do in another language, as far as there are words for
    /// the rule in it; else in English.</summary>
    /// <param name="language">The language's code, as <c>fr</c>.</param>
    /// <remarks>What fills the places of a sentence (names, figures, what a table or a supplier's paper says) stays as it is.</remarks>
    public (string Message, string Fix) In(string language) =>
        language == LawWords.English || Told is null ? (Message, Fix) : Told.In(language);

    /// <summary>The same for those who fill in fields on a page and never see a file: what to do says at which field, and what it asks
    /// is left to <see cref="Asks"/>.</summary>
    /// <param name="language">The language's code, as <c>fr</c>.</param>
    public (string Message, string Fix) OnPage(string language) => Told?.OnPage(language) ?? (Message, Fix);

    internal Telling? Told { get; init; }

    /// <summary>The same finding by a row of a table, which brings its own source.</summary>
    public Finding By(Basis basis) => this with { Basis = basis };
}

/// <summary>How a finding is told in a language. Two findings are the same by what was found, not by how it is told.</summary>
/// <param name="tell">What was found and what to do, by language and whether it is told on a page with fields.</param>
internal sealed class Telling(Func<string, bool, (string Message, string Fix)> tell)
{
    internal (string Message, string Fix) In(string language) => tell(language, false);

    internal (string Message, string Fix) OnPage(string language) => tell(language, true);

    public override bool Equals(object? obj) => obj is Telling;

    public override int GetHashCode() => 0;
}
