using System.Collections.Immutable;
using System.Text;

namespace LabelForge.Recipes.Files;

/// <summary>Reads a value that stands on one line of simple YAML: quoted text, braces, brackets, and what is inside them.</summary>
internal sealed class SimpleYamlLine(string file, int number, string text)
{
    private const int DeepestNesting = 8;

    /// <summary>How far it has been read.</summary>
    public int At { get; private set; }

    /// <summary>The value that begins here, or null where it is not simple.</summary>
    public Node? Value(int depth) => At >= text.Length || depth > DeepestNesting ? null : text[At] switch
    {
        '"' => DoubleQuoted(),
        '\'' => SingleQuoted(),
        '{' => Braces(depth),
        '[' => Brackets(depth),
        _ => Plain(),
    };

    /// <summary>Whether plain text may begin with what stands at a place; all other signs mean something or might.</summary>
    public static bool MayBegin(string text, int at) => text[at] switch
    {
        '<' or '(' or '+' or '.' or '/' or '$' or '_' or '~' or '≤' or '≥' => true,
        '-' => at + 1 < text.Length && char.IsLetterOrDigit(text[at + 1]),
        var sign => char.IsLetterOrDigit(sign),
    };

    // Of what a backslash may name, only a quotation mark and itself.
    private TextNode? DoubleQuoted()
    {
        var quoted = new StringBuilder();
        for (At++; At < text.Length && text[At] != '"'; At++)
        {
            if (text[At] == '\\' && (++At >= text.Length || text[At] is not ('"' or '\\')))
                return null;
            quoted.Append(text[At]);
        }
        return At++ < text.Length ? new TextNode(file, number, quoted.ToString().Trim()) : null;
    }

    private TextNode? SingleQuoted()
    {
        var end = At + 1;
        while ((end = text.IndexOf('\'', end)) >= 0 && end + 1 < text.Length && text[end + 1] == '\'')
            end += 2;
        if (end < 0)
            return null;
        var quoted = text[(At + 1)..end].Replace("''", "'", StringComparison.Ordinal);
        At = end + 1;
        return new TextNode(file, number, quoted.Trim());
    }

    private TextNode? Plain()
    {
        if (!MayBegin(text, At))
            return null;
        var from = At;
        while (At < text.Length && text[At] is not (',' or ']' or '}'))
        {
            if (text[At] is '{' or '[' or '#' or '"' || IsColon())
                return null;
            At++;
        }
        var plain = text[from..At].Trim();
        return new TextNode(file, number, plain);
    }

    private ListNode? Brackets(int depth)
    {
        var items = ImmutableArray.CreateBuilder<Node>();
        At++;
        if (!More(']'))
            return Ended() ? new ListNode(file, number, []) : null;
        do
        {
            if (Value(depth + 1) is not { } item)
                return null;
            items.Add(item);
        }
        while (Next());
        return Closes(']') ? new ListNode(file, number, items.ToImmutable()) : null;
    }

    private MapNode? Braces(int depth)
    {
        var (entries, keys) = (ImmutableArray.CreateBuilder<Entry>(), new HashSet<string>(StringComparer.Ordinal));
        At++;
        if (!More('}'))
            return Ended() ? new MapNode(file, number, []) : null;
        do
        {
            if (Key() is not { } key || Value(depth + 1) is not { } value || !keys.Add(key))
                return null;
            entries.Add(new Entry(key, number, value));
        }
        while (Next());
        return Closes('}') ? new MapNode(file, number, entries.ToImmutable()) : null;
    }

    private string? Key()
    {
        var from = At;
        if (At >= text.Length || !char.IsLetterOrDigit(text[At]))
            return null;
        while (At < text.Length && text[At] != ':')
        {
            if (text[At] is ',' or '{' or '}' or '[' or ']' or '#' or '"' or '\'' or '?')
                return null;
            At++;
        }
        // A space must follow, and the value after it.
        if (At + 1 >= text.Length || text[At + 1] != ' ')
            return null;
        var key = text[from..At].TrimEnd(' ');
        At++;
        Spaces();
        return key;
    }

    private bool IsColon() => text[At] == ':' && (At + 1 == text.Length || text[At + 1] is ' ' or ',' or '[' or ']' or '{' or '}');

    private void Spaces()
    {
        while (At < text.Length && text[At] == ' ')
            At++;
    }

    // Whether something stands before the closing sign.
    private bool More(char closing)
    {
        Spaces();
        return At < text.Length && text[At] != closing;
    }

    private bool Ended() => At++ < text.Length;

    private bool Next()
    {
        Spaces();
        if (At >= text.Length || text[At] != ',')
            return false;
        At++;
        Spaces();
        return true;
    }

    private bool Closes(char closing) => At < text.Length && text[At++] == closing;
}
