namespace LabelForge.Measures;

/// <summary>
/// Something wrong in what was given, as data: what it is, by a code; where it stands; and what the words about it are filled with.
/// The words themselves are in one catalogue (<see cref="ProblemWords"/>), for the command and for the page, in each language.
/// </summary>
public sealed record Problem
{
    /// <summary>A problem.</summary>
    /// <param name="file">The file as the person knows it, or null where the text came from a command or a field.</param>
    /// <param name="line">The line, counted from 1; 0 where no line applies.</param>
    /// <param name="code">What is wrong: a group and a name, as <c>amount.no-unit</c>.</param>
    /// <param name="arguments">What its words are filled with, by name.</param>
    public Problem(string? file, int line, string code, params ReadOnlySpan<(string Name, object? Value)> arguments)
    {
        (File, Line, Code) = (file, line, code);
        var all = ImmutableArray.CreateBuilder<Argument>(arguments.Length);
        foreach (var argument in arguments)
            all.Add(Argument.Of(argument));
        Arguments = all.MoveToImmutable();
    }

    /// <summary>A problem of what stands in no file: a call, a field, an entry of the books.</summary>
    /// <param name="code">What is wrong: a group and a name, as <c>amount.no-unit</c>.</param>
    /// <param name="arguments">What its words are filled with, by name.</param>
    public Problem(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) : this(null, 0, code, arguments)
    {
    }

    /// <summary>The file as the person knows it, or null where the text came from a command or a field.</summary>
    public string? File { get; init; }

    /// <summary>The line, counted from 1; 0 where no line applies.</summary>
    public int Line { get; init; }

    /// <summary>The place in the file: keys, and positions in lists counted from 0, parted by
    /// strokes, as <c>materials/2/amount</c>. Null where it is not known.</summary>
    public string? Path { get; init; }

    /// <summary>What kind of problem it is: a group and a name, as <c>amount.no-unit</c>.</summary>
    public string Code { get; init; }

    /// <summary>What fills the places of its words, by name.</summary>
    public ImmutableArray<Argument> Arguments { get; init; }

    /// <summary>The letter that cannot be printed, where that is what is wrong: it may stand in any text; else null.</summary>
    public string? Letter { get; init; }

    /// <summary>The words that it is told in: the command's in English, unless <see cref="In"/> chose others.</summary>
    private ProblemWords Told { get; init; } = ProblemWords.Command;

    /// <summary>What is wrong.</summary>
    public string Wrong => Told.Of(this).Wrong;

    /// <summary>What to write instead.</summary>
    public string Write => Told.Of(this).Write;

    /// <summary>The language that its words are in, by ISO 639-1: English where the language chosen has none for it yet.</summary>
    public string Language => Told.LanguageOf(this);

    /// <summary>The same problem in other words.</summary>
    public Problem In(ProblemWords words) => this with { Told = words };

    /// <summary>The same problem, standing in a file.</summary>
    public Problem At(string? file, int line) => this with { File = file, Line = line };

    /// <summary>An argument by its name; null where it has none so named.</summary>
    public string? ValueOf(string name) => Arguments.FirstOrDefault(a => a.Name == name).Value;

    /// <inheritdoc/>
    public override string ToString()
    {
        var (wrong, write) = Told.Of(this);
        return (File, Line) switch
        {
            (null, _) => $"{wrong} {write}",
            (_, 0) => $"{File}: {wrong} {write}",
            _ => $"{File}, line {Line}: {wrong} {write}",
        };
    }
}

/// <summary>Input that cannot be used as it stands; its message is meant for the person who wrote it.</summary>
public sealed class InputException(Problem problem) : Exception
{
    /// <summary>A problem.</summary>
    /// <param name="file">The file as the person knows it, or null.</param>
    /// <param name="line">The line, counted from 1; 0 where no line applies.</param>
    /// <param name="code">What is wrong.</param>
    /// <param name="arguments">What its words are filled with, by name.</param>
    public InputException(string? file, int line, string code, params ReadOnlySpan<(string Name, object? Value)> arguments)
        : this(new Problem(file, line, code, arguments))
    {
    }

    /// <summary>A problem of what stands in no file: a call, a field, an entry of the books.</summary>
    /// <inheritdoc cref="InputException(string?, int, string, ReadOnlySpan{ValueTuple{string, object?}})"/>
    public InputException(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) : this(null, 0, code, arguments)
    {
    }

    /// <summary>What is wrong, where, and what to write instead.</summary>
    public Problem Problem { get; } = problem;

    /// <inheritdoc/>
    public override string Message => Problem.ToString();
}
