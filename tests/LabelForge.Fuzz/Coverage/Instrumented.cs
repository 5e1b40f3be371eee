using System.Reflection;
using System.Runtime.Loader;
using SharpFuzz;

namespace LabelForge.Fuzz.Coverage;

/// <summary>
/// Loads a second copy of our assemblies in which every branch leaves a mark in <see cref="CoverageMap"/>. The copies are made
/// in the machine's temporary folder; what was built stays as it is.
/// </summary>
public sealed class Instrumented : AssemblyLoadContext
{
    private static readonly string[] Ours = ["LabelForge.Core", "LabelForge.Composition", "LabelForge.Law", "LabelForge.Products",
        "LabelForge.Labels", "LabelForge.Checks", "LabelForge.Print", "LabelForge.Records"];
    private static readonly Lazy<Instrumented> Loaded = new(() => new Instrumented());

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-fuzz-").FullName;

    private Instrumented()
    {
        CoverageMap.Attach();
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(_folder, recursive: true);
        foreach (var name in Ours)
        {
            var copy = Path.Combine(_folder, name + ".dll");
            File.Copy(Path.Combine(AppContext.BaseDirectory, name + ".dll"), copy);
            // What is generated (patterns, for the most part) stays as it is: its branches drown ours.
            Fuzzer.Instrument(copy, type => type.StartsWith("LabelForge.", StringComparison.Ordinal), Options.Value);
        }
    }

    /// <summary>A target of <see cref="Targets.AllTargets"/>, bound to the marked copies.</summary>
    public static Action<byte[]> Target(string name)
    {
        var own = Loaded.Value.LoadFromAssemblyPath(typeof(Instrumented).Assembly.Location);
        var find = own.GetType(typeof(Targets.AllTargets).FullName!, throwOnError: true)!
            .GetMethod(nameof(Targets.AllTargets.Of), BindingFlags.Public | BindingFlags.Static)!;
        return find.CreateDelegate<Func<string, Action<byte[]>>>()(name);
    }

    protected override Assembly? Load(AssemblyName assemblyName) =>
        Ours.Contains(assemblyName.Name) ? LoadFromAssemblyPath(Path.Combine(_folder, assemblyName.Name + ".dll")) : null;

}
