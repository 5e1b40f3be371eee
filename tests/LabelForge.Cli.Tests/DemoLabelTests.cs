using System.Diagnostics;
using System.Text.Json;

namespace LabelForge.Cli.Tests;

/// <summary>The demo's labels read back as a stranger's scanner would: rasterised by Poppler, decoded by libdmtx.</summary>
public sealed class DemoLabelTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("labelforge-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void Every_example_label_carries_its_lot_in_a_barcode_that_reads_at_300_dpi()
    {
        InstalledProgram.OrSkip("pdftoppm", "dmtxread");
        Assert.Equal(0, CommandRun.Of("demo", "--out", folder, "--on", "2026-11-25").ExitCode);
        var recipes = Directory.GetFiles(Path.Combine(folder, "workshop", "recipes")).Select(f => Path.GetFileNameWithoutExtension(f)!)
            .ToList();
        Assert.Equal(8, recipes.Count);
        var read = recipes.Select(recipe => Decode(Path.Combine(folder, recipe, "label.pdf"))).ToList();
        // ~ is FNC1; 01 and fourteen digits the item's number under the example's prefix, 10 the lot.
        Assert.All(read, r => Assert.Matches("^~01095214070000[0-9]{2}1026R25-[0-9A-Z]{3}$", r));
        Assert.Equal(8, read.Distinct().Count());
    }

    /// <summary>The labels drawn here, read back from their PDFs as any stranger's label is: what
    /// was printed is read, and no rule is broken.</summary>
    [Fact]
    public void The_examples_labels_read_back_from_PDF_say_what_was_printed_and_lack_nothing()
    {
        Assert.Equal(0, CommandRun.Of("demo", "--out", folder, "--on", "2026-11-25").ExitCode);
        var labels = Directory.GetFiles(folder, "label.pdf", SearchOption.AllDirectories).Length;
        Assert.Contains($"for each of {labels} products, and `range.pdf`", File.ReadAllText(Path.Combine(Repository.Folder, "README.md")),
            StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder, "range.pdf")));
        foreach (var recipe in Directory.GetFiles(Path.Combine(folder, "workshop", "recipes")))
        {
            var id = Path.GetFileNameWithoutExtension(recipe);
            var run = CommandRun.Of("check", Path.Combine(folder, id, "label.pdf"), "--on", "2026-11-25", "--format", "json");
            using var report = JsonDocument.Parse(run.Output);
            Assert.True(run.ExitCode == 0, $"{id}: {run.Output}");
            var found = report.RootElement.GetProperty("found");
            using var declared = JsonDocument.Parse(CommandRun.Of("declare", recipe, "--on", "2026-11-25", "--format", "json").Output);
            Assert.Equal(declared.RootElement.GetProperty("ingredients").EnumerateArray().Select(i => i.GetProperty("name").GetString()),
                found.GetProperty("ingredients").EnumerateArray().Select(i => i.GetString()));
            Assert.Equal("Thistlepond Bench", found.GetProperty("business").GetString());
            Assert.StartsWith("26R25-", found.GetProperty("lot").GetString(), StringComparison.Ordinal);
            Assert.StartsWith("Net Wt ", found.GetProperty("netQuantity").GetString(), StringComparison.Ordinal);
        }
    }

    /// <summary>Dark grounds are the harder case: the symbol stands on a white plate. Libdmtx
    /// reads the squares, ZBar the long ones.</summary>
    [Theory]
    [InlineData("bag-seal-fold")]
    [InlineData("bar-2x4")]
    [InlineData("bar-back-2x2.625")]
    [InlineData("bar-band")]
    [InlineData("bottle-back-2x2.625")]
    [InlineData("carton-4x6")]
    [InlineData("hang-tag-fold")]
    [InlineData("jar-side-2x8")]
    [InlineData("tin-underside-2in")]
    public void Every_barcode_on_every_design_reads_at_300_dpi(string design)
    {
        InstalledProgram.OrSkip("pdftoppm", "dmtxread", "zbarimg");
        using var example = new ExampleWorkshop();
        // The lip balm's own package is a tube, which fits no other design.
        var recipe = Path.Combine(example.Opened.Folder, "recipes", "lip-balm.yaml");
        File.WriteAllLines(recipe, File.ReadAllLines(recipe).Where(l => !l.StartsWith("package:", StringComparison.Ordinal)));
        var label = Path.Combine(folder, "label.pdf");
        Assert.Equal(0,
            CommandRun.Of("label", recipe, "--lot", "26R25-01E", "--on", "2026-11-25", "--design", design + "+round+dark", "--out",
                label).ExitCode);
        const string lot = "01095214070000551026R25-01E";
        if (design.StartsWith("carton", StringComparison.Ordinal))
        {
            Run("pdftoppm", ["-r", "300", "-png", "-singlefile", label, label]);
            // 11 is the day of making.
            Assert.Equal([lot, "010952140700005511261125"],
                Run("zbarimg", ["-q", "--raw", label + ".png"]).Split('\n', StringSplitOptions.RemoveEmptyEntries)
                    .Order(StringComparer.Ordinal));
        }
        else
        {
            Assert.Equal("~" + lot, Decode(label));
        }
    }

    private static string Decode(string pdf)
    {
        Run("pdftoppm", ["-r", "300", "-png", "-singlefile", pdf, pdf]);
        // The first symbol found is the lot's nearly always. Libdmtx takes some patterns for symbols of a few letters, and a scanner set
        // for GS1 refuses what does not begin with FNC1: then the whole picture is searched, which takes seconds.
        return Symbols("-N1") is [['~', ..] first] ? first : string.Join(", ", Symbols().Where(r => r[0] == '~').Take(1));

        string[] Symbols(params string[] more) => Run("dmtxread", ["-n", "-m60000", "-G126", .. more, pdf + ".png"])
            .Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    }

    private static string Run(string tool, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(tool, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        _ = errors.Result;
        return output;
    }
}
