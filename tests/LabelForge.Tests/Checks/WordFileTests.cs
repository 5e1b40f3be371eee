using LabelForge.Tests.Shared;
using YamlDotNet.RepresentationModel;

namespace LabelForge.Tests.Checks;

/// <summary>The files of words, as those who add to them need them.</summary>
public sealed class WordFileTests
{
    private static string Folder => Path.Combine(Repository.Folder, "src", "LabelForge.Law", "Markets", "Words");

    public static TheoryData<string> Files =>
        [.. Directory.EnumerateFiles(Folder, "*.yaml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Files))]
    public void No_list_of_words_holds_one_twice(string file)
    {
        var yaml = new YamlStream();
        yaml.Load(new StringReader(File.ReadAllText(Path.Combine(Folder, file))));
        Assert.Empty(yaml.Documents.SelectMany(d => d.AllNodes).OfType<YamlSequenceNode>()
            .SelectMany(s => s.Children.OfType<YamlScalarNode>().GroupBy(w => w.Value!.ToLowerInvariant()).Where(g => g.Count() > 1)
                .Select(g => $"line {g.Last().Start.Line}: {g.Key}")));
    }
}
