using LabelForge.Print.Reading;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Tests;

/// <summary>Sheets made by the command bind their lot to their product, where the workshop keeps books.</summary>
public sealed class PrintedLotCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public PrintedLotCommandTests()
    {
        CommandRun.Of("init", _folder);
        var bar = Path.Combine(_folder, "recipes", "first-bar.yaml");
        File.WriteAllText(Path.Combine(_folder, "recipes", "second-bar.yaml"),
            File.ReadAllText(bar).Replace("name: First Bar", "name: Second Bar", StringComparison.Ordinal));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private CommandRun Sheet(string recipe, params string[] more) =>
        CommandRun.Of(["sheet", recipe, "--workshop", _folder, "--lot", "26R25-01E", "--stock", "us-letter-10-2x4in", "--count", "2",
            "--on", "2026-11-25", "--out", Path.Combine(_folder, $"{recipe}.pdf"), .. more]);

    [Fact]
    public void Another_product_does_not_get_the_lot_afterwards()
    {
        Assert.Equal(0,
            CommandRun.Of("receive", "clear-base", "5 lb", "--price", "31.50", "--workshop", _folder, "--on", "2026-11-25").ExitCode);
        Assert.Equal(0, Sheet("first-bar").ExitCode);
        Assert.Contains("first-bar", CommandRun.Of("books", "printing", "--workshop", _folder).Output, StringComparison.Ordinal);
        var refused = Sheet("second-bar");
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("were printed with the lot 26R25-01E", refused.Messages, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(_folder, "second-bar.pdf")));
        Assert.Equal(2,
            CommandRun.Of("batch", "start", "second-bar", "--workshop", _folder, "--lot", "26R25-01E", "--on", "2026-11-25").ExitCode);
        // Its own batch takes the lot that waits for it, without being told.
        Assert.Contains("26R25-01E", CommandRun.Of("batch", "start", "first-bar", "--workshop", _folder, "--on", "2026-11-25").Output,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_books_say_which_broken_rule_was_printed_over()
    {
        var bar = Path.Combine(_folder, "recipes", "first-bar.yaml");
        File.WriteAllText(bar, File.ReadAllText(bar).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        Assert.Equal(0,
            CommandRun.Of("receive", "clear-base", "5 lb", "--price", "31.50", "--workshop", _folder, "--on", "2026-11-25").ExitCode);
        Assert.Equal(1, Sheet("first-bar", "--despite", "lot.missing").ExitCode);
        Assert.Empty(OpenBooks.Open(_folder).Read().Printings);
        // A rule that is named and not broken is not said to be.
        Assert.Equal(0, Sheet("first-bar", "--despite", "identity.missing", "--despite", "lot.missing").ExitCode);
        Assert.Equal("Printed despite identity.missing.", Assert.Single(OpenBooks.Open(_folder).Read().Printings).Note);
        // So does the sheet's margin.
        Assert.Contains("Printed although broken: identity.missing",
            PdfLabelReader.Read(File.ReadAllBytes(Path.Combine(_folder, "first-bar.pdf")), "sheet").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_sheet_and_a_label_printed_over_a_broken_rule_say_so_beside_the_label_and_in_the_books()
    {
        var bar = Path.Combine(_folder, "recipes", "first-bar.yaml");
        File.WriteAllText(bar, File.ReadAllText(bar).Replace("identity: ", "identity: \" \" # ", StringComparison.Ordinal));
        Assert.Equal(0,
            CommandRun.Of("receive", "clear-base", "5 lb", "--price", "31.50", "--workshop", _folder, "--on", "2026-11-25").ExitCode);
        Assert.Equal(0,
            CommandRun.Of("batch", "start", "first-bar", "--workshop", _folder, "--lot", "26R25-01E", "--on", "2026-11-25").ExitCode);
        foreach (var verb in new[] { "batch", "label" })
        {
            var file = Path.Combine(_folder, verb + ".pdf");
            Assert.Equal(1,
                CommandRun.Of(verb, "first-bar", "--lot", "26R25-01E", "--workshop", _folder, "--on", "2026-11-25", "--out",
                    file).ExitCode);
            Assert.Equal(0,
                CommandRun.Of(verb, "first-bar", "--lot", "26R25-01E", "--workshop", _folder, "--on", "2026-11-25", "--out", file,
                    "--despite", "identity.missing").ExitCode);
        }
        const string Said = "Printed although broken: identity.missing";
        Assert.Contains(Said, PdfLabelReader.Read(File.ReadAllBytes(Path.Combine(_folder, "batch.pdf")), "sheet").Text,
            StringComparison.Ordinal);
        // A label has no margin: the file's title says it, and no word on the label.
        Assert.DoesNotContain("Printed although", PdfLabelReader.Read(File.ReadAllBytes(Path.Combine(_folder, "label.pdf")), "label").Text,
            StringComparison.Ordinal);
        using var label = UglyToad.PdfPig.PdfDocument.Open(Path.Combine(_folder, "label.pdf"));
        Assert.Contains(Said, label.Information.Title, StringComparison.Ordinal);
        Assert.Equal(["Batch sheet printed despite identity.missing.", "Label printed despite identity.missing."],
            OpenBooks.Open(_folder).Read().Deviations.Select(d => d.What));
    }

    [Fact]
    public void A_workshop_without_books_gets_none_by_printing()
    {
        Assert.Equal(0, Sheet("first-bar").ExitCode);
        Assert.Equal(0, Sheet("second-bar").ExitCode);
        Assert.False(File.Exists(Path.Combine(_folder, "records.db")));
    }
}
