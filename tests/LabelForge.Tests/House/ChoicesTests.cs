using System.Text.RegularExpressions;

namespace LabelForge.Tests.House;

/// <summary>What the house stands on is named with its licence, and no more than that.</summary>
public partial class ChoicesTests
{
    [Fact]
    public void Every_package_is_named_with_its_licence_and_none_that_is_not_used()
    {
        var pinned = PackageVersion().Matches(Read("Directory.Packages.props")).Select(m => m.Groups["name"].Value).ToArray();
        var rows = Read("docs", "choices.md").Split('\n')
            .Where(l => l.StartsWith("| ", StringComparison.Ordinal)
                && !l.StartsWith("| package", StringComparison.Ordinal)
                && !l.StartsWith("| ---", StringComparison.Ordinal));
        var named = rows.SelectMany(r => r.Split('|')[1].Split(',')).Select(n => n.Trim()).ToArray();
        Assert.NotEmpty(pinned);
        Assert.Equal(pinned.Order(StringComparer.Ordinal), named.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_typeface_is_named_and_its_licence_stands_beside_it()
    {
        var notice = Read("docs", "notice.md");
        var fonts = Path.Combine(Repository.Folder, "templates", "fonts");
        var families = Directory.EnumerateFiles(fonts, "*.ttf").Select(f => Path.GetFileName(f).Split('-')[0]).Distinct().ToArray();
        Assert.NotEmpty(families);
        Assert.All(families, f =>
        {
            Assert.Contains($"| {InnerCapital().Replace(f, " $0").Replace("D M ", "DM ", StringComparison.Ordinal)} |", notice,
                StringComparison.Ordinal);
            Assert.Contains("SIL OPEN FONT LICENSE", File.ReadAllText(Path.Combine(fonts, $"{f}-LICENSE.txt")),
                StringComparison.OrdinalIgnoreCase);
        });
    }

    private static string Read(params string[] parts) => File.ReadAllText(Path.Combine([Repository.Folder, .. parts]));

    [GeneratedRegex("PackageVersion Include=\"(?<name>[^\"]+)\"")]
    private static partial Regex PackageVersion();

    [GeneratedRegex("(?<=.)[A-Z]")]
    private static partial Regex InnerCapital();
}
