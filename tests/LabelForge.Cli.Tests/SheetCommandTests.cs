using System.Diagnostics;

namespace LabelForge.Cli.Tests;

public sealed class SheetCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-").FullName;
    private readonly string _bar;

    public SheetCommandTests()
    {
        CommandRun.Of("init", _folder);
        _bar = Path.Combine(_folder, "recipes", "first-bar.yaml");
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_print_remembered_goes_on_where_the_last_one_ended()
    {
        var first = Sheet("--count", "7", "--remember");
        Assert.Contains("starts at position 8", first.Output);
        Assert.Contains("from position 8", Sheet("--fill", "first-bar@26R25-02C:2,first-bar:1", "--remember").Output);
        Assert.Contains("from position 1.", Sheet("--count", "1", "--remember").Output);
    }

    [Fact]
    public void A_printers_nudge_is_remembered_and_an_unknown_printer_refused()
    {
        Assert.Equal(2, Sheet("--printer", "kitchen").ExitCode);
        Assert.Equal(0, Sheet("--printer", "kitchen", "--nudge", "-0.5,0.25").ExitCode);
        Assert.Contains("nudge: -0.5,0.25", File.ReadAllText(Path.Combine(_folder, "printers", "kitchen.yaml")));
        Assert.Equal((0, ""), (Sheet("--printer", "kitchen").ExitCode, Sheet("--printer", "kitchen").Messages));
    }

    [Theory]
    [InlineData("--fill", "first-bar:2", "--count", "3")]
    [InlineData("--serial", "1..5", "--count", "3")]
    [InlineData("--serial", "5..1")]
    [InlineData("--nudge", "1")]
    [InlineData("--first", "11")]
    public void What_cannot_be_printed_is_refused_and_nothing_is_written(params string[] words)
    {
        var run = Sheet(words);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Single(run.Messages.Trim().Split('\n'));
        Assert.Empty(Directory.GetFiles(_folder, "*.pdf"));
    }

    [Fact]
    public void Numbered_labels_carry_their_own_number_each()
    {
        Assert.Equal(0, Sheet("--serial", "8..12").ExitCode);
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(Path.Combine(_folder, "sheet.pdf"));
        var numbers = pdf.GetPage(1).GetWords().Select(w => w.Text).Where(t => t.StartsWith("26R25-01E/", StringComparison.Ordinal))
            .Distinct();
        Assert.Equal(["26R25-01E/08", "26R25-01E/09", "26R25-01E/10", "26R25-01E/11", "26R25-01E/12"], numbers.Order());
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    public void A_long_print_that_is_stopped_leaves_no_half_file(string signal)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "There are no such signals on Windows.");
        var output = Path.Combine(_folder, "long.pdf");
        File.WriteAllText(output, "%PDF-1.7 older");
        // Where the tests run in the background of a script, an interrupt is ignored by all that they start, unless it is set back.
        var start = new ProcessStartInfo(OperatingSystem.IsLinux() ? "env" : "dotnet",
            [.. OperatingSystem.IsLinux() ? new[] { "--default-signal", "dotnet" } : [],
                Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"), "sheet", _bar, "--lot", "26R25-01E", "--stock",
                "us-letter-10-2x4in", "--serial", "1..90000", "--out", output])
        {
            RedirectStandardError = true,
            RedirectStandardOutput = true,
        };
        using var process = Process.Start(start)!;
        // A part file with something in it: the print is on its way.
        var patience = Stopwatch.StartNew();
        while (!Directory.GetFiles(_folder, ".long.pdf.*").Any(f => new FileInfo(f).Length > 10_000))
        {
            Assert.False(process.HasExited, "The print ended before it could be stopped.");
            Assert.True(patience.Elapsed < TimeSpan.FromMinutes(2), "The print never began.");
            Thread.Sleep(50);
        }
        Process.Start("kill", ["-" + signal, process.Id.ToString()])!.WaitForExit();
        Assert.True(process.WaitForExit(60_000));
        Assert.NotEqual(0, process.ExitCode);
        Assert.Empty(Directory.GetFiles(_folder, ".long.pdf.*"));
        Assert.Equal("%PDF-1.7 older", File.ReadAllText(output));
    }

    [Fact]
    public void A_proof_is_a_PDF_and_a_picture_has_the_dots_asked_for()
    {
        Assert.Equal(2, Label("--proof", "--out", Path.Combine(_folder, "proof.png")).ExitCode);
        Assert.Equal(2, Label("--dpi", "300", "--out", Path.Combine(_folder, "label.pdf")).ExitCode);
        Assert.Equal(2, Label("--dpi", "9", "--out", Path.Combine(_folder, "label.png")).ExitCode);
        Assert.Equal(0, Label("--proof", "--out", Path.Combine(_folder, "proof.pdf")).ExitCode);
        Assert.Equal(0, Label("--dpi", "600", "--out", Path.Combine(_folder, "label.png")).ExitCode);
        // Width stands at bytes 16 to 19 of a PNG (ISO/IEC 15948, 11.2.2); the usual design is 4 in wide.
        var bytes = File.ReadAllBytes(Path.Combine(_folder, "label.png"));
        Assert.Equal(2400, bytes[18] * 256 + bytes[19]);
    }

    [Fact]
    public void A_test_page_is_written_and_what_it_showed_is_remembered()
    {
        var page = Path.Combine(_folder, "page.pdf");
        Assert.Equal(0, CommandRun.Of("calibrate", "--stock", "us-letter-10-2x4in", "--out", page, "--workshop", _folder).ExitCode);
        Assert.Equal(0,
            CommandRun.Of("calibrate", "--stock", "us-letter-10-2x4in", "--printer", "den", "--ruler", "169.15,220", "--workshop",
                _folder).ExitCode);
        Assert.Contains("stretch: 0.5,0", File.ReadAllText(Path.Combine(_folder, "printers", "den.yaml")));
        Assert.Equal(2, CommandRun.Of("calibrate", "--workshop", _folder).ExitCode);
    }

    [Fact]
    public void Own_stock_is_listed_and_drawn()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "stock"));
        File.WriteAllText(Path.Combine(_folder, "stock", "mine.yaml"),
            "name: Mine\nsource: measured\nbasis: measured\nkind: roll\nwidth: 50 mm\nheight: 30 mm\n");
        Assert.Contains("(your own)", CommandRun.Of("stock", "--workshop", _folder).Output);
        var drawing = Path.Combine(_folder, "mine.svg");
        Assert.Equal(0, CommandRun.Of("stock", "--show", "mine", "--workshop", _folder, "--out", drawing).ExitCode);
        Assert.Contains("width=\"50mm\" height=\"30mm\"", File.ReadAllText(drawing));
    }

    private CommandRun Sheet(params string[] words)
    {
        string[] recipe = words.Contains("--fill") ? [] : [_bar];
        return CommandRun.Of(["sheet", .. recipe, "--workshop", _folder, "--lot", "26R25-01E", "--stock", "us-letter-10-2x4in", "--out",
            Path.Combine(_folder, "sheet.pdf"), .. words]);
    }

    private CommandRun Label(params string[] words) => CommandRun.Of(["label", _bar, "--lot", "26R25-01E", .. words]);
}
