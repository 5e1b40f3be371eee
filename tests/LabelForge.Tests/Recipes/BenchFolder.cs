namespace LabelForge.Tests.Recipes;

/// <summary>A workshop folder in the machine's temporary folder, gone when the test is over.</summary>
public sealed class BenchFolder : IDisposable
{
    public BenchFolder()
    {
        Path = Directory.CreateTempSubdirectory("labelforge-").FullName;
        Write("workshop.yaml",
            "business: Test Bench\nplace: { street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\" }\n");
        Write("materials/base.yaml", "name: Test base\nkind: base\ncontains:\n  - Glycerin: 60 %\n  - Water: 40 %\n");
        Write("materials/castor-oil.yaml", "name: Castor oil\nkind: oil\ncontains: Ricinus Communis Seed Oil\ndensity: 0.96 g/mL\n");
    }

    public string Path { get; }

    public BenchFolder Write(string file, string text)
    {
        var full = System.IO.Path.Combine(Path, file);
        Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
        File.WriteAllText(full, text);
        return this;
    }

    /// <summary>Writes a recipe named bar with these lines of materials.</summary>
    public BenchFolder Recipe(params string[] materials) => Write("recipes/bar.yaml",
        "name: Bar\nidentity: Bar soap\nproduct: soap-bar\npieces: 2\nmaterials:\n" + string.Concat(materials.Select(m => $"  - {m}\n")));

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
