using System.Reflection;
using LabelForge.Recipes;

namespace LabelForge.Cli.Tests;

/// <summary>The shipped example, written out once to a folder of its own and opened.</summary>
public sealed class ExampleWorkshop : IDisposable
{
    private const string Shipped = "example/";

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-example-").FullName;

    public ExampleWorkshop()
    {
        var assembly = Assembly.Load("LabelForge.Cli");
        foreach (var name in assembly.GetManifestResourceNames().Where(n => n.StartsWith(Shipped, StringComparison.Ordinal)))
        {
            var path = Path.Combine(_folder, name[Shipped.Length..].Replace('\\', '/'));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var shipped = assembly.GetManifestResourceStream(name)!;
            using var file = File.Create(path);
            shipped.CopyTo(file);
        }
        Opened = Workshop.Open(_folder);
    }

    public Workshop Opened { get; }

    public BatchFormula Batch(string recipe) => BatchFormula.Of(Opened, Opened.Recipe(recipe));

    public void Dispose() => Directory.Delete(_folder, recursive: true);
}
