using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks;

/// <summary>Right labels in forms and languages of Europe and Canada, all invented: no must is found on any.</summary>
public sealed class RightLabelTests
{
    private static string Folder => Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "RightLabels");

    public static TheoryData<string> Labels =>
        [.. Directory.EnumerateFiles(Folder, "*.txt").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Labels))]
    public void A_right_label_comes_out_without_a_must(string file)
    {
        var text = LabelText.Of(File.ReadAllText(Path.Combine(Folder, file)), file);
        var facts = LabelJudgement.Of(LabelStatement.Read(text, IngredientDictionary.Shipped), null, null, null, new(2026, 11, 26));
        var found = LabelCheck.Run(facts, Market.Named(file[..2])).Findings;
        Assert.Equal([],
            found.Where(f => f.Severity != Severity.Note).Where(f => f.Severity == Severity.Must || !Open.Contains(f.Rule))
                .Select(f => $"{f.Rule}: {f.Message} {f.Where}"));
    }

    // What no text can show, or custom only asks for.
    private static readonly string[] Open = ["durability.missing", "ingredients.order", "warning.missing"];

    [Fact]
    public void There_are_a_dozen_of_them() => Assert.True(Labels.Count >= 12);
}
