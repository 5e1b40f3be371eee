using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Declarations;
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

/// <summary>Labels in each language that a label can speak here, printed, read back and checked as somebody else's would be.</summary>
public sealed class LanguageReadBackTests
{
    private static readonly DateOnly On = new(2026, 11, 26);

    // What a product is, as a label of that language says it.
    private static readonly Dictionary<string, (string Soap, string Balm, string Cream)> Identities = new()
    {
        ["en"] = ("Bar soap", "Lip balm", "Hand cream"),
        ["fr"] = ("Pain de savon", "Baume à lèvres", "Crème pour les mains"),
        ["de"] = ("Handgemachte Seife", "Lippenbalsam", "Handcreme"),
        ["es"] = ("Pastilla de jabón", "Bálsamo labial", "Crema de manos"),
        ["it"] = ("Saponetta", "Balsamo labbra", "Crema mani"),
        ["nl"] = ("Zeepblok", "Lippenbalsem", "Handcrème"),
        ["pl"] = ("Mydło w kostce", "Balsam do ust", "Krem do rąk"),
        ["cs"] = ("Tuhé mýdlo", "Balzám na rty", "Krém na ruce"),
        ["da"] = ("Håndsæbe", "Læbepomade", "Håndcreme"),
        ["et"] = ("Käsitöö seep", "Huulepalsam", "Kätekreem"),
        ["fi"] = ("Palasaippua", "Huulivoide", "Käsivoide"),
        ["ga"] = ("Gallúnach", "Balm liopaí", "Uachtar láimhe"),
        ["hr"] = ("Sapun za ruke", "Balzam za usne", "Krema za ruke"),
        ["hu"] = ("Kézműves szappan", "Ajakbalzsam", "Kézkrém"),
        ["lt"] = ("Gabalinis muilas", "Lūpų balzamas", "Rankų kremas"),
        ["bg"] = ("Твърд сапун", "Балсам за устни", "Крем за ръце"),
        ["el"] = ("Σαπούνι", "Βάλσαμο χειλιών", "Κρέμα χεριών"),
        ["lv"] = ("Gabalziepes", "Lūpu balzams", "Roku krēms"),
        ["mt"] = ("Sapuna", "Balzmu għax-xufftejn", "Krema tal-idejn"),
        ["pt"] = ("Sabonete", "Bálsamo labial", "Creme de mãos"),
        ["ro"] = ("Săpun", "Balsam de buze", "Cremă de mâini"),
        ["sk"] = ("Tuhé mydlo", "Balzam na pery", "Krém na ruky"),
        ["sl"] = ("Trdo milo", "Balzam za ustnice", "Krema za roke"),
        ["sv"] = ("Fasttvål", "Läppbalsam", "Handkräm"),
    };

    public static TheoryData<string> Languages => [.. Phrases.Languages];

    [Theory]
    [MemberData(nameof(Languages))]
    public void A_label_made_here_passes_its_own_check_in_every_language_offered(string language)
    {
        var (soap, balm, cream) = Identities[language];
        foreach (var (kind, identity, net, phrase) in new[] { ("soap-bar", soap, "100 g", "lather-and-rinse"),
            ("lip-balm", balm, "10 g", "smooth-over-lips"), ("hand-cream", cream, "75 mL", "") })
        {
            var folder = Directory.CreateTempSubdirectory("labelforge-").FullName;
            try
            {
                Write(folder, language, kind, identity, net, phrase);
                var product = Workshop.Open(folder).ProductsOf("thing")[0];
                var job = LabelJob.Prepare(product, Market.Named("eu"), null, new LotCode(On, 1), On);
                var fits = Assert.IsType<Fit.Fits>(job.Fit);
                LabelLayout[] layouts = [fits.Layout, .. job.Companions.Values.OfType<Fit.Fits>().Select(f => f.Layout)];
                Assert.Equal([], Musts(RecipeCheck.Run(job.Facts)));
                var file = Path.Combine(folder, "label.pdf");
                LabelFile.Write(file, layouts, Samples.Info);
                Passes(PdfLabelReader.Read(File.ReadAllBytes(file), "label.pdf"), job, identity);
                Passes(LabelText.Of(string.Join("\n\n", layouts.SelectMany(l => l.Texts).Select(t => t.Text)), "label.txt"), job,
                    identity);
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }

    private static void Passes(LabelText text, LabelJob job, string identity)
    {
        var read = LabelStatement.Read(text, IngredientDictionary.Shipped);
        var found = LabelCheck.Run(LabelJudgement.Of(read, null, null, job.Content.PrincipalPanel, On), Market.Named("eu"));
        Assert.True(Musts(found).Length == 0, $"{string.Join("\n", Musts(found))}\n{text.Text}");
        Assert.Equal("",
            string.Join('\n',
                found.Findings.Where(f => f.Rule.StartsWith("reading.", StringComparison.Ordinal) && f.Severity != Severity.Note)
                    .Select(f => f.Message)));
        Assert.Equal(identity, read.Identity?.Written);
        Assert.Equal(job.Kind.Id, read.Identity?.Kind.Id);
        Assert.Equal(job.Content.Ingredients.Length, read.Names.Length);
        Assert.Equal(job.Content.Lot, read.Lot?.Code);
    }

    private static string[] Musts(CheckReport report) =>
        [.. report.Findings.Where(f => f.Severity == Severity.Must).Select(f => $"{f.Rule}: {f.Message}")];

    private static void Write(string folder, string language, string kind, string identity, string net, string phrase)
    {
        var directions = phrase.Length == 0 ? "" : $"directions: \"standard: {phrase}\"\n";
        File.WriteAllText(Path.Combine(folder, "workshop.yaml"),
            $"business: Rooksedge Bodycare\nmarket: eu\nlanguage: {language}\nplace: {{ street: Example Lane 1, city: Dublin, postcode: "
                + $"D02 X285, country: IE }}\ncontact: {{ web: rooksedge.example }}\n");
        Directory.CreateDirectory(Path.Combine(folder, "materials"));
        Directory.CreateDirectory(Path.Combine(folder, "recipes"));
        File.WriteAllText(Path.Combine(folder, "materials", "base.yaml"),
            "name: Base\nkind: base\ncontains:\n  - Cocos Nucifera (Coconut) Oil: 60 %\n  - Glycerin: 30 %\n  - Tocopherol: 10 %\n");
        File.WriteAllText(Path.Combine(folder, "recipes", "thing.yaml"),
            $"name: Fen Meadow\nidentity: {identity}\nproduct: {kind}\npieces: 1\nnet: {net}\n{directions}warnings: [ \"standard: "
                + $"external-only\", \"standard: keep-out-of-eyes\", \"standard: stop-if-irritated\", \"standard: keep-from-children\" ]\n"
            + $"best before: 2028-05\nin:\n  {language}: {{ identity: {identity} }}\nmaterials:\n  - {{ use: base, amount: 120 g }}\n");
    }
}
