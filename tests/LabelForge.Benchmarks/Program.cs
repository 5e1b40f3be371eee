using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using LabelForge.Benchmarks;
using LabelForge.Benchmarks.Page;

if (args is ["keystroke"] or ["soak", ..])
{
    Console.WriteLine(args[0] == "keystroke" ? await KeystrokeMeasure.Table() : await Soak.Table(TimeSpan.FromMinutes(args.Length > 1 ? double.Parse(args[1], System.Globalization.CultureInfo.InvariantCulture) : 30)));
    return;
}

// In this process, so that no further project has to be built for each run.
var job = Job.ShortRun.WithToolchain(InProcessEmitToolchain.DontLogOutput);
var slow = Job.Default.WithToolchain(InProcessEmitToolchain.DontLogOutput).WithStrategy(RunStrategy.Monitoring).WithWarmupCount(0).WithIterationCount(2).WithInvocationCount(1).WithUnrollFactor(1);
var summaries = new[]
{
    BenchmarkRunner.Run<DeclarationBenchmarks>(Config(job)),
    BenchmarkRunner.Run<SolverBenchmarks>(Config(slow)),
};
var page = PerformancePage.Of(summaries.SelectMany(s => s.Reports), DateOnly.FromDateTime(DateTime.Now));
Console.WriteLine(page);
var root = new DirectoryInfo(AppContext.BaseDirectory);
while (root is not null && !File.Exists(Path.Combine(root.FullName, "LabelForge.sln")))
    root = root.Parent;
File.WriteAllText(Path.Combine(root?.FullName ?? throw new InvalidOperationException("There is no LabelForge.sln above this program."), "docs", "performance.md"), page);

static IConfig Config(Job job) => ManualConfig.CreateEmpty().AddJob(job).AddLogger(ConsoleLogger.Default).AddColumnProvider(DefaultColumnProviders.Instance)
    .WithArtifactsPath(Path.Combine(Path.GetTempPath(), "labelforge-benchmarks"));
