using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;
using LabelForge.Checks;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Markets;

/// <summary>What the law here rests on: texts that were read, accounts of them, or memory. Memory may only shrink.</summary>
public partial class BasisTests(ITestOutputHelper output)
{
    private static readonly string[] Columns = ["file", "text", "secondary", "memory"];

    [Fact]
    public void What_rests_on_memory_does_not_grow_in_any_file()
    {
        var counted = Counted().ToArray();
        foreach (var (file, count) in counted)
            output.WriteLine($"{file},{count[Basis.Text]},{count[Basis.Secondary]},{count[Basis.Memory]}");
        var recorded = Recorded();
        var grown = counted.Where(c => c.Count[Basis.Memory] > recorded.GetValueOrDefault(c.File))
            .Select(c => $"{c.File}: {c.Count[Basis.Memory]}");
        Assert.Empty(grown);
    }

    [Fact]
    public void Less_than_one_name_of_the_dictionary_in_ten_rests_on_memory()
    {
        var entries = IngredientDictionary.Shipped.Entries;
        Assert.InRange(entries.Count(e => e.Basis == Basis.Memory), 0, (entries.Length - 1) / 10);
    }

    [Fact]
    public void A_finding_rests_on_what_its_rule_rests_on_or_on_the_row_it_was_found_by()
    {
        Assert.Equal(Basis.Text, Market.Us.On(new DateOnly(2026, 11, 25)).Rule("ingredients.missing")!.Find("label").Basis);
        Assert.Equal(Basis.Memory, Market.Us.On(new DateOnly(2026, 11, 25)).Rule("lot.missing")!.Find("label").Basis);
        Assert.Equal(Basis.Secondary,
            Market.Us.On(new DateOnly(2026, 11, 25)).Rule("ingredients.missing")!.Find("label").By(Basis.Secondary).Basis);
    }

    private static IEnumerable<(string File, Dictionary<Basis, int> Count)> Counted()
    {
        foreach (var (name, path) in Files())
        {
            var bases = path.EndsWith(".csv", StringComparison.Ordinal)
                ? Column(path)
                : [.. Key().Matches(File.ReadAllText(path)).Select(m => m.Groups[1].Value)];
            var count = Enum.GetValues<Basis>().ToDictionary(b => b, b => bases.Count(t => BasisText.Parse(t).OrRefuse() == b));
            if (bases.Length > 0)
                yield return (name, count);
        }
    }

    // The file's name with the folder above it: figures.yaml stands in each market's.
    private static IEnumerable<(string Name, string Path)> Files() =>
        new[] { "src", "ingredients" }
            .SelectMany(f => Directory.EnumerateFiles(Path.Combine(Repository.Folder, f), "*.*", SearchOption.AllDirectories))
            .Where(p => (p.EndsWith(".yaml", StringComparison.Ordinal) || p.EndsWith(".csv", StringComparison.Ordinal))
                && !Built().IsMatch(p) && !p.EndsWith("texts.yaml", StringComparison.Ordinal))
            .Select(p => ($"{Path.GetFileName(Path.GetDirectoryName(p))}/{Path.GetFileName(p)}", p))
            .OrderBy(p => p.Item1, StringComparer.Ordinal);

    private static string[] Column(string path)
    {
        using var reader = CsvReader.Create(new StreamReader(path),
            new CsvReaderOptions { Separator = ',', HasHeader = false, FieldCountMismatch = CsvFieldCountHandling.Allow });
        var rows = new List<string[]>();
        while (reader.Read())
            rows.Add([.. Enumerable.Range(0, reader.FieldCount).Select(reader.GetString)]);
        var column = Array.IndexOf(rows[0], "basis");
        return column < 0 || rows.Any(r => r[column] is "read" or "derived")
            ? []
            : [.. rows.Skip(1).Where(r => r.Length > column).Select(r => r[column])];
    }

    private static Dictionary<string, int> Recorded()
    {
        var lines = File.ReadAllLines(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Markets", "basis-counts.csv"));
        Assert.Equal(string.Join(',', Columns), lines[0]);
        return lines.Skip(1).Select(l => l.Split(',')).ToDictionary(c => c[0], c => int.Parse(c[3], CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"(?m)^\s+basis: (\w+)\s*$")]
    private static partial Regex Key();

    [GeneratedRegex(@"[\\/](?:bin|obj)[\\/]")]
    private static partial Regex Built();
}
