using System.Globalization;
using System.Runtime.CompilerServices;
using System.Security.Cryptography;
using LabelForge.Fuzz.Coverage;
using LabelForge.Fuzz.Targets;

namespace LabelForge.Fuzz;

/// <summary>
/// Every input ever found worth keeping is run again, and then a fixed number of new ones from a fixed seed. With
/// LABELFORGE_FUZZ_SECONDS set, each target takes that much of the processor, however busy the machine, from a seed of the
/// moment it starts, and what it found joins the corpus; LABELFORGE_FUZZ_TARGETS names those that do, with commas between.
/// </summary>
public sealed class CorpusTests(ITestOutputHelper output)
{
    private const int Seed = 20261125;

    [Theory]
    [InlineData("amounts", 20_000)]
    [InlineData("declarations", 100)]
    [InlineData("workshop", 4_000)]
    [InlineData("labels", 300)]
    [InlineData("pdf", 200)]
    [InlineData("lots", 20_000)]
    [InlineData("csv", 3_000)]
    public void Whatever_is_read_is_taken_or_refused_in_words(string target, int made)
    {
        var folder = Path.Combine(Path.GetDirectoryName(Here())!, "corpus", target);
        var corpus = Directory.EnumerateFiles(folder).Order(StringComparer.Ordinal).Select(File.ReadAllBytes).ToList();
        Assert.NotEmpty(corpus);
        var only = Environment.GetEnvironmentVariable("LABELFORGE_FUZZ_TARGETS")?.Split(',');
        var seconds = only?.Contains(target) != false && Environment.GetEnvironmentVariable("LABELFORGE_FUZZ_SECONDS") is { } text
            ? int.Parse(text, CultureInfo.InvariantCulture)
            : 0;
        var seed = seconds > 0 ? Environment.TickCount : Seed;
        var loop = new FuzzLoop(target, Instrumented.Target(target), corpus, new Mutation(seed, AllTargets.WordsOf(target)));
        var begun = ProcessorTime();
        try
        {
            var run = loop.Run(i => seconds > 0 ? (ProcessorTime() - begun).TotalSeconds < seconds : i < made);
            output.WriteLine(
                $"{target}: {run} inputs, {loop.Joined.Count} new, {loop.Coverage} marks of coverage, "
                + $"{(ProcessorTime() - begun).TotalSeconds:0.0} s of the processor, slowest {loop.Slowest.Time.TotalMilliseconds:0} ms");
            if (seconds > 0)
                output.WriteLine($"{target}, slowest: {FuzzLoop.Shown(loop.Slowest.Input)}");
            Assert.True(loop.Coverage > 100, "The branches of the code under test are marked.");
        }
        finally
        {
            foreach (var input in seconds > 0 ? loop.Joined : [])
                File.WriteAllBytes(Path.Combine(folder, Convert.ToHexStringLower(SHA256.HashData(input))[..12]), input);
        }
    }

    private static TimeSpan ProcessorTime() => Environment.CpuUsage.TotalTime;

    private static string Here([CallerFilePath] string here = "") => here;
}
