using System.Text.RegularExpressions;
using LabelForge.Markets;

namespace LabelForge.Tests.House;

/// <summary>What stands in a market's folder and no code asks for decides nothing: it is found here. And code names no market.</summary>
public sealed partial class UnaskedTests
{
    private static readonly Lazy<HashSet<string>> Asked = new(() =>
        [.. Sources().SelectMany(f => Literal().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))]);

    [Fact]
    public void Every_figure_of_every_market_is_asked_for() =>
        Assert.Empty(MarketBook.Shipped.All.SelectMany(m => m.Figures.Entries.Select(e => e.Id).Distinct()
            .Where(id => !Asked.Value.Contains(id)).Select(id => $"{m.Id}: {id}")));

    [Fact]
    public void Every_rule_of_every_market_is_asked_for() =>
        Assert.Empty(MarketBook.Shipped.All.SelectMany(m => m.Rules.Select(r => r.Id)
            .Where(id => !Asked.Value.Contains(id) && !Asked.Value.Contains(WithoutLabel(id)) && !m.Records("warnings").Any(w => "warning.missing/" + w.Text("id", "a name") == id))
            .Select(id => $"{m.Id}: {id}")).Distinct());

    [Fact]
    public void No_code_names_a_market()
    {
        var named = Sources().SelectMany(f => Named().Matches(File.ReadAllText(f)).Select(m => $"{Path.GetFileName(f)}: {m.Value}"));
        Assert.Empty(named);
    }

    private static string WithoutLabel(string id) => id.EndsWith("/label", StringComparison.Ordinal) ? id[..^6] : id;

    private static IEnumerable<string> Sources() => Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src"), "*.*", SearchOption.AllDirectories)
        .Where(f => (f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal)) && !f.Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"));

    [GeneratedRegex("\"([a-z][a-z0-9./-]*)\"")]
    private static partial Regex Literal();

    [GeneratedRegex(@"\bMarket\.(?:Us|Eu|Uk|Ca)\b|[mM]arket\w*\s*(?:==|!=|is(?: not)?)\s*""(?:us|eu|uk|ca)""|MarketText\.Parse\(""(?:us|eu|uk|ca)""\)")]
    private static partial Regex Named();
}
