using System.Runtime.CompilerServices;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Print.Reading;
using LabelForge.Recipes;

namespace LabelForge.Print.Tests.DrawnElsewhere;

/// <summary>
/// Labels of the corpus as a browser and an office program draw them, in one column, in two, with a front of its own. What
/// is found on them is what is found on their words: draw.py beside this made the files.
/// </summary>
public sealed class DrawnElsewhereTests(ITestOutputHelper output)
{
    private static readonly DateOnly On = new(2026, 11, 25);

    private static IReadOnlyList<Drawn> Labels { get; } = Read();

    [Theory]
    [InlineData("browser")]
    [InlineData("office")]
    public void Every_seeded_defect_is_found_and_no_must_stands_that_was_not_seeded(string means)
    {
        var drawn = Labels.Where(l => l.Means == means).ToArray();
        Assert.True(drawn.Length >= 20, $"{drawn.Length} labels drawn by {means}");
        var wrong = drawn.SelectMany(l => l.Seeded.Except(l.Found.Select(f => f.Rule)).Select(r => $"{l.File}: {r} was not found")
            .Concat(l.Found
                .Where(f => f.Severity == Severity.Must
                    && !f.Rule.EndsWith("type-too-small", StringComparison.Ordinal)
                    && !l.Seeded.Contains(f.Rule)).Select(f => $"{l.File}: {f.Rule}: {f.Message}"))).ToArray();
        foreach (var rule in drawn.SelectMany(l => l.Seeded).Distinct().Order(StringComparer.Ordinal))
        {
            var hits = drawn.Count(l => l.Seeded.Contains(rule) && l.Found.Any(f => f.Rule == rule));
            var found = drawn.Count(l => l.Found.Any(f => f.Rule == rule && f.Severity != Severity.Note));
            output.WriteLine(
                FormattableString.Invariant(
                    $"{means} {rule,-36} seeded {drawn.Count(l => l.Seeded.Contains(rule)),3}  precision {(found == 0 ? 0 : (double)hits / found):0.00}  recall {(double)hits / drawn.Count(l => l.Seeded.Contains(rule)):0.00}"));
        }
        Assert.True(wrong.Length == 0, string.Join("\n", wrong));
    }

    // DejaVu Serif at 8 pt has an x-height of 1.46 mm, below the 1/16 in of 21 CFR 701.13(i) on any panel.
    [Fact]
    public void A_net_quantity_drawn_below_a_sixteenth_of_an_inch_is_found()
    {
        var small = Labels.Single(l => l.File == "006-lawful-true-soap-list.browser.pdf");
        Assert.Contains(small.Found, f => f is { Rule: "net-quantity.type-too-small", Severity: Severity.Must });
    }

    // 8 pt DejaVu: x-height 1120 of 2048 units (the font's OS/2 table), so 1.54 mm.
    [Fact]
    public void Heights_are_measured_in_what_either_program_drew()
    {
        Assert.All(Labels, l => Assert.True(!l.Text.Heights.IsEmpty, l.File));
        var words = Labels.Where(l => l.Means == "office")
            .SelectMany(l => l.Text.Heights.Where(h => h.Page == 1 && h.Lower is not null).Select(h => h.Lower!.Value.Millimetres))
            .ToArray();
        Assert.Contains(words, w => w is > 1.48m and < 1.62m);
    }

    private static IReadOnlyList<Drawn> Read([CallerFilePath] string here = "")
    {
        var folder = Path.GetDirectoryName(here)!;
        var corpus = Path.Combine(folder, "..", "..", "LabelForge.Tests", "Checks", "Corpus");
        return [.. Directory.GetFiles(folder, "*.pdf").Order(StringComparer.Ordinal).Select(f => Drawn.Read(f, corpus))];
    }

    private sealed record Drawn(string File, string Means, IReadOnlySet<string> Seeded, LabelText Text, IReadOnlyList<Finding> Found)
    {
        public static Drawn Read(string pdf, string corpus)
        {
            var name = Path.GetFileNameWithoutExtension(pdf).Split('.');
            var head = System.IO.File.ReadAllText(Path.Combine(corpus, name[0] + ".txt")).Split("---\n", 2)[0]
                .Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.Split(": ", 2)).ToDictionary(l => l[0], l => l[1]);
            var text = PdfLabelReader.Read(System.IO.File.ReadAllBytes(pdf), Path.GetFileName(pdf));
            SoldAs? soldAs = head.GetValueOrDefault("options") == "soap" ? SoldAs.Soap : null;
            var facts = LabelJudgement.Of(LabelStatement.Read(text, IngredientDictionary.Shipped), null, soldAs, null, On);
            return new(Path.GetFileName(pdf), name[1],
                head["seeded"] == "none" ? new HashSet<string>() : head["seeded"].Split(", ").ToHashSet(), text,
                LabelCheck.Run(facts, MarketBook.Shipped.Find(head.GetValueOrDefault("market", "us")).OrRefuse()).Findings);
        }
    }
}
