using CsCheck;
using LabelForge.Measures;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Recipes;

/// <summary>The quick reader of simple YAML, held against the general one: it may decline to answer, and never answers otherwise.</summary>
public class SimpleYamlTests
{
    private static readonly string[] Files =
    [
        .. new[] { "templates", "src/LabelForge.Law/Markets", "src/LabelForge.Cli/Example", "src/LabelForge.Cli/Starter" }
            .SelectMany(f => Directory.EnumerateFiles(Path.Combine(Repository.Folder, f), "*.yaml", SearchOption.AllDirectories))
            .Where(f => !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}") && !f.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}"))
            .Order(StringComparer.Ordinal),
    ];

    [Fact]
    public void Every_file_of_ours_is_read_the_same_by_both()
    {
        Assert.NotEmpty(Files);
        Assert.All(Files, f => Assert.Equal(General(File.ReadAllText(f)), Simple(File.ReadAllText(f)) ?? General(File.ReadAllText(f))));
    }

    [Fact]
    public void Nearly_every_file_of_ours_is_simple()
    {
        var declined = Files.Where(f => Simple(File.ReadAllText(f)) is null).Select(f => Path.GetRelativePath(Repository.Folder, f)).ToList();
        Assert.True(declined.Count * 20 <= Files.Length, string.Join(", ", declined));
    }

    [Fact]
    public void Whatever_is_changed_in_a_file_the_two_readers_never_differ()
    {
        var texts = Files.Select(File.ReadAllText).Where(t => t.Length < 4000).ToArray();
        string[] signs = ["", " ", "  ", "\n", "\r\n", ": ", ":", "- ", "-", "#", " #", "'", "\"", "{", "}", "[", "]", ",", ", ", "&a ", "*a", "!t ", "|", ">", "%", "?", "? ", "\t", "~", "\\", "''", "---", "...", "a: b", "\n  x", "é", "@"];
        var slips = Gen.Int[0, signs.Length - 1].Select(i => signs[i]);
        Gen.Select(Gen.Int[0, texts.Length - 1], Gen.Select(Gen.Int[0, 4000], Gen.Int[0, 3], slips).Array[1, 3]).Sample(
            (which, changes) =>
            {
                var text = changes.Aggregate(texts[which], (t, c) => Changed(t, c.Item1 % (t.Length + 1), c.Item2, c.Item3));
                return Simple(text) is not { } simple || simple == General(text);
            }, iter: 4000);
    }

    [Theory]
    [InlineData("a: b\n c", "goes on over two lines")]
    [InlineData("a: &x b", "a reference")]
    [InlineData("a: |\n  b", "a block of text")]
    [InlineData("a: \"b\\n\"", "a sign written by its name")]
    [InlineData("a:", "no value")]
    [InlineData("a: b\na: c", "a key twice")]
    [InlineData("a: [b,\n c]", "a list over two lines")]
    [InlineData("a: b: c", "two colons")]
    [InlineData("\ta: b", "a tab")]
    [InlineData("a: b\n---\nc: d", "two documents")]
    public void What_is_not_simple_is_left_to_the_general_reader(string text, string why) => Assert.True(Simple(text) is null, why);

    private static string Changed(string text, int at, int cut, string insert) => text[..at] + insert + text[Math.Min(text.Length, at + cut)..];

    private static string? Simple(string text) => SimpleYaml.Read(text, "f") is { } node ? Written(node) : null;

    private static string General(string text)
    {
        try
        {
            return Written(YamlFile.ReadGenerally(text, "f"));
        }
        catch (InputException e)
        {
            return e.Message;
        }
    }

    private static string Written(Node node) => node switch
    {
        TextNode text => $"{text.Line}\"{text.Text}\"",
        ListNode list => $"{list.Line}[{string.Join(',', list.Items.Select(Written))}]",
        MapNode map => $"{map.Line}{{{string.Join(',', map.Entries.Select(e => $"{e.Line}{e.Key}={Written(e.Value)}"))}}}",
        _ => throw new ArgumentException("Of no kind known."),
    };
}
