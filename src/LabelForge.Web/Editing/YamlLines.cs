using LabelForge.Recipes.Files;

namespace LabelForge.Web.Editing;

/// <summary>Puts lines in and takes lines out of a YAML text, and pieces between brackets.</summary>
internal static class YamlLines
{
    /// <summary>A list of one item as it stands under its key.</summary>
    public static string ListOfOne(string item) => $"\n  - {item}";

    /// <summary>With a line after the entry of a block set at an index; before the first where the index is -1.</summary>
    public static string AfterEntry(string text, MapNode map, int index, string line)
    {
        var column = Column(text, map.Start);
        var indent = text[(map.Start - column)..map.Start];
        // Inside a list the first key stands after a dash: the others stand under it.
        if (indent.Any(c => c != ' '))
            indent = new string(' ', column);
        line = line.Replace("\n", "\n" + indent, StringComparison.Ordinal);
        if (index < 0)
            return text[..map.Start] + line + NewLine(text) + indent + text[map.Start..];
        var entry = map.Entries[index];
        return InsertLine(text, EndOfLine(text, Math.Max(entry.Name.End, entry.Value.End)), indent + line);
    }

    /// <summary>With a line at the end.</summary>
    public static string AtEnd(string text, string line) =>
        (text.Length == 0 || text.EndsWith('\n') ? text : text + NewLine(text)) + line + NewLine(text);

    /// <summary>With an item after one of a block list.</summary>
    public static string AfterItem(string text, Node item, string written)
    {
        var dash = DashBefore(text, item.Start);
        var between = text[(dash + 1)..item.Start];
        return InsertLine(text, EndOfLine(text, item.End),
            $"{new string(' ', Column(text, dash))}-{(between.All(c => c == ' ') && between.Length > 0 ? between : " ")}{written}");
    }

    /// <summary>With a piece before the closing bracket or brace.</summary>
    public static string IntoFlow(string text, int start, int end, bool isEmpty, string piece)
    {
        if (isEmpty)
            return text[..(start + 1)] + $" {piece} " + text[(end - 1)..];
        var at = end - 1;
        while (at > start && char.IsWhiteSpace(text[at - 1]))
            at--;
        var comma = text[at - 1] == ',' ? " " : ", ";
        return text[..at] + comma + piece + text[at..];
    }

    /// <summary>Without a piece between brackets or braces, and without one comma beside it.</summary>
    public static string OutOfFlow(string text, int start, int end, int from, int to)
    {
        var after = to;
        while (after < end && char.IsWhiteSpace(text[after]))
            after++;
        if (text[after] == ',')
        {
            after++;
            while (after < end && text[after] == ' ')
                after++;
            return text[..from] + text[after..];
        }
        var before = from;
        while (before > start + 1 && char.IsWhiteSpace(text[before - 1]))
            before--;
        if (text[before - 1] == ',')
            before--;
        return text[..before] + text[to..];
    }

    /// <summary>Without the lines from one character's to another's.</summary>
    public static string WithoutLines(string text, int from, int to)
    {
        var start = from - Column(text, from);
        // A key that stands after a dash leaves the dash: the entry after it takes its place.
        if (text[start..from].Any(c => c != ' '))
        {
            var next = EndOfLine(text, to) + 1;
            while (next < text.Length && text[next] == ' ')
                next++;
            return text[..from] + text[Math.Min(next, text.Length)..];
        }
        var end = to > from && text[to - 1] == '\n' ? to : Math.Min(text.Length, EndOfLine(text, to) + 1);
        return text[..start] + text[end..];
    }

    /// <summary>Where the dash of a block list's item stands.</summary>
    public static int DashBefore(string text, int start)
    {
        var at = start - 1;
        while (at >= 0 && (text[at] != '-' || (at + 1 < text.Length && !char.IsWhiteSpace(text[at + 1]))))
            at--;
        return at;
    }

    private static string InsertLine(string text, int endOfLine, string line) => endOfLine >= text.Length
        ? AtEnd(text, line)
        : text[..(endOfLine + 1)] + line + NewLine(text) + text[(endOfLine + 1)..];

    // A block of lines ends at the start of the next; its own last line is meant.
    private static int EndOfLine(string text, int at)
    {
        if (at > 0 && at <= text.Length && text[at - 1] == '\n')
            return at - 1;
        var end = text.IndexOf('\n', Math.Min(at, text.Length));
        return end < 0 ? text.Length : end;
    }

    private static int Column(string text, int at) => at == 0 ? 0 : at - (text.LastIndexOf('\n', at - 1) + 1);

    private static string NewLine(string text) => text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
}
