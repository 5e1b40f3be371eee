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
            .Where(id => !Asked.Value.Contains(id)
                && !Asked.Value.Contains(WithoutLabel(id))
                && !m.Records("warnings").Any(w => "warning.missing/" + w.Text("id", "a name") == id))
            .Select(id => $"{m.Id}: {id}")).Distinct());

    // Words that happen to read like a market's id: columns of the dictionary, ends of internet names, a language, an abbreviation, the
    // shape of a postal code.
    private static readonly string[] OtherWords = ["IngredientRow.cs", "IngredientFile.cs", "IngredientDictionary.cs", "ContactReader.cs",
        "ReadingChecks.cs", "ListSplitter.cs", "AddressReader.cs"];

    [Fact]
    public void No_code_names_a_market()
    {
        var id = new Regex($"\"(?:{string.Join('|', MarketBook.Shipped.Ids)})\"");
        Assert.Equal("",
            string.Join(", ",
                Sources().Where(f => !OtherWords.Contains(Path.GetFileName(f)))
                    .SelectMany(f => id.Matches(File.ReadAllText(f)).Select(m => $"{Path.GetFileName(f)}: {m.Value}"))));
    }

    private static string WithoutLabel(string id) => id.EndsWith("/label", StringComparison.Ordinal) ? id[..^6] : id;

    private static IEnumerable<string> Sources() =>
        Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src"), "*.*", SearchOption.AllDirectories)
            .Where(f => (f.EndsWith(".cs", StringComparison.Ordinal) || f.EndsWith(".razor", StringComparison.Ordinal))
                && !f.Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"));

    [GeneratedRegex("\"([a-z][a-z0-9./-]*)\"")]
    private static partial Regex Literal();
}
