namespace LabelForge.Measures;

/// <summary>What fills a place of a problem's words.</summary>
/// <param name="Name">The name of the place, as the words have it in braces.</param>
/// <param name="Value">What stands there, as text.</param>
public readonly record struct Argument(string Name, string Value)
{
    /// <summary>The problem that this one is about, where it wraps one: the words take both its
    /// halves, <c>{inner.wrong}</c> and <c>{inner.write}</c>.</summary>
    public Problem? Inner { get; init; }

    /// <summary>An argument of any value: numbers as the invariant culture writes them.</summary>
    /// <param name="named">Its name and value.</param>
    public static Argument Of((string Name, object? Value) named) => named.Value is Problem inner
        ? new(named.Name, inner.ToString()) { Inner = inner }
        : new(named.Name, Convert.ToString(named.Value, System.Globalization.CultureInfo.InvariantCulture) ?? "");
}
