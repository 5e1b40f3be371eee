using System.Collections.Immutable;
using LabelForge.Measures;

namespace LabelForge.Recipes.Files;

/// <summary>A piece of a YAML text that knows the file, the line and the characters it stands on.</summary>
/// <param name="File">The file as the maker knows it.</param>
/// <param name="Line">The line, counted from 1.</param>
public abstract record Node(string File, int Line)
{
    /// <summary>Its first character in the text, counted from 0.</summary>
    public int Start { get; init; }

    /// <summary>The character after its last.</summary>
    public int End { get; init; }

    /// <summary>An error that points here.</summary>
    public InputException Refuse(string wrong, string write) => new(new Problem(File, Line, wrong, write));

    /// <summary>What this is, for a sentence.</summary>
    public abstract string Kind { get; }
}

/// <summary>One value, as the maker wrote it. Null is written as nothing or <c>~</c>.</summary>
public sealed record TextNode(string File, int Line, string Text) : Node(File, Line)
{
    /// <inheritdoc/>
    public override string Kind => "a single value";

    /// <summary>The value with the spaces that quotation marks keep; <see cref="Text"/> is without those at its ends.</summary>
    public string Value { get; init; } = Text;
}

/// <summary>A list.</summary>
public sealed record ListNode(string File, int Line, ImmutableArray<Node> Items) : Node(File, Line)
{
    /// <inheritdoc/>
    public override string Kind => "a list";

    /// <summary>Whether it stands in brackets, rather than in lines with a dash.</summary>
    public bool InBrackets { get; init; }
}

/// <summary>One key with its value.</summary>
/// <param name="Name">The key, with its place.</param>
/// <param name="Value">The value.</param>
public sealed record Entry(TextNode Name, Node Value)
{
    /// <summary>The key.</summary>
    public string Key => Name.Text;

    /// <summary>The line that the key stands on, counted from 1.</summary>
    public int Line => Name.Line;
}

/// <summary>A set of keys with values, in the maker's order; no key stands twice.</summary>
public sealed record MapNode(string File, int Line, ImmutableArray<Entry> Entries) : Node(File, Line)
{
    /// <inheritdoc/>
    public override string Kind => "a set of keys and values";

    /// <summary>Whether it stands in braces, rather than in lines of its own.</summary>
    public bool InBraces { get; init; }

    /// <summary>A key with its value, or null where the key is not there.</summary>
    public Entry? Entry(string key) => Entries.FirstOrDefault(e => e.Key == key);

    /// <summary>The value of a key, or null where the key is not there.</summary>
    public Node? this[string key] => Entry(key)?.Value;

    /// <summary>Refuses any key but these, naming the nearest that is known.</summary>
    public MapNode OnlyKeys(string what, params string[] known)
    {
        foreach (var entry in Entries.Where(e => !known.Contains(e.Key)))
        {
            var nearest = Spelling.Nearest(entry.Key, known);
            var write = nearest is null
                ? $"Known here: {string.Join(", ", known)}."
                : $"Did you mean \"{nearest}\"? Known here: {string.Join(", ", known)}.";
            throw new InputException(new Problem(File, entry.Line, $"{what} has no \"{entry.Key}\".", write));
        }
        return this;
    }

    /// <summary>The text of a key that must be there.</summary>
    public TextNode Required(string key, string example) =>
        OptionalText(key) ?? throw new InputException(Refuse($"\"{key}\" is missing.", $"Write, for example: {key}: {example}").Problem with { Key = key });

    /// <summary>The text of a key, or null where it is not there or empty.</summary>
    public TextNode? OptionalText(string key) => this[key] switch
    {
        null => null,
        TextNode { Text: "" or "~" } => null,
        TextNode text => text,
        var other => throw other.Refuse($"\"{key}\" is {other.Kind}.", $"Write one value: {key}: ..."),
    };

    /// <summary>A key's nested set, or null where the key is not there.</summary>
    public MapNode? OptionalMap(string key) => this[key] switch
    {
        null => null,
        MapNode map => map,
        var other => throw other.Refuse($"\"{key}\" is {other.Kind}.", $"Write keys and values under it, or {key}: {{ ... }}."),
    };

    /// <summary>A key's values as a list; one value alone counts as a list of one.</summary>
    public ImmutableArray<Node> Items(string key) => this[key] switch
    {
        null => [],
        ListNode list => list.Items,
        var one => [one],
    };

    /// <summary>A key's values as lines of text.</summary>
    public ImmutableArray<TextNode> Texts(string key) =>
        [.. Items(key).Select(n => n as TextNode ?? throw n.Refuse($"\"{key}\" holds {n.Kind}.", "Write plain text, one line each."))];
}
