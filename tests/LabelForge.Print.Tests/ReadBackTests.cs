using System.Globalization;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Ingredients;
using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Reading;
using LabelForge.Recipes;

namespace LabelForge.Print.Tests;

/// <summary>
/// What is found on a product's label is found on the same label read back, as text and as PDF: products are drawn by chance from
/// a fixed seed, printed and read, and the rules found are compared, for those rules that the words of a label can show.
/// </summary>
public sealed class ReadBackTests
{
    private const int Products = 30;
    private static readonly DateOnly On = new(2026, 11, 26);

    // Rules that need more than a label's words, each with the reason.
    private static readonly Dictionary<string, string> NotShown = new()
    {
        ["net-quantity.overstated"] = "what a batch makes stands on no label",
        ["net-quantity.type-not-measured"] = "a label that is laid out is measured always, text never",
        ["package.missing"] = "the recipe says what the package is",
        ["preservation.not-measured"] = "pH and water activity stand on no label",
        ["preservative.missing"] = "how much water there is stands on no label",
        ["ingredients.order"] = "a composition proves the order; a label's is judged by what is usual",
        ["substance.over-limit"] = "shares stand on no label",
        ["substance.condition"] = "a composition is held to each condition; a label is told of all in one, as substance.conditions",
        ["substance.conditions"] = "the same from the other side",
        ["colour.condition"] = "a listing's limits are of shares, which stand on no label",
        ["durability.sign"] = "whether the open jar is drawn beside its months, words do not tell",
    };

    // An address is printed without its country, and each market's reader asks for the parts of an address at home: so what is
    // missing in one from abroad is compared for businesses inside the market only.
    private const string OfHomeAddresses = "business-place.missing";

    private static readonly Dictionary<string, string> Home = new() { ["us"] = "US", ["uk"] = "GB", ["ca"] = "CA" };

    private static readonly string[] Materials =
    [
        "Glycerin", "Ricinus Communis (Castor) Seed Oil", "Sodium Benzoate", "Phenoxyethanol", "Benzoic Acid", "Mica", "Titanium Dioxide",
        "Ultramarines", "Red 36", "Iron Oxides", "Sodium Bicarbonate", "Salicylic Acid",
        "Butyrospermum Parkii (Shea) Butter", "Sodium Lauryl Sulfate", "Mercury", "Hydroquinone",
    ];

    private static readonly (string Kind, string Identity, string Net)[] Kinds =
    [
        ("soap-bar", "Bar soap", "113 g"), ("body-lotion", "Body lotion", "200 mL"), ("lip-balm", "Lip balm", "4.5 g"),
        ("foaming-bath", "Foaming bath", "250 mL"), ("shampoo", "Shampoo", "240 mL"), ("deodorant", "Deodorant", "60 g"),
        ("sugar-scrub", "Sugar scrub", "200 g"), ("face-cream", "Face cream", "50 g"),
    ];

    private static readonly string[] Places =
    [
        "{ street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US }",
        "{ city: Fairport, region: ME, postcode: \"00000\", country: US }",
        "{ street: 1 Example Lane, city: Fenwick, postcode: ZZ1 1ZZ, country: GB }",
        "{ street: 1 Example Lane, city: Fairport, region: ON, postcode: K0K 0K0, country: CA }",
    ];

    private static readonly string[] Cautions =
        ["", "For external use only. Keep out of eyes.", "Keep out of reach of children. If irritation occurs, stop using it."];

    private static readonly string[] Directions =
        ["", "Work up a lather, then rinse.", "Heals eczema and kills germs.", "Smooth on the skin each day."];

    [Fact]
    public void What_is_found_of_a_product_is_found_on_its_label_read_back()
    {
        var wrong = new List<string>();
        var compared = new List<string>();
        for (var number = 0; number < Products; number++)
        {
            using var folder = new Folder(new Random(20261126 + number));
            var product = Workshop.Open(folder.Path).ProductsOf("thing")[0];
            // Every label is read as text, one market's in turn as PDF too, since drawing and reading one takes long.
            foreach (var (market, at) in Market.All.Select((m, i) => (m, i)))
                wrong.AddRange(Compare(product, market, asPdf: (number + at) % 4 == 3, compared)
                    .Select(d => $"product {number}, {product.Recipe.Product}, {market.Id}, {d}"));
        }
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
        // So that it is known that there was something to compare.
        Assert.InRange(compared.Distinct().Count(), 15, int.MaxValue);
        Assert.InRange(compared.Count, 300, int.MaxValue);
    }

    private static IEnumerable<string> Compare(Product product, Market market, bool asPdf, List<string> compared)
    {
        var job = LabelJob.Prepare(product, market, null, new LotCode(On, 1), On);
        // What does not fit prints nothing to read.
        if (job.Fit is not Fit.Fits fits)
            return [];
        LabelLayout[] layouts = [fits.Layout, .. job.Companions.Values.OfType<Fit.Fits>().Select(f => f.Layout)];
        var own = Rules(RecipeCheck.Run(job.Facts), job);
        compared.AddRange(own);
        var written = string.Join("\n\n", layouts.SelectMany(l => l.Texts).Select(t => t.Text));
        var differences = Differences("text", own, Read(job, market, LabelText.Of(written, "label.txt")));
        if (!asPdf)
            return differences;
        var file = Path.Combine(product.Workshop.Folder, "label.pdf");
        LabelFile.Write(file, layouts, Samples.Info);
        var read = PdfLabelReader.Read(File.ReadAllBytes(file), "label.pdf");
        return differences.Concat(Differences("PDF", own, Read(job, market, read)));
    }

    private static HashSet<string> Read(LabelJob job, Market market, LabelText text)
    {
        var reading = LabelStatement.Read(text, IngredientDictionary.Shipped);
        return Rules(LabelCheck.Run(LabelJudgement.Of(reading, job.Kind, job.Product.Recipe.SoldAs, job.Content.PrincipalPanel, On),
            market), job);
    }

    private static HashSet<string> Rules(CheckReport report, LabelJob job) =>
        [.. report.Findings.Select(f => f.Rule).Where(r => !NotShown.ContainsKey(r) && !(r == OfHomeAddresses && IsAbroad(job)))];

    private static bool IsAbroad(LabelJob job) => Home.GetValueOrDefault(job.Declaration.Market.Id) != job.Workshop.Business.Place.Country;

    private static IEnumerable<string> Differences(string form, HashSet<string> own, HashSet<string> read) =>
        own.Except(read).Select(r => $"{form}: {r} is found of the product only")
            .Concat(read.Except(own).Select(r => $"{form}: {r} is found on the label only"));

    private sealed class Folder : IDisposable
    {
        public Folder(Random random)
        {
            T Any<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
            string Line(string key, string value) => value.Length == 0 ? "" : $"{key}: {value}\n";
            var contact = Any(["{ phone: \"555-0100\" }", "{ web: rooksedge.example }"]);
            Write("workshop.yaml", $"business: Rooksedge Bodycare\nplace: {Any(Places)}\ncontact: {contact}\n");
            var uses = "  - { use: water, amount: 60 g }\n";
            Write("materials/water.yaml", "name: Water\nkind: additive\ncontains: Water\n");
            foreach (var at in Enumerable.Range(0, Materials.Length).Where(_ => random.Next(3) == 0))
            {
                Write($"materials/m{at}.yaml", $"name: Material {at}\nkind: additive\ncontains: {Materials[at]}\n");
                uses += $"  - {{ use: m{at}, amount: {(random.Next(1, 20_000) / 1000m).ToString(CultureInfo.InvariantCulture)} g }}\n";
            }
            var (kind, identity, net) = Any(Kinds);
            var warnings = Any(Cautions);
            Write("recipes/thing.yaml", $"name: Fen Meadow\nidentity: {identity}\nproduct: {kind}\npieces: 1\nnet: {net}\n"
                + Line("directions", Any(Directions))
                + (warnings.Length == 0 ? "" : $"warnings:\n  - {warnings}\n")
                + (random.Next(2) == 0 ? "period after opening: 12 months\n" : "")
                + (random.Next(2) == 0 ? "origin: United States\n" : "")
                + $"materials:\n{uses}");
        }

        public string Path { get; } = Directory.CreateTempSubdirectory("labelforge-").FullName;

        public void Dispose() => Directory.Delete(Path, recursive: true);

        private void Write(string file, string text)
        {
            var full = System.IO.Path.Combine(Path, file);
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(full)!);
            File.WriteAllText(full, text);
        }
    }
}
