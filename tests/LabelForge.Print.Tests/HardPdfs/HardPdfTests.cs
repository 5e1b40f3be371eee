using System.Runtime.CompilerServices;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Reading;

namespace LabelForge.Print.Tests.HardPdfs;

/// <summary>
/// Labels that are hard to read as PDF: columns close together, turned pages and panels, letters set apart, passwords, words
/// that nobody sees, several labels in one file. draw.py beside this made the files; cases.txt says what stands on each.
/// </summary>
public sealed class HardPdfTests
{
    private static readonly DateOnly On = new(2026, 11, 26);

    private static readonly string Folder = Here();

    // FreshPdfs, LaterPdfs, TenPdfs and FivePdfs were drawn by other means, and before anything was tried on them.
    public static TheoryData<string, string, int, string> Cases =>
        [.. Of(""), .. Of("../FreshPdfs/"), .. Of("../LaterPdfs/"), .. Of("../TenPdfs/"), .. Of("../FivePdfs/")];

    private static IEnumerable<TheoryDataRow<string, string, int, string>> Of(string folder) =>
        File.ReadLines(Path.Combine(Folder, folder + "cases.txt")).Where(l => l.Length > 0 && l[0] != '#')
            .Select(l => l.Split('|', StringSplitOptions.TrimEntries))
            .Select(c => new TheoryDataRow<string, string, int, string>(folder + c[0], c[1], int.Parse(c[2]), c[3]));

    [Theory]
    [MemberData(nameof(Cases))]
    public void What_stands_on_it_is_read_and_what_is_wrong_with_it_is_found(string file, string market, int names, string seeded)
    {
        if (seeded.StartsWith("refused ", StringComparison.Ordinal))
        {
            Assert.Contains(seeded["refused ".Length..], Assert.Throws<InputException>(() => Text(file)).Message);
            return;
        }
        var reading = LabelStatement.Read(Text(file), IngredientDictionary.Shipped);
        var found = LabelCheck.Run(LabelJudgement.Of(reading, null, null, null, On), Market.Named(market)).Findings
            .Where(f => !f.Rule.EndsWith("type-too-small", StringComparison.Ordinal)).ToArray();
        var wanted = seeded == "none" ? [] : seeded.Split(", ");
        Assert.True(reading.Names.Length == names,
            $"{reading.Names.Length} names: {string.Join(" | ", reading.Names.Select(n => n.Name))}\n{reading.Text.Text}");
        Assert.Equal([], wanted.Except(found.Where(f => f.Severity != Severity.Note).Select(f => f.Rule)));
        Assert.Equal([], found.Where(f => f.Severity == Severity.Must && !wanted.Contains(f.Rule)).Select(f => $"{f.Rule}: {f.Message}"));
    }

    [Fact]
    public void Every_label_of_a_file_is_judged_by_itself()
    {
        var read = LabelStatement.Read(Text("sheet-mixed"), IngredientDictionary.Shipped);
        Assert.Equal(["Body Lotion", "Bath Salts"], read.Others.Prepend(read).Select(l => l.Identity?.Written));
        Assert.Equal([12, 5], read.Others.Prepend(read).Select(l => l.Names.Length));
        Assert.All(read.Others.Prepend(read),
            l => Assert.Empty(LabelCheck.Run(LabelJudgement.Of(l, null, null, null, On), Market.Us).Findings
                .Where(f => f.Severity == Severity.Must && !f.Rule.EndsWith("type-too-small", StringComparison.Ordinal))));
    }

    [Fact]
    public void Words_that_are_not_seen_are_told_with_the_reason()
    {
        Assert.Contains("colour of what is under", Assert.Single(Text("unseen-list-white").Unseen).Why);
        Assert.Contains("drawn over", Assert.Single(Text("unseen-list-box").Unseen).Why);
        Assert.Contains("without being drawn", Assert.Single(Text("unseen-list-mode3").Unseen).Why);
        Assert.Contains("outside", Assert.Single(Text("unseen-list-outside").Unseen).Why);
        Assert.StartsWith("Ingredients: Water, Glycerin", Text("unseen-list-clip").Unseen.Single().Words, StringComparison.Ordinal);
        Assert.Empty(Text("light-on-dark").Unseen);
    }

    private static LabelText Text(string file) => PdfLabelReader.Read(File.ReadAllBytes(Path.Combine(Folder, file + ".pdf")), file);

    private static string Here([CallerFilePath] string here = "") => Path.GetDirectoryName(here)!;
}
