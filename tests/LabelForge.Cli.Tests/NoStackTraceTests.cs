using System.Globalization;
using System.Reflection;

namespace LabelForge.Cli.Tests;

/// <summary>No verb, on any example and on random recipes good and bad, ends otherwise than with an answer or one clear message.</summary>
public sealed class NoStackTraceTests : IDisposable
{
    private static readonly string[][] Verbs =
    [
        ["declare"], ["declare", "--explain"], ["declare", "--format", "json"], ["declare", "--names", "dual"],
        ["declare", "--market", "eu", "--explain"], ["declare", "--market", "ca"], ["declare", "--market", "uk", "--format", "json"],
        ["check"], ["check", "--market", "eu", "--format", "json"], ["check", "--lot", "26R25-01E"], ["soap"], ["fragrance"], ["cost"],
        ["buy"], ["label", "--lot", "26R25-01E", "--out", "label.svg"], ["batch", "--lot", "26R25-01E", "--out", "bench.pdf"],
    ];

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-verbs-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void Every_verb_answers_on_every_example()
    {
        using var example = new ExampleWorkshop();
        foreach (var recipe in Directory.GetFiles(Path.Combine(example.Opened.Folder, "recipes")))
            Assert.Contains(All(recipe, example.Opened.Folder), code => code == 0);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_verb_answers_on_random_recipes(int seed)
    {
        var random = new Random(seed);
        var codes = new List<int>();
        for (var round = 0; round < 12; round++)
        {
            var folder = Path.Combine(_folder, $"{round}");
            Write(folder, random, round % 2 == 0);
            codes.AddRange(All(Path.Combine(folder, "recipes/bar.yaml"), folder));
        }
        Assert.Contains(0, codes);
        Assert.Contains(1, codes);
        Assert.Contains(2, codes);
    }

    [Fact]
    public void Soap_that_is_declared_as_formed_is_explained()
    {
        Write(_folder, new Random(3), soap: true, isPlain: true);
        var (code, output, messages) = CommandRun.Of("declare", Path.Combine(_folder, "recipes/bar.yaml"), "--workshop", _folder,
            "--explain");
        Assert.True(code == 0, messages);
        Assert.Contains("Sodium Olivate", output, StringComparison.Ordinal);
        Assert.Contains("WHERE EACH RANGE COMES FROM", output, StringComparison.Ordinal);
    }

    private List<int> All(string recipe, string folder)
    {
        var codes = new List<int>();
        foreach (var verb in Verbs)
        {
            string[] words = [verb[0], recipe, "--workshop", folder,
                .. verb[1..]
                    .Select(w => w.StartsWith("label.", StringComparison.Ordinal) || w.StartsWith("bench.", StringComparison.Ordinal)
                        ? Path.Combine(_folder, w)
                        : w)];
            var (code, output, messages) = CommandRun.Of(words);
            Assert.True(code is 0 or 1 or 2, $"{string.Join(' ', words)}: {code}");
            Assert.False(output.Contains("   at LabelForge", StringComparison.Ordinal)
                || messages.Contains("   at ", StringComparison.Ordinal)
                || messages.Contains("Exception", StringComparison.Ordinal)
                || messages.Contains("of labelforge itself", StringComparison.Ordinal),
                $"{string.Join(' ', words)}:\n{messages}\n{File.ReadAllText(recipe)}");
            codes.Add(code);
        }
        return codes;
    }

    private static void Write(string folder, Random random, bool soap, bool isPlain = false)
    {
        void File(string path, string text)
        {
            var file = Path.Combine(folder, path);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            System.IO.File.WriteAllText(file, text);
        }

        string Pick(params string[] of) => of[random.Next(of.Length)];
        File("workshop.yaml",
            "business: Moor Bench\nplace: { street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\" }\nmarket: us\n");
        File("materials/olive.yaml", "name: Olive oil\nkind: oil\ncontains: Olive Oil\ndensity: 0.91 g/mL\n");
        File("materials/coconut.yaml", "name: Coconut oil\nkind: oil\ncontains: Coconut Oil\n");
        File("materials/stearic.yaml", "name: Stearic acid\nkind: oil\ncontains: Stearic Acid\n");
        File("materials/citric.yaml",
            $"name: Citric acid\nkind: additive\ncontains: Citric Acid\n{Pick("", "saponification: 876 mg KOH/g\n")}");
        File("materials/lye.yaml", $"name: Lye\nkind: lye\ncontains: Sodium Hydroxide\n{Pick("purity: 98 %", "purity: 100 %")}\n");
        File("materials/water.yaml", "name: Water\nkind: water\n");
        File("materials/lavender.yaml",
            "name: Lavender\nkind: fragrance\ncontains: Lavender Oil\nallergens: { Linalool: 20-40 % }\nlimits: { category 9: 5 % }\n");
        File("materials/scent.yaml", "name: Scent\nkind: fragrance\nallergens: { Benzyl Alcohol: 20 %, Limonene: 1-9 % }\n");
        File("materials/base.yaml",
            $"name: Base\nkind: base\nlisted: {Pick("strict", "label", "none")}\ncontains:\n  - "
                + $"Water\n  - Glycerin{Pick("", ": 10-30 %", ": at least 2 %")}\n  - Sodium Stearate\n  - Benzyl "
                + $"Alcohol: 0.9 %\n  - {Pick("Wild Moor Extract", "Titanium Dioxide", "Silica [nano]")}\n");
        File("materials/mica.yaml",
            $"name: Mica\nkind: colourant\ncontains: [ Mica, CI "
                + $"77491, CI 77492, {Pick("Silica", "wild moor extract")} ]\ndensity: 0.6 g/mL\n");
        File("materials/blend.yaml",
            "name: Blend\nkind: base\nmade from:\n  - { use: olive, amount: 60 g }\n  - { use: base, amount: 40 g }\n");
        string[] uses = soap
            ? ["olive, amount: 450 g", "water, amount: 150 g", "lye, amount: by superfat",
                .. random.Next(2) == 0 ? new[] { "stearic, amount: 20 g" } : []]
            : ["base, amount: 900 g", "water, amount: 1 lb"];
        string[] more = ["citric, amount: 20 g", "lavender, amount: 2 % of batch", "scent, amount: 3 % of batch", "mica, amount: 1 tsp",
            "blend, amount: 120 g", "coconut, amount: 3 oz", "nothing, amount: 1 g", "olive, amount: 2 g"];
        var chosen = uses.Concat(more.OrderBy(_ => random.Next()).Take(isPlain ? 0 : random.Next(0, 4))
            .Where(m => random.Next(4) > 0 || !m.StartsWith('n')));
        var keys = (soap
            ? "superfat: 5 %\ndeclare as: formed\n"
            : "")
            + (isPlain ? "" : Pick("", "", "yield: 500 g\n", "loss: 3 % water\n", "loss: 20 g Glycerin\n", "net: 113 g\n", "net: 4 kg\n")
            + Pick("", "", "variants:\n  - { name: Plain, item: 1 }\n  - { name: Odd, add: [ { use: mica, amount: 2 g } ], item: 2 }\n"));
        File("recipes/bar.yaml",
            $"name: Bar\nidentity: Bar soap\nproduct: {Pick("soap-bar", "body-butter", "body-lotion")}\npieces: {random.Next(1, 9)}\nmaterials:\n{string.Concat(chosen.Select(c => $"  - {{ use: {c} }}\n"))}{keys}");
    }
}
