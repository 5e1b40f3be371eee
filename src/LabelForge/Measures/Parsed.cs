using System.Diagnostics.CodeAnalysis;

namespace LabelForge.Measures;

/// <summary>What came of reading a person's text: a value, or what is wrong with it and what to write instead.</summary>
public readonly record struct Parsed<T>
{
    private Parsed(T? value, string? wrong, string? write)
    {
        Value = value;
        Wrong = wrong;
        Write = write;
    }

    /// <summary>The value read, if the text was right.</summary>
    public T? Value { get; }

    /// <summary>What is wrong, in plain words; null where nothing is.</summary>
    public string? Wrong { get; }

    /// <summary>What to write instead; null where nothing is wrong.</summary>
    public string? Write { get; }

    /// <summary>Whether a value was read.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    [MemberNotNullWhen(false, nameof(Wrong), nameof(Write))]
    public bool IsValue => Wrong is null;

    /// <summary>A value.</summary>
    public static Parsed<T> Of(T value) => new(value, null, null);

    /// <summary>A refusal: what is wrong, and what to write instead.</summary>
    public static Parsed<T> Refused(string wrong, string write) => new(default, wrong, write);
}
