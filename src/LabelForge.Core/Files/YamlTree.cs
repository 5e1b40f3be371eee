using LabelForge.Measures;
using YamlDotNet.Core;
using YamlDotNet.Core.Tokens;

namespace LabelForge.Recipes.Files;

/// <summary>Builds the tree of a YAML text, each value with its place: the one reader for files
/// that are read and for files that are edited.</summary>
/// <remarks>
/// Stands on the library's scanner, which knows indentation, quoting and line folding, and puts tokens together by the productions
/// of YAML 1.2.2, chapters 7 and 8. The library's parser is not used: it builds and compiles patterns for anchors and tags when it
/// starts, forty milliseconds before the first label, and those are refused here. Anchors, aliases and tags are not needed in a
/// workshop, and without them no small file can grow into a large one in memory.
/// </remarks>
internal sealed class YamlTree
{
    /// <summary>How deep lists and sets may stand inside one another; deeper is refused, since reading goes as deep as the text.</summary>
    public const int DeepestNesting = 20;

    private readonly Scanner _tokens;
    private readonly string _file;

    // The place of the value that is read now.
    private NodePath? _path;

    private YamlTree(string text, string file)
    {
        _tokens = new Scanner(new StringReader(text));
        _file = file;
        Next();
    }

    /// <summary>The tree of a text.</summary>
    /// <exception cref="InputException">The text is empty, or is not readable as one document of YAML without references.</exception>
    /// <exception cref="YamlException">The scanner cannot tell its characters apart.</exception>
    public static Node Read(string text, string file)
    {
        if (text.Length > YamlFile.LargestFile)
            throw YamlFile.TooLarge(file);
        var tree = new YamlTree(text, file);
        tree.Next<StreamStart>();
        var began = false;
        while (tree.Current is DocumentStart or VersionDirective or TagDirective)
        {
            began |= tree.Current is DocumentStart;
            tree.Next();
        }
        if (tree.Current is StreamEnd or DocumentEnd && !began)
            throw new InputException(file, 1, "yaml.empty");
        var node = tree.Node(0);
        while (tree.Current is DocumentEnd)
            tree.Next();
        return tree.Current switch
        {
            StreamEnd => node,
            DocumentStart second => throw new InputException(file, Line(second.Start), "yaml.second-document"),
            _ => throw tree.Unexpected("the end of the file"),
        };
    }

    private Token Current => _tokens.Current ?? throw new InputException(_file, 0, "yaml.ends-early");

    private void Next()
    {
        if (_tokens.MoveNext() && _tokens.Current is Error error)
            throw new YamlException(error.Start, error.End, error.Value);
    }

    private T Next<T>() where T : Token
    {
        if (Current is not T token)
            throw Unexpected(typeof(T).Name);
        Next();
        return token;
    }

    // What stands here, or an empty value where the place of a value holds none.
    private Node Node(int depth, bool mayBeDashes = false)
    {
        if (depth > DeepestNesting)
            throw new InputException(_file, Line(Current.Start), "yaml.too-deep");
        NoReferences();
        switch (Current)
        {
            case Scalar scalar:
                Next();
                return new TextNode(_file, Line(scalar.Start), scalar.Value.Trim())
                {
                    Value = scalar.Value,
                    Start = At(scalar.Start),
                    End = At(scalar.End),
                    Path = _path,
                };
            case BlockMappingStart:
                return Keys(depth);
            case BlockSequenceStart start:
                Next();
                var list = Dashes(start.Start, depth);
                Next<BlockEnd>();
                return list;
            case BlockEntry entry when mayBeDashes:
                return Dashes(entry.Start, depth);
            case FlowMappingStart:
                return Braces(depth);
            case FlowSequenceStart:
                return Brackets(depth);
            default:
                return Empty(Current.Start);
        }
    }

    private TextNode Empty(Mark at) => new(_file, Line(at), "") { Start = At(at), End = At(at), Path = _path };

    // Items in lines of their own, each after a dash.
    private ListNode Dashes(Mark start, int depth)
    {
        var (items, above) = (ImmutableArray.CreateBuilder<Node>(), _path);
        while (Current is BlockEntry dash)
        {
            Next();
            _path = new NodePath(above, items.Count);
            items.Add(Current is BlockEntry or BlockEnd or Key or Value ? Empty(dash.End) : Node(depth + 1));
        }
        _path = above;
        return new ListNode(_file, Line(start), items.ToImmutable())
        {
            Start = At(start),
            End = items.Count == 0 ? At(start) : items[^1].End,
            Path = _path,
        };
    }

    // Keys in lines of their own.
    private MapNode Keys(int depth)
    {
        var (start, entries) = (Next<BlockMappingStart>(), new Entries(this));
        // A colon with no key before it is refused, as the library does.
        while (Current is Key)
            AddValue(entries, KeyOfEntry(depth, static t => t is Key or Value or BlockEnd), depth,
                static t => t is Key or Value or BlockEnd, mayBeDashes: true);
        Next<BlockEnd>();
        return entries.Map(start.Start, null);
    }

    private Node KeyOfEntry(int depth, Func<Token, bool> isNone)
    {
        if (Current is not Key key)
            return Empty(Current.Start);
        Next();
        return isNone(Current) ? Empty(key.End) : Node(depth + 1, mayBeDashes: true);
    }

    private void AddValue(Entries entries, Node key, int depth, Func<Token, bool> isNone, bool mayBeDashes)
    {
        var above = _path;
        _path = new NodePath(above, (key as TextNode)?.Text ?? "");
        entries.Add(key with { Path = _path }, ValueOfEntry(depth, isNone, mayBeDashes));
        _path = above;
    }

    private Node ValueOfEntry(int depth, Func<Token, bool> isNone, bool mayBeDashes)
    {
        if (Current is not Value value)
            return Empty(Current.Start);
        Next();
        return isNone(Current) ? Empty(value.End) : Node(depth + 1, mayBeDashes);
    }

    private ListNode Brackets(int depth)
    {
        var (start, items, above) = (Next<FlowSequenceStart>(), ImmutableArray.CreateBuilder<Node>(), _path);
        while (Current is not FlowSequenceEnd)
        {
            if (items.Count > 0)
                Next<FlowEntry>();
            if (Current is FlowSequenceEnd)
                break;
            _path = new NodePath(above, items.Count);
            items.Add(Current is Key ? Pair(depth + 1) : Item(depth + 1));
        }
        _path = above;
        var end = Next<FlowSequenceEnd>();
        return new ListNode(_file, Line(start.Start), items.ToImmutable())
        {
            Start = At(start.Start),
            End = At(end.Start) + 1,
            InBrackets = true,
            Path = _path,
        };
    }

    // A key with a value that stands among the items of a list in brackets: a set of one.
    private MapNode Pair(int depth)
    {
        if (depth > DeepestNesting)
            throw new InputException(_file, Line(Current.Start), "yaml.too-deep");
        var (start, entries) = (Current.Start, new Entries(this));
        static bool None(Token t) => t is FlowEntry or FlowSequenceEnd or Value;
        Next<Key>();
        // A question mark with no key behind it is refused among items in brackets, as the library does.
        if (None(Current))
            throw Unexpected("a key");
        AddValue(entries, Node(depth + 1), depth, None, mayBeDashes: false);
        return entries.Map(start, null);
    }

    private MapNode Braces(int depth)
    {
        var (start, entries) = (Next<FlowMappingStart>(), new Entries(this));
        static bool None(Token t) => t is FlowEntry or FlowMappingEnd or Value;
        while (Current is not FlowMappingEnd)
        {
            if (entries.Any)
                Next<FlowEntry>();
            if (Current is FlowMappingEnd)
                break;
            // A key alone, with no colon, has an empty value.
            var key = Current is Key or Value ? KeyOfEntry(depth, None) : Item(depth + 1);
            AddValue(entries, key, depth, None, mayBeDashes: false);
        }
        var end = Next<FlowMappingEnd>();
        return entries.Map(start.Start, end.Start);
    }

    private Node Item(int depth) =>
        Current is FlowEntry or Value or FlowMappingEnd or FlowSequenceEnd or StreamEnd ? throw Unexpected("a value") : Node(depth);

    private void NoReferences()
    {
        if (Current is Anchor or AnchorAlias)
            throw new InputException(_file, Line(Current.Start), "yaml.reference");
        if (Current is Tag tag)
            throw new InputException(_file, Line(tag.Start), "yaml.tag", ("handle", tag.Handle), ("suffix", tag.Suffix));
    }

    private YamlException Unexpected(string instead) => new(Current.Start, Current.End, $"Something else than {instead} stands here");

    private static int At(Mark mark) => (int)mark.Index;

    private static int Line(Mark mark) => (int)mark.Line;

    // The entries of a set as they are read: no key twice.
    private sealed class Entries(YamlTree tree)
    {
        private readonly ImmutableArray<Entry>.Builder _entries = ImmutableArray.CreateBuilder<Entry>();
        private readonly HashSet<string> _keys = new(StringComparer.Ordinal);

        public bool Any => _entries.Count > 0;

        public void Add(Node key, Node value)
        {
            if (key is not TextNode name)
                throw key.Refuse("yaml.key-not-text");
            if (!_keys.Add(name.Text))
                throw name.Refuse("yaml.key-twice", ("name", name.Text));
            _entries.Add(new Entry(name, value));
        }

        // The end of a set in lines is the end of its last value.
        public MapNode Map(Mark start, Mark? end) => new(tree._file, Line(start), _entries.ToImmutable())
        {
            Start = At(start),
            End = end is { } closing ? At(closing) + 1 : Any ? Math.Max(_entries[^1].Name.End, _entries[^1].Value.End) : At(start),
            InBraces = end is not null,
            Path = tree._path,
        };
    }
}
