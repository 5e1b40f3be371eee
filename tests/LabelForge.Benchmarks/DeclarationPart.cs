using System.Globalization;
using System.Text;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace LabelForge.Benchmarks;

/// <summary>The order of ingredients, against a general solver on the same instances.</summary>
internal static class DeclarationPart
{
    public static string Measure()
    {
        var machine = Machine.Line();
        // In this process, so that no further project has to be built for each run.
        var job = Job.ShortRun.WithToolchain(InProcessEmitToolchain.DontLogOutput);
        var slow = Job.Default.WithToolchain(InProcessEmitToolchain.DontLogOutput).WithStrategy(RunStrategy.Monitoring).WithWarmupCount(0)
            .WithIterationCount(2).WithInvocationCount(1).WithUnrollFactor(1);
        var rows = new[] { BenchmarkRunner.Run<DeclarationBenchmarks>(Config(job)), BenchmarkRunner.Run<SolverBenchmarks>(Config(slow)) }
            .SelectMany(s => s.Reports).Where(r => r.ResultStatistics is not null).Select(r => (
                Count: (int)r.BenchmarkCase.Parameters["Ingredients"],
                What: r.BenchmarkCase.Descriptor.WorkloadMethod.Name switch
                {
                    "Glop" => "general solver, strict",
                    "Label" => "LabelForge, label",
                    _ => "LabelForge, strict",
                },
                Least: r.ResultStatistics!.Min / 1e9, Mean: r.ResultStatistics.Mean / 1e9))
            .OrderBy(r => r.Count).ThenBy(r => r.Least);
        var text =
            new StringBuilder(
                $"{machine} BenchmarkDotNet, short job.\n\n| ingredients | what | least | mean |\n| ---: | --- | ---: | ---: |\n");
        foreach (var row in rows)
            text.Append(CultureInfo.InvariantCulture,
                $"| {row.Count} | {row.What} | {Figures.Time(row.Least)} | {Figures.Time(row.Mean)} |\n");
        return text.ToString();
    }

    private static IConfig Config(Job job) =>
        ManualConfig.CreateEmpty().AddJob(job).AddLogger(NullLogger.Instance).AddColumnProvider(DefaultColumnProviders.Instance)
            .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "labelforge-benchmarks"));
}
