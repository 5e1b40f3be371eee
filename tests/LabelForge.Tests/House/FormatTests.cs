using System.Text.RegularExpressions;

namespace LabelForge.Tests.House;

/// <summary>
/// What <c>dotnet format</c> asks of every file, as far as the build does not refuse it: the whole program takes minutes to say so.
/// </summary>
public partial class FormatTests
{
    private static readonly Comparer<string> ImportOrder =
        Comparer<string>.Create((a, b) => Rank(a) != Rank(b) ? Rank(a) - Rank(b) : ByParts(a, b));

    [Fact]
    public void Imports_stand_in_the_order_of_the_format() =>
        Assert.DoesNotContain(Sources(), f => Imports(f) is var imports && !imports.SequenceEqual(imports.OrderBy(i => i, ImportOrder)));

    [Theory]
    [InlineData(true, "System.Text", "LabelForge.Checks")]
    [InlineData(true, "LabelForge.Checks", "static System.Math")]
    [InlineData(true, "LabelForge.Checks", "LabelForge.Checks.Words")]
    [InlineData(false, "Microsoft.JSInterop", "Microsoft.AspNetCore.Components")]
    [InlineData(false, "LabelForge.Checks", "System.Text")]
    [InlineData(false, "Page = LabelForge.Page", "static System.Math")]
    public void Imports_are_ordered_by_kind_then_by_name(bool ordered, string first, string then) =>
        Assert.Equal(ordered, ImportOrder.Compare(first, then) < 0);

    // Only where one literal takes most of the line: broken, it would hide what it says.
    [Fact]
    public void Lines_stay_under_140_characters_but_for_long_words_in_quotes() =>
        Assert.Empty(
            from file in Sources()
            from line in RawWords().Replace(File.ReadAllText(file), m => new string('\n', m.Value.Count(c => c == '\n')))
                .Split('\n').Select((Text, At) => (Text, At))
            where line.Text.Length >= 140 && line.Text.LastIndexOf('"') - line.Text.IndexOf('"') < 60
            select $"{Path.GetFileName(file)}:{line.At + 1}");

    // A page's markup is full of quotes: there one literal has to be most of the line.
    [Fact]
    public void Lines_of_pages_stay_under_140_characters_but_for_one_long_literal() =>
        Assert.Empty(
            from file in Sources("src", "*.razor")
            from line in File.ReadLines(file).Select((Text, At) => (Text, At))
            where line.Text.Length >= 140 && !line.Text.Contains("=\"@($\"", StringComparison.Ordinal)
            select $"{Path.GetFileName(file)}:{line.At + 1}");

    private static string[] Imports(string file) =>
        [.. File.ReadLines(file).Select(l => UsingLine().Match(l)).SkipWhile(m => !m.Success).TakeWhile(m => m.Success)
            .Select(m => m.Groups[1].Value)];

    private static int Rank(string import) => import.Contains('=', StringComparison.Ordinal) ? 4
        : import.StartsWith("static ", StringComparison.Ordinal) ? 2 + (FromSystem(import[7..]) ? 0 : 1)
        : FromSystem(import) ? 0 : 1;

    private static bool FromSystem(string name) => name == "System" || name.StartsWith("System.", StringComparison.Ordinal);

    private static int ByParts(string a, string b) => a.Split('.')
        .Zip(b.Split('.'), (x, y) => string.Compare(x, y, StringComparison.OrdinalIgnoreCase))
        .FirstOrDefault(c => c != 0, a.Length - b.Length);

    private static IEnumerable<string> Sources() => new[] { "src", "tests", "build" }.SelectMany(f => Sources(f, "*.cs"));

    private static IEnumerable<string> Sources(string folder, string files) =>
        Directory.EnumerateFiles(Path.Combine(Repository.Folder, folder), files, SearchOption.AllDirectories)
        .Select(f => Path.GetRelativePath(Repository.Folder, f))
        .Where(f => !f.Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin" or "Migrations"))
        .Select(f => Path.Combine(Repository.Folder, f));

    [GeneratedRegex("\"\"\"(?:.|\n)*?\"\"\"")]
    private static partial Regex RawWords();

    [GeneratedRegex(@"^(?:global )?using ([^;(]+);")]
    private static partial Regex UsingLine();
}
