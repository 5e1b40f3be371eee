using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>A small invented workshop in a folder of its own, with books.</summary>
public sealed class TestShop : IDisposable
{
    public static readonly DateOnly Day = new(2026, 11, 2);

    public TestShop(string? server = null)
    {
        Write("workshop.yaml", "business: Rooksedge Bodycare\nmarket: us\n" + (server is null ? "" : $"records: \"{server}\"\n"));
        Write("materials/base.yaml",
            "name: Base\nkind: base\nlisted: label\ncontains:\n  - Glycerin: 40-50 %\n  - Water: 30-35 %\n  - Sodium Stearate: 20-25 "
                + "%\npacks: [ { size: 2 kg, price: 20.00 }, { size: 500 g, price: 7.00 } ]\n");
        Write("materials/castor-oil.yaml",
            "name: Castor oil\nkind: oil\ncontains: Ricinus Communis Seed Oil\ndensity: 0.96 g/mL\npacks: [ { size: 250 mL, "
                + "price: 6.00 } ]\n");
        Write("materials/scent.yaml",
            "name: Scent\nkind: fragrance\ncontains: Fragrance\nlimits: { category 9: 5 % }\nallergens: { Linalool: 0.3 % }\npacks: [ { "
                + "size: 60 g, price: 9.00 } ]\n");
        Write("materials/bag.yaml", "name: Bag\nkind: packaging\npacks: [ { size: 100 pieces, price: 6.00 } ]\n");
        Write("recipes/bar.yaml",
            "name: Bar\nidentity: Glycerin bar soap\nproduct: soap-bar\nmaterials:\n  - { use: base, amount: 900 g }\n  - { use: "
                + "castor-oil, amount: 27 g }\n  - { use: scent, amount: 18 g }\npieces: 8\nnet: 113 g\n");
        // Empty books are made once and copied: each test would make the same tables.
        if (server is null)
            File.WriteAllBytes(Path.Combine(Folder, OpenBooks.FileName), EmptyBooks.Value);
        Book = OpenBooks.Open(Folder);
    }

    private static readonly Lazy<byte[]> EmptyBooks = new(() =>
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-empty-").FullName;
        var path = OpenBooks.Open(folder).Path;
        var bytes = File.ReadAllBytes(path);
        Assert.False(File.Exists(path + "-wal"));
        Directory.Delete(folder, recursive: true);
        return bytes;
    });

    /// <summary>The same shop with its books on a server.</summary>
    public static TestShop OnServer() => new(TestServer.NewBooks());

    // In memory where the machine has it: what these tests prove does not hang on how long a disk takes to sync.
    public string Folder { get; } = Directory.Exists("/dev/shm")
        ? Directory.CreateDirectory(Path.Combine("/dev/shm", $"labelforge-{Guid.NewGuid():N}")).FullName
        : Directory.CreateTempSubdirectory("labelforge-").FullName;

    public OpenBooks Book { get; }

    public Workshop Workshop => Recipes.Workshop.Open(Folder);

    public Receipt Receive(string material, decimal grams, decimal price, DateOnly? best = null, DateOnly? on = null) =>
        StockMovements.Receive(Book, new Receipt
        {
            On = on ?? Day,
            By = "A",
            Material = material,
            Amount = grams,
            Price = price,
            BestBefore = best,
            Supplier = "Heron",
            SupplierLot = "H" + grams,
        });

    public string Start(string lot, int pieces = 8)
    {
        var batch = BatchSize.ToPieces(Workshop, Workshop.Recipe("bar"), pieces);
        return Production.Start(Book, FrozenRecipe.Of(Workshop, batch, "us", null), lot, Day, "A").Lot;
    }

    public void Weigh(string lot, decimal basis, decimal oil, decimal scent)
    {
        Production.Weigh(Book, lot, "base", basis, null, Day, "A");
        Production.Weigh(Book, lot, "castor-oil", oil, null, Day, "A");
        Production.Weigh(Book, lot, "scent", scent, null, Day, "A");
    }

    public string Finish(string lot, int made = 8, int rejected = 0)
    {
        Start(lot);
        Weigh(lot, 900, 27, 18);
        Production.Close(Book, lot, made, rejected, null, Day, "A");
        return lot;
    }

    public void Stock()
    {
        Receive("base", 10_000, 100);
        Receive("castor-oil", 1000, 20);
        Receive("scent", 500, 60);
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    public void Write(string file, string text)
    {
        var path = Path.Combine(Folder, file);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllText(path, text);
    }

    public static string Refusal(Action action) => Assert.Throws<InputException>(action).Message;
}
