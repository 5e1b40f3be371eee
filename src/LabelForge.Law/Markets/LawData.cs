using System.Reflection;
using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>The files of law and words that this assembly carries, by name.</summary>
public static class LawData
{
    private static readonly Assembly Holder = typeof(LawData).Assembly;

    /// <summary>What a file says.</summary>
    /// <param name="name">Its path under <c>Markets</c>, as <c>markets/Words/french.yaml</c>.</param>
    /// <exception cref="InvalidOperationException">There is no such file: a fault of the program.</exception>
    public static Node Tree(string name) => CompiledData.ReadTree(Holder, name);

    /// <summary>The words of a language, one a line; none where the program carries none of it.</summary>
    /// <param name="language">Its code (ISO 639-1).</param>
    public static IEnumerable<string> Vocabulary(string language)
    {
        using var stream = Holder.GetManifestResourceStream("vocabulary/" + language);
        if (stream is null)
            yield break;
        using var reader = new StreamReader(stream);
        while (reader.ReadLine() is { } word)
            yield return word;
    }

    /// <summary>The files whose path begins so, in order.</summary>
    public static IEnumerable<string> Names(string beginning) =>
        Holder.GetManifestResourceNames().Where(n => n.StartsWith(beginning, StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
