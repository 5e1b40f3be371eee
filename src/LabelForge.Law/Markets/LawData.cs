using System.Reflection;

namespace LabelForge.Markets;

/// <summary>The files of law and words that this assembly carries, by name.</summary>
public static class LawData
{
    private static readonly Assembly Holder = typeof(LawData).Assembly;

    /// <summary>Opens one file for reading.</summary>
    /// <param name="name">Its path under <c>Markets</c>, as <c>markets/Words/french.yaml</c>.</param>
    /// <exception cref="ArgumentException">There is no such file: a fault of the program.</exception>
    public static StreamReader Open(string name) => new(Holder.GetManifestResourceStream(name) ?? throw new ArgumentException($"No file {name} is carried here.", nameof(name)));

    /// <summary>The files whose path begins so, in order.</summary>
    public static IEnumerable<string> Names(string beginning) =>
        Holder.GetManifestResourceNames().Where(n => n.StartsWith(beginning, StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
