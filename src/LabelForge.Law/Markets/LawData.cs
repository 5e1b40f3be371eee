using System.IO.Compression;
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

    /// <summary>The text of a language's words (<see cref="WordList"/>); null where the program carries none.</summary>
    /// <param name="language">Its code (ISO 639-1).</param>
    internal static byte[]? Vocabulary(string language)
    {
        using var stream = Holder.GetManifestResourceStream("vocabulary/" + language);
        if (stream is null)
            return null;
        using var words = new BrotliStream(stream, CompressionMode.Decompress);
        using var text = new MemoryStream();
        words.CopyTo(text);
        return text.ToArray();
    }

    /// <summary>The files whose path begins so, in order.</summary>
    public static IEnumerable<string> Names(string beginning) =>
        Holder.GetManifestResourceNames().Where(n => n.StartsWith(beginning, StringComparison.Ordinal)).Order(StringComparer.Ordinal);
}
