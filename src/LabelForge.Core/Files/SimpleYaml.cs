using System.Collections.Immutable;

namespace LabelForge.Recipes.Files;

/// <summary>
/// Reads the YAML that nearly every file of ours is written in: keys and values, lists, braces and brackets on one line,
/// plain and quoted text, comments. Whatever else a text holds, or leaves in doubt, it does not read at all.
/// </summary>
/// <remarks>
/// The general reader takes longer to start than a label takes to draw: it builds patterns at run time. It is asked where
/// this one gives no answer, and for every message about a mistake. Where both answer, they answer the same.
/// </remarks>
internal sealed class SimpleYaml
{
    private const int DeepestNesting = 15;
    private const int LongestKey = 200;

    private readonly string _file;
    private readonly List<(int Number, int Indent, string Content)> _lines = [];
    private int _at;

    private SimpleYaml(string file) => _file = file;

    /// <summary>What a text says, or null where it is not simple.</summary>
    public static Node? Read(string text, string file)
    {
        var reader = new SimpleYaml(file);
        if (!reader.Cut(text) || reader._lines.Count == 0 || reader._lines[0].Indent != 0)
            return null;
        var node = reader.Block(0, 0);
        return reader._at == reader._lines.Count ? node : null;
    }

    // The lines that say something. False where a sign stands in them that may mean something else than itself.
    private bool Cut(string text)
    {
        for (var at = 0; at < text.Length; at++)
        {
            var sign = text[at];
            if (sign is (< ' ' and not '\n') or '\u007f' or '\u0085' or '\u00a0' or '\u2028' or '\u2029' or '\ufeff' && !(sign == '\r' && at + 1 < text.Length && text[at + 1] == '\n'))
                return false;
        }
        var number = 0;
        foreach (var raw in text.AsSpan().EnumerateLines())
        {
            number++;
            var line = raw.TrimEnd(' ');
            var content = line.TrimStart(' ');
            if (content.IsEmpty || content[0] == '#')
                continue;
            if (content.Length == line.Length && (content.StartsWith("---") || content.StartsWith("...") || content[0] == '%'))
                return false;
            _lines.Add((number, line.Length - content.Length, content.ToString()));
        }
        return true;
    }

    private Node? Block(int indent, int depth) => depth > DeepestNesting ? null : IsItem(_lines[_at].Content) ? List(indent, depth) : Map(indent, depth);

    private ListNode? List(int indent, int depth)
    {
        var (line, items) = (_lines[_at].Number, ImmutableArray.CreateBuilder<Node>());
        while (Here(indent) && IsItem(_lines[_at].Content))
        {
            var (number, _, content) = _lines[_at];
            var item = content[1..].TrimStart(' ');
            if (item.Length == 0 || item[0] == '#' || IsItem(item))
                return null;
            Node? node;
            if (KeyEnd(item) >= 0)
            {
                // The keys of a set in a list stand where its first one does.
                var inner = indent + content.Length - item.Length;
                _lines[_at] = (number, inner, item);
                node = Map(inner, depth + 1);
            }
            else
            {
                node = Value(item, number);
                _at++;
            }
            if (node is null || Deeper(indent))
                return null;
            items.Add(node);
        }
        return new ListNode(_file, line, items.ToImmutable());
    }

    private MapNode? Map(int indent, int depth)
    {
        if (depth > DeepestNesting)
            return null;
        var (line, entries, keys) = (_lines[_at].Number, ImmutableArray.CreateBuilder<Entry>(), new HashSet<string>(StringComparer.Ordinal));
        while (Here(indent))
        {
            var (number, _, content) = _lines[_at];
            var end = KeyEnd(content);
            if (end < 0)
                return null;
            var key = content[..end].TrimEnd(' ');
            var rest = content[(end + 1)..].TrimStart(' ');
            _at++;
            Node? value;
            if (rest.Length > 0 && rest[0] != '#')
                value = Value(rest, number);
            else if (Deeper(indent))
                value = Block(_lines[_at].Indent, depth + 1);
            else if (Here(indent) && IsItem(_lines[_at].Content))
                value = List(indent, depth + 1);
            else
                return null;
            if (value is null || Deeper(indent) || !keys.Add(key))
                return null;
            entries.Add(new Entry(key, number, value));
        }
        return entries.Count == 0 ? null : new MapNode(_file, line, entries.ToImmutable());
    }

    private bool Here(int indent) => _at < _lines.Count && _lines[_at].Indent == indent;

    private bool Deeper(int indent) => _at < _lines.Count && _lines[_at].Indent > indent;

    private static bool IsItem(string content) => content[0] == '-' && (content.Length == 1 || content[1] == ' ');

    // Where the colon after a plain key stands, or less than nothing where a line begins with none.
    private static int KeyEnd(string content)
    {
        if (!char.IsLetterOrDigit(content[0]))
            return -1;
        for (var at = 0; at < Math.Min(content.Length, LongestKey); at++)
        {
            switch (content[at])
            {
                case ':' when at + 1 == content.Length || content[at + 1] == ' ':
                    return at;
                case '#' or '"' or '{' or '}' or '[' or ']':
                    return -1;
            }
        }
        return -1;
    }

    private Node? Value(string text, int number)
    {
        if (text[0] is '"' or '\'' or '{' or '[')
        {
            var flow = new SimpleYamlLine(_file, number, text);
            var node = flow.Value(0);
            return node is not null && IsNothing(text.AsSpan(flow.At)) ? node : null;
        }
        if (!SimpleYamlLine.MayBegin(text, 0))
            return null;
        var comment = text.IndexOf(" #", StringComparison.Ordinal);
        var plain = (comment < 0 ? text : text[..comment]).TrimEnd(' ');
        return plain.Contains(": ", StringComparison.Ordinal) || plain.EndsWith(':') ? null : new TextNode(_file, number, plain.Trim());
    }

    // The end of a line, or a comment with a space before it.
    private static bool IsNothing(ReadOnlySpan<char> rest) => rest.IsEmpty || (rest[0] == ' ' && rest.TrimStart(' ') is ['#', ..]);
}
