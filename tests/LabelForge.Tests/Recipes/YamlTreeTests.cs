using CsCheck;
using LabelForge.Measures;
using LabelForge.Recipes.Files;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;
using Tokens = YamlDotNet.Core.Tokens;

namespace LabelForge.Tests.Recipes;

/// <summary>Our tree of a YAML text, held against the events of the library's own parser.</summary>
public class YamlTreeTests
{
    private static readonly string[] Files =
    [
        .. new[] { "templates", "src/LabelForge.Law/Markets", "src/LabelForge.Cli/Example", "src/LabelForge.Cli/Starter" }
            .SelectMany(f => Directory.EnumerateFiles(Path.Combine(Repository.Folder, f), "*.yaml", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}")
                && !f.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}"))
            .Order(StringComparer.Ordinal),
    ];

    [Fact]
    public void Every_file_of_ours_is_read_as_the_library_reads_it()
    {
        Assert.NotEmpty(Files);
        Assert.All(Files, f => Assert.Equal(Expected(File.ReadAllText(f)), Ours(File.ReadAllText(f))));
    }

    [Fact]
    public void Whatever_is_changed_in_a_file_it_is_read_as_the_library_reads_it_or_refused_as_there()
    {
        var texts = Files.Select(File.ReadAllText).Where(t => t.Length < 4000).ToArray();
        string[] signs = ["", " ", "  ", "\n", "\r\n", ": ", ":", "- ", "-", "#", " #", "'", "\"", "{", "}", "[", "]", ",", ", ", "&a ",
            "*a", "!t ", "|", ">", "%", "?", "? ", "\t", "~", "\\", "''", "---", "...", "a: b", "\n  x", "é", "@"];
        var slips = Gen.Int[0, signs.Length - 1].Select(i => signs[i]);
        Gen.Select(Gen.Int[0, texts.Length - 1], Gen.Select(Gen.Int[0, 4000], Gen.Int[0, 3], slips).Array[1, 3]).Sample(
            (which, changes) =>
            {
                var text = changes.Aggregate(texts[which], (t, c) => Changed(t, c.Item1 % (t.Length + 1), c.Item2, c.Item3));
                Assert.Equal(Expected(text), Ours(text));
            }, iter: 4000);
    }

    [Theory]
    [InlineData("a:\n- b\n- c: d\n  e: f\ng: h")]
    [InlineData("a: [b, c: d, {e: f, g}, [h]]")]
    [InlineData("? a\n: b\n? c\nd:\ne: \"f \\u00e9\"")]
    [InlineData("{a: , b, \"c\":d, e: [f, ], }")]
    [InlineData("- - a\n  - b\n-\n- c")]
    [InlineData("a: |\n  b\n   c\nd: >-\n  e\n  f\n")]
    [InlineData("a: b\n---\nc: d")]
    [InlineData("%YAML 1.2\n---\na: b\n...\n")]
    [InlineData("a: &x b")]
    [InlineData("a: !t b")]
    [InlineData("a: b\na: c")]
    [InlineData("[a, , b]")]
    [InlineData("a: [b")]
    [InlineData("{ 'a' b, c: d }")]
    [InlineData("{ a: [b] c }")]
    [InlineData("a: [b, ? , c]")]
    [InlineData("a: [b, ?\n]")]
    [InlineData("a: [b, ? : c]")]
    [InlineData("a: [b, ? '', c]")]
    [InlineData("a: [b, ? '' : d, c]")]
    [InlineData("a: [b, ? :, c]")]
    [InlineData("a: [? b, c]")]
    [InlineData("a: [? b : d, c]")]
    [InlineData("a: { b: c, ? , e: f }")]
    [InlineData("a: { b: c,irective, e: f }")]
    [InlineData("we>hing: { test: d,irective, least grams: 5 }")]
    [InlineData("")]
    [InlineData("# nothing")]
    [InlineData("...")]
    [InlineData("... # nothing")]
    [InlineData("...\na: b")]
    [InlineData("---\n...")]
    [InlineData("---\n...\na: b")]
    public void Every_production_is_read_as_the_library_reads_it(string text) => Assert.Equal(Expected(text), Ours(text));

    [Fact]
    public void Every_value_knows_the_characters_it_stands_on()
    {
        const string Text = "name: \"Fen  Meadow \" # so\nmaterials:\n  - { use: base, amount: 900 g }\n  - plain\nlast: [a, b]\n";
        var file = YamlFile.ReadText(Text, "f");
        string At(Node node) => Text[node.Start..node.End];
        Assert.Equal("\"Fen  Meadow \"", At(file["name"]!));
        Assert.Equal("Fen  Meadow ", ((TextNode)file["name"]!).Value);
        var items = file.Items("materials");
        Assert.Equal(["{ use: base, amount: 900 g }", "plain"], items.Select(At));
        Assert.Equal("900 g", At(((MapNode)items[0])["amount"]!));
        Assert.Equal("[a, b]", At(file["last"]!));
        Assert.Equal("last", At(file.Entry("last")!.Name));
    }

    private static string Changed(string text, int at, int cut, string insert) =>
        text[..at] + insert + text[Math.Min(text.Length, at + cut)..];

    private static string Ours(string text) => Said(() => Written(YamlFile.Root(text, "f")));

    // What the library's own parser makes of a text, in the form of our nodes; where it or our rules refuse the text, only that.
    private static string Expected(string text) => Said(() =>
    {
        if (LacksACommaOrAKey(text))
            throw new YamlException("two values in a row, or none behind a question mark");
        var parser = new Parser(new StringReader(text));
        parser.Consume<StreamStart>();
        if (!parser.TryConsume<DocumentStart>(out _))
            throw new YamlException("empty");
        var read = Read(parser);
        parser.Consume<DocumentEnd>();
        return parser.Accept<DocumentStart>(out _) ? throw new YamlException("a second document") : read;
    });

    // What the library's parser takes and ours refuses: a value in braces with no comma before it, which YAML 1.2.2, 7.4.2, wants;
    // and a question mark with no key behind it among items in brackets, behind which the parser skips a sign unread.
    private static bool LacksACommaOrAKey(string text)
    {
        var (tokens, before, around) = (new Scanner(new StringReader(text)), (Tokens.Token?)null, new Stack<Tokens.Token>());
        // Behind a sign that it cannot read the scanner stays where it is.
        while (tokens.MoveNext() && tokens.Current is { } token and not Tokens.Error)
        {
            if (before is Tokens.Scalar or Tokens.FlowSequenceEnd or Tokens.FlowMappingEnd && token is Tokens.Scalar)
                return true;
            var amongItems = around.TryPeek(out var start) && start is Tokens.FlowSequenceStart;
            if (amongItems && before is Tokens.Key && token is Tokens.Value or Tokens.FlowEntry or Tokens.FlowSequenceEnd)
                return true;
            if (token is Tokens.FlowSequenceStart or Tokens.FlowMappingStart)
                around.Push(token);
            else if (token is Tokens.FlowSequenceEnd or Tokens.FlowMappingEnd)
                around.TryPop(out _);
            before = token;
        }
        return false;
    }

    private static string Said(Func<string> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is YamlException or InputException or InvalidOperationException or ArgumentException
            or IndexOutOfRangeException)
        {
            return "refused";
        }
    }

    private static string Read(IParser parser)
    {
        if (parser.Current is NodeEvent { Anchor.IsEmpty: false } or AnchorAlias or NodeEvent { Tag.IsEmpty: false })
            throw new YamlException("a reference");
        // Where nothing stands, the library says now the colon's line and now the next character's; ours is always the colon's.
        if (parser.TryConsume<Scalar>(out var scalar))
            return scalar.Value.Length == 0 ? "nothing" : $"{scalar.Start.Line}\"{scalar.Value.Trim()}\"";
        if (parser.TryConsume<SequenceStart>(out var list))
        {
            var items = new List<string>();
            while (!parser.TryConsume<SequenceEnd>(out _))
                items.Add(Read(parser));
            return $"{list.Start.Line}[{string.Join(',', items)}]";
        }
        var (map, entries, keys) = (parser.Consume<MappingStart>(), new List<string>(), new HashSet<string>());
        // The library gives no place to a key with a value that stands in brackets: its key's is meant.
        var line = (map.Start.Index == 0 && parser.Current is Scalar only ? only : (ParsingEvent)map).Start.Line;
        while (!parser.TryConsume<MappingEnd>(out _))
        {
            var key = parser.Current as Scalar ?? throw new YamlException("a key that is no text");
            Read(parser);
            if (!keys.Add(key.Value.Trim()))
                throw new YamlException("a key twice");
            entries.Add($"{key.Start.Line}{key.Value.Trim()}={Read(parser)}");
        }
        return $"{line}{{{string.Join(',', entries)}}}";
    }

    private static string Written(Node node) => node switch
    {
        TextNode { Value: "" } => "nothing",
        TextNode text => $"{text.Line}\"{text.Text}\"",
        ListNode list => $"{list.Line}[{string.Join(',', list.Items.Select(Written))}]",
        MapNode map => $"{map.Line}{{{string.Join(',', map.Entries.Select(e => $"{e.Line}{e.Key}={Written(e.Value)}"))}}}",
        _ => throw new ArgumentException("Of no kind known."),
    };
}
