using System.Collections.Immutable;

namespace LabelForge.Measures;

/// <summary>Something wrong in what was given: where, what, and what to write instead.</summary>
/// <param name="File">The file as the person knows it, or null where the text came from a command.</param>
/// <param name="Line">The line, counted from 1; 0 where no line applies.</param>
/// <param name="Wrong">What is wrong.</param>
/// <param name="Write">What to write instead.</param>
public sealed record Problem(string? File, int Line, string Wrong, string Write)
{
    /// <summary>The letter that cannot be printed, where that is what is wrong: it may stand in any text; else null.</summary>
    public string? Letter { get; init; }

    /// <summary>
    /// What kind of problem it is, where the advice is another at another door: <see cref="Write"/> is in the command's words,
    /// and the page has its own by this. Null where the words serve everywhere.
    /// </summary>
    public string? Code { get; init; }

    /// <summary>What fills the places {0}, {1}, ... of the words that go by <see cref="Code"/>.</summary>
    public ImmutableArray<string> Arguments { get; init; } = [];

    /// <summary>The key of the file that the problem is about, where it is missing and so has no line; else null.</summary>
    public string? Key { get; init; }

    /// <inheritdoc/>
    public override string ToString() => (File, Line) switch
    {
        (null, _) => $"{Wrong} {Write}",
        (_, 0) => $"{File}: {Wrong} {Write}",
        _ => $"{File}, line {Line}: {Wrong} {Write}",
    };
}

/// <summary>Input that cannot be used as it stands; its message is meant for the person who wrote it.</summary>
public sealed class InputException(Problem problem) : Exception(problem.ToString())
{
    /// <summary>What is wrong and what to write instead.</summary>
    public Problem Problem { get; } = problem;
}
