using System.Text.RegularExpressions;
using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

/// <summary>The identifiers against GS1's own table: the GS1 Syntax Dictionary of 2026.</summary>
public class Gs1IdentifierTests
{
    // The dictionary's rows: *, no FNC1 needed; yymmd0, day 00 is allowed.
    private static readonly Row[] Dictionary =
    [
        new("01", "*?", "N14,csum,gcppos2", "ex=255,37 dlpkey=22,10,21|235", "GTIN"),
        new("10", "?", "X..20", "req=01,02,03,8006,8026", "BATCH/LOT"),
        new("11", "*?", "N6,yymmd0", "req=01,02,03,8006,8026", "PROD DATE"),
        new("17", "*?", "N6,yymmd0", "req=01,02,03,255,8006,8026", "USE BY or EXPIRY"),
        new("21", "", "X..20", "req=01,03,8006 ex=235", "SERIAL"),
        new("22", "", "X..20", "req=01", "CPV"),
    ];

    [Fact]
    public void Identifiers_agree_with_the_GS1_syntax_dictionary()
    {
        Assert.Equal(Dictionary.Select(row => row.Code), Gs1Identifier.Known.Select(known => known.Code).Order());
        foreach (var row in Dictionary)
        {
            var known = Gs1Identifier.Find(row.Code)!;
            Assert.Equal(row.Title, known.Title);
            Assert.Equal(row.Specification.Split(',')[0], known.Format switch
            {
                Gs1Format.Gtin => "N14",
                Gs1Format.Date => "N6",
                _ => $"X..{Gs1Identifier.MostCharacters}",
            });
            Assert.Equal(row.Flags.Contains('*'), known.FixedLength is not null);
            Assert.Equal(row.Specification.Contains("yymmd0"), known.Format == Gs1Format.Date);
            Assert.True(row.Code == "01" || row.Attributes.Contains("req=01"));
        }

        // dlpkey=22,10,21|235: the qualifiers of a GTIN and their order.
        var qualifiers = Gs1Identifier.Known.Where(known => known.Place == DigitalLinkPlace.Qualifier).Select(known => known.Code);
        Assert.Contains($"dlpkey={string.Join(',', qualifiers)}|", Dictionary[0].Attributes);
    }

    [Fact]
    public void The_rows_above_are_the_dictionarys_where_its_file_is_at_hand()
    {
        // Where the file is not at hand the rows above still judge the code; there is nothing to skip.
        if (Reference("gs1-ai-table.csv") is { } file)
            Assert.Empty(Dictionary.Except(File.ReadLines(file).Select(Fields)));
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
