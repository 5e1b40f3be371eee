using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Drawing;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Recipes;

namespace LabelForge.Benchmarks;

/// <summary>A small invented bar whose back label stands on stock of thirty: twelve ingredients,
/// the maker, the lot and its barcode.</summary>
internal static class BenchWorkshop
{
    public const string Recipe = "guest-bar";
    public const string Design = "bar-back-1x2.625";
    public const string Stock = "us-letter-30-1x2.625in";
    public const string Lot = "26R25-02C";

    /// <summary>The day to judge by.</summary>
    public static readonly DateOnly Day = new(2026, 11, 25);

    private static readonly Lazy<string> LazyFolder = new(Write);

    /// <summary>The workshop's folder.</summary>
    public static string Folder => LazyFolder.Value;

    /// <summary>The way to the laid-out label.</summary>
    public static LabelJob Job()
    {
        var workshop = Workshop.Open(Folder);
        return LabelJob.Prepare(workshop.ProductOf(Recipe), Market.Us, Design, LotCode.Parse(Lot).Value, Day);
    }

    /// <summary>The laid-out label.</summary>
    public static LabelLayout Label() => Job().Fit.OrRefuse();

    /// <summary>So many labels, from the first position of a sheet.</summary>
    public static SheetOrder Order(LabelLayout label, int count) =>
        new() { Stock = LabelStock.Load(Stock), Runs = [new LabelRun(label, count)] };

    private static string Write()
    {
        var folder = Scratch.Path("workshop");
        Put("workshop.yaml",
            "business: Quarry Lane Suds\nplace: { street: 3 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\", web: \"quarrylane.example\" }\nmarket: us\ngtin prefix: "
                + "\"9521321\"\ncurrency: USD\n");
        Put("materials/white-base.yaml",
            "name: White base\nkind: base\nlisted: label\ncontains:\n  - Glycerin: 25-35 %\n  - Aqua\n  - Sorbitol\n  - Sodium Stearate: "
                + "15-22 %\n  - Sodium Cocoate\n  - Propylene Glycol\n  - Butyrospermum Parkii (Shea) Butter: 2-5 %\n  - Citric Acid\n  - "
                + "Sodium Chloride: <= 1 %\n  - Tetrasodium EDTA: <= 0.2 %\n  - Titanium Dioxide: 0.5-1.5 %\npacks: [ { size: 2 lb, "
                + "price: 12.80 } ]\n");
        Put("materials/castor-oil.yaml",
            "name: Castor oil\nkind: oil\ncontains: Ricinus Communis Seed Oil\ndensity: 0.96 g/mL\npacks: [ { size: 250 mL, "
                + "price: 6.00 } ]\n");
        Put("recipes/guest-bar.yaml",
            "name: Guest bar\nidentity: Glycerin bar soap\nproduct: soap-bar\nsold as: cosmetic\nitem: \"31\"\nmaterials:\n  - { use: "
                + "white-base, amount: 725 g }\n  - { use: castor-oil, amount: 14 g }\npieces: 24\npackage: { shape: bar, size: "
                + "2x1.25x0.6 in }\nnet: 1 oz\n");
        return folder;

        void Put(string file, string text)
        {
            var path = Path.Combine(folder, file);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            File.WriteAllText(path, text);
        }
    }
}
