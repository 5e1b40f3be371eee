using System.Text.RegularExpressions;
using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

/// <summary>Compares the identifiers with GS1's own table (Syntax Dictionary, 2026) where that file is at hand.</summary>
public class Gs1IdentifierTests
{
    [Fact]
    public void Identifiers_agree_with_the_GS1_syntax_dictionary()
    {
        var file = Reference("gs1-ai-table.csv");
        Assert.SkipWhen(file is null, "shared/reference/gs1-ai-table.csv is not on this machine.");
        var rows = File.ReadLines(file!).Select(Fields).ToDictionary(row => row.Code);
        foreach (var known in Gs1Identifier.Known)
        {
            var row = rows[known.Code];
            Assert.Equal(row.Title, known.Title);
            Assert.Equal(row.Specification.Split(',')[0], known.Format switch
            {
                Gs1Format.Gtin => "N14",
                Gs1Format.Date => "N6",
                _ => $"X..{Gs1Identifier.MostCharacters}",
            });
            // * marks identifiers that need no FNC1.
            Assert.Equal(row.Flags.Contains('*'), known.FixedLength is not null);
            // yymmd0: day 00 is allowed.
            if (known.Format == Gs1Format.Date)
                Assert.Contains("yymmd0", row.Specification);
        }

        // dlpkey=22,10,21|235: the qualifiers of a GTIN and their order.
        Assert.Contains(
            "dlpkey=" + string.Join(',', Gs1Identifier.Known.Where(known => known.Place == DigitalLinkPlace.Qualifier).Select(known => known.Code)),
            rows["01"].Attributes);
    }

    [Fact]
    public void Set_82_has_82_characters() => Assert.Equal(82, Gs1Identifier.CharacterSet82.Distinct().Count());

    private static string? Reference(string name)
    {
        if (Environment.GetEnvironmentVariable("LABELFORGE_REFERENCE") is { } given)
            return Path.Combine(given, name);
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var file = Path.Combine(folder.FullName, "shared", "reference", name);
            if (File.Exists(file))
                return file;
        }

        return null;
    }

    // The table's columns: ai_or_range, flags, specification, attributes, title; no field of it holds a quote.
    private static Row Fields(string line)
    {
        var fields = Regex.Matches(line, "(?:^|,)(?:\"([^\"]*)\"|([^,]*))").Select(m => m.Groups[1].Value + m.Groups[2].Value).ToArray();
        return new Row(fields[0], fields[1], fields[2], fields[3], fields[4]);
    }

    private sealed record Row(string Code, string Flags, string Specification, string Attributes, string Title);
}
