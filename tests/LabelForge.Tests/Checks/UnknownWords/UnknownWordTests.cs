using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Tests.Checks.FreshLabels;

namespace LabelForge.Tests.Checks.UnknownWords;

/// <summary>
/// Lines of words that belong to no part of a label, set below the list of right labels: what nobody can understand is a must,
/// so that such a label never ends with exit code 0; mottos, scents, thanks and names are none.
/// </summary>
public sealed class UnknownWordTests(ITestOutputHelper output)
{
    private static readonly DateOnly On = new(2026, 11, 26);

    private static readonly (string Language, char Kind, string Words)[] Lines =
    [
        .. File.ReadAllLines(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "UnknownWords", "lines.txt"))
            .Where(l => l.Length > 0 && l[0] != '#')
            .Select(l => (l[..2], l[3], l[5..])),
    ];

    [Fact]
    public void Words_of_no_language_are_a_must()
    {
        var missed =
            Lines.Where(l => l.Kind != '='
                && !Found(l).Any(f => f.Rule == "reading.not-understood" && (l.Kind == '~' || f.Severity == Severity.Must)))
                .Select(l => $"{l.Language}: {l.Words}").ToArray();
        output.WriteLine($"{Lines.Count(l => l.Kind != '=') - missed.Length} of {Lines.Count(l => l.Kind != '=')} told");
        Assert.True(missed.Length == 0, string.Join("\n", missed));
    }

    [Fact]
    public void Mottos_names_and_scents_are_none()
    {
        var told = Lines.Where(l => l.Kind == '=')
            .SelectMany(l => Found(l).Where(f => f.Severity == Severity.Must)
                .Select(f => $"{l.Language}: {l.Words}: {f.Rule}: {f.Message}")).ToArray();
        output.WriteLine($"{told.Length} of {Lines.Count(l => l.Kind == '=')} told wrongly");
        Assert.True(told.Length == 0, string.Join("\n", told));
    }

    // A right label of the language, with the line below its list.
    private static IEnumerable<Finding> Found((string Language, char Kind, string Words) line)
    {
        var label = Labels[line.Language];
        var at = label.Text.IndexOf('\n', label.Text.LastIndexOf(label.LastName, StringComparison.OrdinalIgnoreCase));
        var text = label.Text[..at] + "\n\n" + line.Words + "\n" + label.Text[at..];
        return LabelCheck.Run(LabelJudgement.Of(LabelStatement.Read(LabelText.Of(text, label.Id), IngredientDictionary.Shipped), null,
            null, null, On), label.Market).Findings;
    }

    private static readonly Dictionary<string, FreshLabel> Labels = new[] { "en:d01", "fr:d05", "de:d04", "es:d07", "it:d06", "nl:d08",
        "pl:d09", "sv:d10", "pt:" }
        .Select(p => p.Split(':'))
        .ToDictionary(p => p[0],
            p => FreshLabel.All.First(l => p[1].Length > 0 ? l.Id == p[1] : l.Text.Contains("Portugal", StringComparison.Ordinal)));
}
