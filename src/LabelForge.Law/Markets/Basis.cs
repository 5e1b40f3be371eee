namespace LabelForge.Markets;

/// <summary>What a figure, a rule or a name rests on. Written in the data in lower case.</summary>
public enum Basis
{
    /// <summary>The text that is cited was read, in a copy that <see cref="LawTexts"/> names.</summary>
    Text,

    /// <summary>Somebody else's account of the text was read; or no instrument fixes it, and it is guidance or common practice.</summary>
    Secondary,

    /// <summary>Nobody read the text that is cited: it was written down from memory.</summary>
    Memory,
}

/// <summary>A basis as it is written: <c>text</c>, <c>secondary</c> or <c>memory</c>.</summary>
public static class BasisText
{
    /// <summary>Reads a basis.</summary>
    public static Parsed<Basis> Parse(string text) => text switch
    {
        "text" => Parsed<Basis>.Of(Basis.Text),
        "secondary" => Parsed<Basis>.Of(Basis.Secondary),
        "memory" => Parsed<Basis>.Of(Basis.Memory),
        _ => Parsed<Basis>.Refused("figure.not-a-basis", ("text", text)),
    };

    /// <summary>The basis as data and JSON write it.</summary>
    public static string Of(Basis basis) => basis switch
    {
        Basis.Text => "text",
        Basis.Secondary => "secondary",
        Basis.Memory => "memory",
        _ => throw new ArgumentOutOfRangeException(nameof(basis)),
    };
}
