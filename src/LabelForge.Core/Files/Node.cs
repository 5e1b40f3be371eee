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

    /// <summary>Where it stands in its file: keys, and positions in lists counted from 0. Null at the root, and in what ships.</summary>
    public NodePath? Path { get; init; }

    /// <summary>An error that points here.</summary>
    /// <param name="code">What is wrong.</param>
    /// <param name="arguments">What its words are filled with, by name.</param>
    public InputException Refuse(string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        Refuse(new Problem(code, arguments));

    /// <summary>An error that points here.</summary>
    /// <param name="problem">What is wrong, wherever it was found.</param>
    public InputException Refuse(Problem problem) => new(problem with { File = File, Line = Line, Path = Path?.ToString() });

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
            throw Spelling.Nearest(entry.Key, known) is { } nearest
                ? entry.Name.Refuse("key.unknown-nearest", ("what", what), ("name", entry.Key), ("nearest", nearest),
                    ("known", string.Join(", ", known)))
                : entry.Name.Refuse("key.unknown", ("what", what), ("name", entry.Key), ("known", string.Join(", ", known)));
        }
        return this;
    }

    /// <summary>The text of a key that must be there.</summary>
    public TextNode Required(string key, string example) =>
        OptionalText(key)
            ?? throw new InputException(Refuse("key.missing", ("key", key),
                ("example", example)).Problem with
            { Path = new NodePath(Path, key).ToString() });

    /// <summary>The text of a key, or null where it is not there or empty.</summary>
    public TextNode? OptionalText(string key) => this[key] switch
    {
        null => null,
        TextNode { Text: "" or "~" } => null,
        TextNode text => text,
        var other => throw other.Refuse("key.not-one-value", ("key", key), ("kind", other.Kind)),
    };

    /// <summary>A key's nested set, or null where the key is not there.</summary>
    public MapNode? OptionalMap(string key) => this[key] switch
    {
        null => null,
        MapNode map => map,
        var other => throw other.Refuse("key.not-keys-and-values", ("key", key), ("kind", other.Kind)),
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
        [.. Items(key).Select(n => n as TextNode ?? throw n.Refuse("key.not-plain-text", ("key", key), ("kind", n.Kind)))];
}
