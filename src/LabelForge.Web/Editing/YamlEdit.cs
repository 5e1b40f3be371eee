using System.Runtime.CompilerServices;
using LabelForge.Recipes.Files;

namespace LabelForge.Web.Editing;

/// <summary>A step into a YAML text: a key, or a place in a list counted from 0.</summary>
public readonly record struct Step
{
    private Step(string? key, int index) => (Key, Index) = (key, index);

    /// <summary>The key; null for a place in a list.</summary>
    public string? Key { get; }

    /// <summary>The place.</summary>
    public int Index { get; }

    /// <summary>A key.</summary>
    public static implicit operator Step(string key) => new(key, -1);

    /// <summary>A place in a list, from 0.</summary>
    public static implicit operator Step(int index) => new(null, index);
}

/// <summary>
/// Changes single values of a YAML text and leaves every other character as the maker wrote it: comments, order, blank lines,
/// the way numbers are aligned.
/// </summary>
/// <remarks>Each change gives a new text. What cannot be done without touching more than it names is refused.</remarks>
public static class YamlEdit
{
    /// <summary>The value at a path as text; null where nothing stands there or it is no single value.</summary>
    public static string? Get(string text, params Step[] path) => (Find(text, path) as TextNode)?.Value;

    /// <summary>How many entries the list or the set at a path has; a single value counts as one, nothing as none.</summary>
    public static int Count(string text, params Step[] path) => Find(text, path) switch
    {
        ListNode list => list.Items.Length,
        MapNode map => map.Entries.Length,
        TextNode { Value: "" } or null => 0,
        _ => 1,
    };

    /// <summary>The keys of the set at a path, in order; none where it is no set.</summary>
    public static IReadOnlyList<string> Keys(string text, params Step[] path) =>
        Find(text, path) is MapNode map ? [.. map.Entries.Select(e => e.Key)] : [];

    /// <summary>The line that the value at a path begins on, from 1; 0 where there is none.</summary>
    public static int LineOf(string text, params Step[] path) => Find(text, path)?.Line ?? 0;

    /// <summary>Writes a value: over the one that is there, or under a new key, placed after the
    /// nearest that comes before it in an order.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">Where.</param>
    /// <param name="value">The value as a person reads it; quotation marks are set where needed.</param>
    /// <param name="order">The usual order of keys in the set that the value goes into.</param>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string Set(string text, ReadOnlySpan<Step> path, string value, IReadOnlyList<string>? order = null)
    {
        if (Find(text, path) is { } there)
        {
            // A value typed for a list of one stands as its only item.
            return there is TextNode scalar ? Checked(Replaced(text, scalar, value))
                : there is ListNode { Items: [TextNode only] } ? Checked(Replaced(text, only, value))
                : throw Refuse("more than one value");
        }
        return InsertKey(text, path, YamlScalar.Write(value), order ?? []);
    }

    /// <summary>Writes an entry as it stands, in YAML, under a key that is not there yet.</summary>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string InsertKey(string text, ReadOnlySpan<Step> path, string written, IReadOnlyList<string> order)
    {
        if (path is not [.., { Key: { } key }])
            throw Refuse("a place in a list that is not there");
        var parent = path[..^1];
        if (Find(text, parent) is TextNode { Value: "" } or null && parent.Length > 0)
            return InsertKey(Remove(text, parent), parent, $"{{ {YamlScalar.Write(key)}: {written} }}", order);
        return Find(text, parent) switch
        {
            MapNode { InBraces: true } map =>
                Checked(YamlLines.IntoFlow(text, map.Start, map.End, map.Entries.Length == 0, Entry(YamlScalar.Write(key), written))),
            MapNode map => Checked(YamlLines.AfterEntry(text, map, Before(map, key, order), Entry(YamlScalar.Write(key), written))),
            null when parent.Length == 0 => Checked(YamlLines.AtEnd(text, Entry(YamlScalar.Write(key), written))),
            _ => throw Refuse("a single value"),
        };
    }

    /// <summary>Adds an item to a list, at its end; makes the list where there is none.</summary>
    /// <param name="text">The text.</param>
    /// <param name="path">The list.</param>
    /// <param name="written">The item as YAML.</param>
    /// <param name="order">The usual order of keys in the set that holds the list.</param>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string Add(string text, ReadOnlySpan<Step> path, string written, IReadOnlyList<string>? order = null)
    {
        switch (Find(text, path))
        {
            case null:
                return InsertKey(text, path, YamlLines.ListOfOne(written), order ?? []);
            case ListNode { InBrackets: true } list:
                return Checked(YamlLines.IntoFlow(text, list.Start, list.End, list.Items.IsEmpty, written));
            case ListNode list:
                return Checked(YamlLines.AfterItem(text, list.Items[^1], written));
            case TextNode { Value: "" }:
                return InsertKey(Remove(text, path), path, YamlLines.ListOfOne(written), order ?? []);
            case TextNode one:
                return Checked(text[..one.Start] + $"[{text[one.Start..one.End]}, {written}]" + text[one.End..]);
            default:
                throw Refuse("a set of keys");
        }
    }

    /// <summary>Takes away the value at a path with its key or its place in the list; comments on lines of their own stay.</summary>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string Remove(string text, ReadOnlySpan<Step> path)
    {
        if (Find(text, path) is not { } value)
            return text;
        var (step, holder) = (path[^1], Find(text, path[..^1]));
        return holder switch
        {
            ListNode { Items.Length: 1 } => Remove(text, path[..^1]),
            ListNode { InBrackets: true } list => Checked(YamlLines.OutOfFlow(text, list.Start, list.End, value.Start, value.End)),
            ListNode => Checked(YamlLines.WithoutLines(text, YamlLines.DashBefore(text, value.Start), value.End)),
            MapNode { InBraces: true } map when map.Entry(step.Key!) is { } entry =>
                Checked(YamlLines.OutOfFlow(text, map.Start, map.End, entry.Name.Start, entry.Value.End)),
            MapNode { Entries.Length: 1 } when path.Length > 1 => Remove(text, path[..^1]),
            MapNode map when map.Entry(step.Key!) is { } entry =>
                Checked(YamlLines.WithoutLines(text, entry.Name.Start, Math.Max(entry.Name.End, entry.Value.End))),
            TextNode when step.Index == 0 => Remove(text, path[..^1]),
            _ => throw Refuse("something that cannot be taken away"),
        };
    }

    /// <summary>Gives a key another name.</summary>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string Rename(string text, ReadOnlySpan<Step> path, string key)
    {
        if (path is not [.., { Key: { } old }] || Find(text, path[..^1]) is not MapNode map || map.Entry(old) is not { } entry)
            throw Refuse("no key");
        return Checked(Replaced(text, entry.Name, key));
    }

    /// <summary>Writes an item of a list as a name alone, or as a name with one value: <c>Glycerin: 15-25 %</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="list">The list.</param>
    /// <param name="index">Which item, from 0; it must be there.</param>
    /// <param name="name">The name.</param>
    /// <param name="value">The value; null or empty for the name alone.</param>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string SetItem(string text, ReadOnlySpan<Step> list, int index, string name, string? value)
    {
        if (Find(text, [.. list, index]) is not { } item)
            throw Refuse("nothing");
        if (item is MapNode { Entries: [{ Value: TextNode } only] } && !string.IsNullOrEmpty(value))
        {
            var renamed = Replaced(text, only.Name, name);
            return Set(renamed, [.. list, index, name], value);
        }
        var inLines = Find(text, list) is ListNode { InBrackets: false };
        var written = string.IsNullOrEmpty(value) ? YamlScalar.Write(name)
            : inLines ? Entry(YamlScalar.Write(name), YamlScalar.Write(value))
            : $"{{ {Entry(YamlScalar.Write(name), YamlScalar.Write(value))} }}";
        return Checked(text[..item.Start] + written + text[item.End..]);
    }

    /// <summary>Moves an item of a list one place up or down, with what stands on its lines.</summary>
    /// <exception cref="InputException">The text cannot be edited there.</exception>
    public static string Swap(string text, ReadOnlySpan<Step> path, int first)
    {
        if (Find(text, path) is not ListNode list || first < 0 || first + 1 >= list.Items.Length)
            return text;
        var (a, b) = (list.Items[first], list.Items[first + 1]);
        return Checked(text[..a.Start] + text[b.Start..b.End] + text[a.End..b.Start] + text[a.Start..a.End] + text[b.End..]);
    }

    private static string Entry(string key, string written) => $"{key}:{(written.StartsWith('\n') ? "" : " ")}{written}";

    private static Node? Find(string text, ReadOnlySpan<Step> path)
    {
        var at = Tree(text);
        foreach (var step in path)
        {
            at = (at, step) switch
            {
                (MapNode map, { Key: { } key }) => map.Entry(key)?.Value,
                (ListNode list, { Key: null, Index: var i }) => i < list.Items.Length ? list.Items[i] : null,
                (TextNode { Value: not "" } or MapNode, { Key: null, Index: 0 }) => at,
                _ => null,
            };
        }
        return at;
    }

    private static int Before(MapNode map, string key, IReadOnlyList<string> order)
    {
        var place = Place(key);
        if (place < 0)
            return map.Entries.Length - 1;
        var before = Enumerable.Range(0, map.Entries.Length).Where(i => Place(map.Entries[i].Key) is var p && p >= 0 && p < place)
            .ToList();
        return before.Count == 0 ? -1 : before.MaxBy(i => Place(map.Entries[i].Key));

        int Place(string k) => Enumerable.Range(0, order.Count).FirstOrDefault(i => order[i] == k, -1);
    }

    private static string Replaced(string text, TextNode scalar, string value)
    {
        var written = YamlScalar.Write(value);
        var before = text[..scalar.Start];
        // An empty value stands right after its colon.
        if (scalar.Start == scalar.End && before.Length > 0 && !char.IsWhiteSpace(before[^1]))
            written = " " + written;
        // A block of lines ends with its line's end, which must stay.
        var end = scalar.End > scalar.Start && text[scalar.End - 1] == '\n' ? scalar.End - 1 : scalar.End;
        return before + written + text[end..];
    }

    // The text's tree; null where it is empty or cannot be read, which the page says in its own place.
    // A page asks one text for each of its fields, each time it is drawn: a text is read once, and let go of with its last holder.
    private static Node? Tree(string text) => Trees.GetValue(text, static t =>
    {
        try
        {
            return new(YamlFile.Root(t, ""));
        }
        catch (InputException)
        {
            return new(null);
        }
    }).Value;

    private static readonly ConditionalWeakTable<string, StrongBox<Node?>> Trees = [];

    // What was edited must be readable as YAML still, or the change is not made.
    private static string Checked(string text) => Tree(text) is not null ? text : throw Refuse("lines that cannot be told apart");

    private static InputException Refuse(string what) =>
        new(null, 0, "form.cannot-change", ("what", what));
}
