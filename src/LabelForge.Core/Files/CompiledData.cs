using System.Reflection;

namespace LabelForge.Recipes.Files;

/// <summary>A row of a table that ships with the program.</summary>
/// <param name="Line">Its line in the table's file, counted from 1.</param>
/// <param name="Cells">Its cells, without the spaces around them.</param>
public sealed record CompiledRow(int Line, ImmutableArray<string> Cells);

/// <summary>
/// Data that ships inside an assembly, in the form that the build made of it: the tree of a YAML file or the rows of a table,
/// already parsed, so that starting the program reads no text and needs no second reader.
/// </summary>
/// <remarks>
/// A file begins with its kind and its strings, each once, as UTF-8 with a length before it; then come the nodes, or the rows, as
/// counts, lines and numbers of strings. Numbers are written seven bits to a byte (as by <see cref="BinaryWriter.Write7BitEncodedInt"/>).
/// The places of characters are left out: nobody edits what ships.
/// </remarks>
public static class CompiledData
{
    private const byte Tree = 1;
    private const byte Table = 2;
    private const byte Text = 0;
    private const byte List = 1;
    private const byte Map = 2;

    /// <summary>Writes a tree.</summary>
    /// <param name="root">The tree.</param>
    /// <param name="to">Where.</param>
    public static void WriteTree(Node root, Stream to) => Write(to, Tree, (body, strings) => Write(root, body, strings));

    /// <summary>Writes the rows of a table.</summary>
    /// <param name="rows">The rows, the heading among them.</param>
    /// <param name="to">Where.</param>
    public static void WriteTable(IReadOnlyList<CompiledRow> rows, Stream to) => Write(to, Table, (body, strings) =>
    {
        body.Write7BitEncodedInt(rows.Count);
        foreach (var row in rows)
        {
            body.Write7BitEncodedInt(row.Line);
            body.Write7BitEncodedInt(row.Cells.Length);
            foreach (var cell in row.Cells)
                body.Write7BitEncodedInt(strings.Of(cell));
        }
    });

    /// <summary>The tree of a shipped file.</summary>
    /// <param name="assembly">The assembly that it ships in.</param>
    /// <param name="name">The resource's name, which messages show too.</param>
    /// <exception cref="InvalidOperationException">No such tree ships there: a mistake of the build.</exception>
    public static Node ReadTree(Assembly assembly, string name)
    {
        var (reader, strings) = Open(assembly, name, Tree);
        using (reader)
            return Node(reader, strings, name);
    }

    /// <summary>The rows of a shipped table, the heading first.</summary>
    /// <param name="assembly">The assembly that it ships in.</param>
    /// <param name="name">The resource's name.</param>
    /// <exception cref="InvalidOperationException">No such table ships there: a mistake of the build.</exception>
    public static ImmutableArray<CompiledRow> ReadTable(Assembly assembly, string name)
    {
        var (reader, strings) = Open(assembly, name, Table);
        using (reader)
        {
            var rows = ImmutableArray.CreateBuilder<CompiledRow>(reader.Read7BitEncodedInt());
            for (var left = rows.Capacity; left > 0; left--)
            {
                var (line, cells) = (reader.Read7BitEncodedInt(), new string[reader.Read7BitEncodedInt()]);
                for (var at = 0; at < cells.Length; at++)
                    cells[at] = strings[reader.Read7BitEncodedInt()];
                rows.Add(new CompiledRow(line, ImmutableArray.Create(cells)));
            }
            return rows.MoveToImmutable();
        }
    }

    private static void Write(Stream to, byte kind, Action<BinaryWriter, Strings> content)
    {
        var (strings, bytes) = (new Strings(), new MemoryStream());
        using (var body = new BinaryWriter(bytes, Encoding.UTF8, leaveOpen: true))
            content(body, strings);
        using var whole = new BinaryWriter(to, Encoding.UTF8, leaveOpen: true);
        whole.Write(kind);
        whole.Write7BitEncodedInt(strings.All.Count);
        foreach (var text in strings.All)
            whole.Write(text);
        whole.Write(bytes.ToArray());
    }

    private static void Write(Node node, BinaryWriter body, Strings strings)
    {
        body.Write(node switch { TextNode => Text, ListNode => List, _ => Map });
        body.Write7BitEncodedInt(node.Line);
        switch (node)
        {
            case TextNode text:
                body.Write7BitEncodedInt(strings.Of(text.Text));
                break;
            case ListNode list:
                body.Write7BitEncodedInt(list.Items.Length);
                foreach (var item in list.Items)
                    Write(item, body, strings);
                break;
            case MapNode map:
                body.Write7BitEncodedInt(map.Entries.Length);
                foreach (var entry in map.Entries)
                {
                    body.Write7BitEncodedInt(entry.Line);
                    body.Write7BitEncodedInt(strings.Of(entry.Key));
                    Write(entry.Value, body, strings);
                }
                break;
            default:
                throw new ArgumentException($"{node.Kind} cannot be compiled.", nameof(node));
        }
    }

    private static Node Node(BinaryReader reader, string[] strings, string file)
    {
        var (kind, line) = (reader.ReadByte(), reader.Read7BitEncodedInt());
        if (kind == Text)
            return new TextNode(file, line, strings[reader.Read7BitEncodedInt()]);
        var count = reader.Read7BitEncodedInt();
        if (kind == List)
        {
            var items = ImmutableArray.CreateBuilder<Node>(count);
            while (items.Count < count)
                items.Add(Node(reader, strings, file));
            return new ListNode(file, line, items.MoveToImmutable());
        }
        var entries = ImmutableArray.CreateBuilder<Entry>(count);
        while (entries.Count < count)
        {
            var key = new TextNode(file, reader.Read7BitEncodedInt(), strings[reader.Read7BitEncodedInt()]);
            entries.Add(new Entry(key, Node(reader, strings, file)));
        }
        return new MapNode(file, line, entries.MoveToImmutable());
    }

    private static (BinaryReader Reader, string[] Strings) Open(Assembly assembly, string name, byte kind)
    {
        var reader = new BinaryReader(assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"Nothing named {name} ships in {assembly.GetName().Name}."), Encoding.UTF8);
        if (reader.ReadByte() != kind)
            throw new InvalidOperationException($"{name} ships in another form than is asked for.");
        var strings = new string[reader.Read7BitEncodedInt()];
        for (var at = 0; at < strings.Length; at++)
            strings[at] = reader.ReadString();
        return (reader, strings);
    }

    // Each string once, numbered in the order in which it is first needed.
    private sealed class Strings
    {
        private readonly Dictionary<string, int> _numbers = new(StringComparer.Ordinal);

        public List<string> All { get; } = [];

        public int Of(string text)
        {
            if (!_numbers.TryGetValue(text, out var number))
            {
                _numbers[text] = number = All.Count;
                All.Add(text);
            }
            return number;
        }
    }
}
