using System.Diagnostics.CodeAnalysis;

namespace LabelForge.Measures;

/// <summary>What came of reading a person's text: a value, or what is wrong with it and what to write instead.</summary>
public readonly record struct Parsed<T>
{
    private Parsed(T? value, Problem? problem) => (Value, Problem) = (value, problem);

    /// <summary>The value read, if the text was right.</summary>
    public T? Value { get; }

    /// <summary>What is wrong, as data; null where nothing is.</summary>
    public Problem? Problem { get; }

    /// <summary>What is wrong, in plain words; null where nothing is.</summary>
    public string? Wrong => Problem?.Wrong;

    /// <summary>What to write instead; null where nothing is wrong.</summary>
    public string? Write => Problem?.Write;

    /// <summary>Whether a value was read.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Problem), nameof(Wrong), nameof(Write))]
    public bool IsValue => Problem is null;

    /// <summary>The value, or the refusal as an error.</summary>
    /// <param name="file">The file that the text stood in, or null where it came from a command.</param>
    /// <param name="line">The line, counted from 1; 0 where no line applies.</param>
    /// <exception cref="InputException">No value was read.</exception>
    public T OrRefuse(string? file = null, int line = 0) => IsValue ? Value : throw new InputException(Problem.At(file, line));

    /// <summary>A value.</summary>
    public static Parsed<T> Of(T value) => new(value, null);

    /// <summary>A refusal.</summary>
    public static Parsed<T> Refused(Problem problem) => new(default, problem);

    /// <summary>A refusal: what is wrong, by its code, and what fills its words.</summary>
    public static Parsed<T> Refused(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new(default, new Problem(code, arguments));
}
