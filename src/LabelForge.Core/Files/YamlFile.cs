using System.Text.Unicode;
using LabelForge.Measures;
using YamlDotNet.Core;

namespace LabelForge.Recipes.Files;

/// <summary>Reads a workshop file into nodes that know their lines.</summary>
public static partial class YamlFile
{
    /// <summary>The largest file that is read, in bytes: for every reader of YAML, the page's own too.</summary>
    public const long LargestFile = 1_000_000;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="shownAs">How messages name it.</param>
    /// <exception cref="InputException">It cannot be read, or is no set of keys and values.</exception>
    public static MapNode Read(string path, string shownAs)
    {
        try
        {
            return ReadText(TextOf(path, shownAs), shownAs);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(shownAs, 0, "yaml.unreadable-file", ("message", e.Message));
        }
    }

    /// <summary>A file's text as it stands.</summary>
    /// <exception cref="InputException">It is larger than any file of a workshop, or holds letters that are not UTF-8.</exception>
    public static string TextOf(string path, string shownAs)
    {
        if (new FileInfo(path).Length > LargestFile)
            throw TooLarge(shownAs);
        var bytes = File.ReadAllBytes(path);
        // A mark of UTF-16 or UTF-32 at the start says how to read it; without one, a letter that is not UTF-8 would be lost unseen.
        if (bytes is not ([0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] or [0, 0, 0xFE, 0xFF, ..]) && !Utf8.IsValid(bytes))
            throw new InputException(shownAs, FirstLineNotUtf8(bytes), "yaml.not-utf-8");
        using var reader = new StreamReader(new MemoryStream(bytes), Encoding.UTF8, detectEncodingFromByteOrderMarks: true);
        return reader.ReadToEnd();
    }

    private static int FirstLineNotUtf8(ReadOnlySpan<byte> bytes)
    {
        var line = 1;
        foreach (var part in bytes.Split((byte)'\n'))
        {
            if (!Utf8.IsValid(bytes[part]))
                return line;
            line++;
        }
        return 0;
    }

    internal static InputException TooLarge(string shownAs) =>
        new(shownAs, 0, "yaml.too-large");

    /// <summary>Reads a file's text.</summary>
    /// <exception cref="InputException">It is not readable, is no set of keys and values, or a
    /// name in it would lose its number.</exception>
    public static MapNode ReadText(string text, string shownAs)
    {
        var node = Root(text, shownAs);
        if (node is not MapNode map)
            throw node.Refuse("yaml.not-keys-and-values", ("kind", node.Kind));
        if (HasNumberSign(text) && CutName().Match(text) is { Success: true } cut)
        {
            var (name, number) = (cut.Groups["name"].Value, cut.Groups["number"].Value.TrimEnd());
            throw new InputException(shownAs, text.AsSpan(0, cut.Index).Count('\n') + 1, "yaml.name-cut", ("name", name),
                ("number", number));
        }
        return map;
    }

    // Asked of every file before the pattern, whose first use takes as long as reading thirty files.
    private static bool HasNumberSign(string text)
    {
        for (var at = text.IndexOf('#', StringComparison.Ordinal); at >= 0; at = text.IndexOf('#', at + 1))
        {
            if (at + 1 < text.Length && char.IsDigit(text[at + 1]))
                return true;
        }
        return false;
    }

    /// <summary>What a text is: keys and values, a list, or one value.</summary>
    /// <exception cref="InputException">It is not readable.</exception>
    public static Node Root(string text, string shownAs)
    {
        try
        {
            return YamlTree.Read(text, shownAs);
        }
        catch (YamlException) when (GreaterSign().Match(text) is { Success: true } share)
        {
            // To YAML a value that begins with > is the head of a longer text.
            var line = text.AsSpan(0, share.Index).Count('\n') + 1;
            var (sign, rest) = (share.Groups["sign"].Value, share.Groups["rest"].Value.Trim());
            throw new InputException(shownAs, line, "yaml.greater-sign", ("sign", sign),
                ("value", (sign == ">" ? "more than" : "at least")), ("rest", rest));
        }
        catch (YamlException) when (Tabbed().Match(text) is { Success: true } tab)
        {
            throw new InputException(shownAs, text.AsSpan(0, tab.Index).Count('\n') + 1, "yaml.tab");
        }
        catch (YamlException e)
        {
            throw new InputException(shownAs, (int)e.Start.Line, "yaml.unreadable", ("message", e.Message.TrimEnd('.')));
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or IndexOutOfRangeException or OverflowException)
        {
            // The scanner gives up on some files without saying where.
            throw new InputException(shownAs, 0, "yaml.unreadable-somewhere");
        }
    }

    // A number behind a # in what will be printed as a name, outside quotation marks: to YAML the rest of the line is a remark.
    [GeneratedRegex(@"^[ \t]*(?:-[ \t]+)?(?:name|identity|business):[ \t]+(?<name>[^""'\s#|>][^""'\r\n]*?)[ \t]+(?<number>#[0-9][^\r\n]*)",
        RegexOptions.Multiline)]
    private static partial Regex CutName();

    [GeneratedRegex(@"^ *(?:- +)?\t+(?=[^\s#])", RegexOptions.Multiline)]
    private static partial Regex Tabbed();

    [GeneratedRegex(@"(?<=:[ \t]+)(?<sign>>=?)[ \t]*(?<rest>[0-9][^\r\n,}\]#]*)")]
    private static partial Regex GreaterSign();
}
