using LabelForge.Lots;
using LabelForge.Markets;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Recipes;

namespace LabelForge.Print.Tests;

/// <summary>A bar's label in English and French, as Canada wants it (C.R.C., c. 869, s. 18(a); c. 417, ss. 14 and 15).</summary>
public sealed class BilingualBarTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("bilingual-");

    [Fact]
    public void The_design_for_two_languages_holds_what_the_usual_one_does_not_and_is_named_then()
    {
        var not = Assert.IsType<Fit.DoesNotFit>(Job(null).Fit);
        Assert.Contains("bar-bilingual-4x3", not.Write, StringComparison.Ordinal);
        Assert.DoesNotContain("701.3(p)", not.Write, StringComparison.Ordinal);
        var layout = Assert.IsType<Fit.Fits>(Job("bar-bilingual-4x3").Fit).Layout;
        Assert.DoesNotContain(layout.LeftOut, l => l.Contains("left out", StringComparison.Ordinal));
        Assert.All(layout.Texts
            .Where(t => t.Role is Role.Ingredients or Role.Identity or Role.Responsible or Role.Directions or Role.Warnings),
            t => Assert.True(t.LetterHeight.Millimetres >= 1.6m, $"{t.Role}: {t.LetterHeight.Millimetres} mm"));
        Assert.All(layout.Constraints.Where(c => c.Required), c => Assert.True(c.Kept, c.Broken.Wrong));
    }

    [Fact]
    public void No_line_begins_with_the_stroke_between_two_languages()
    {
        var lines = Assert.IsType<Fit.Fits>(Job("bar-bilingual-4x3").Fit).Layout.Lines;
        Assert.DoesNotContain(lines, l => l.Text.Text.StartsWith('/'));
        Assert.Contains(lines, l => l.Text.Text.Contains("Pain", StringComparison.Ordinal));
    }

    public void Dispose() => folder.Delete(recursive: true);

    private LabelJob Job(string? design)
    {
        Write("workshop.yaml",
            "business: Pebble Cove Soapworks\nplace: { street: 1 Example Lane, city: Exampleton, region: ON, postcode: \"K0A 0A0\", "
                + "country: CA }\ncontact: { phone: \"555-0100\", web: pebblecove.example }\nmarket: ca\n");
        Write("materials/base.yaml",
            "name: Clear base\nkind: base\ncontains: [Glycerin, Aqua, Sodium Stearate, Sorbitol, Sodium Laurate, Propylene Glycol, Sodium "
                + "Laureth Sulfate, Sodium Chloride, Sodium Myristate, Tetrasodium EDTA, Tetrasodium Etidronate, Butyrospermum "
                + "Parkii Butter]\n");
        Write("materials/scent.yaml",
            "name: Fen scent\nkind: fragrance\ncontains: Fragrance\nallergens: { Linalool: 12 %, Limonene: 8 %, Citronellol: 3-5 %, "
                + "Linalyl Acetate: 9 %, Coumarin: 1 % }\n");
        Write("materials/mica.yaml", "name: Heather mica\nkind: colourant\ncontains: [Mica, Titanium Dioxide, Iron Oxides]\n");
        Write("recipes/fen.yaml", """
            name: Fen Meadow
            identity: Glycerin bar soap
            product: soap-bar
            pieces: 8
            net: 113 g
            materials:
              - { use: base, amount: 900 g }
              - { use: scent, amount: 1.5 % of batch }
              - { use: mica, amount: 4 g }
            directions: Lather with warm water and rinse. Keep dry between uses.
            warnings: ["For external use only. Avoid contact with the eyes. Stop use if irritation occurs."]
            in:
              fr:
                identity: Pain de savon à la glycérine
                directions: Faire mousser à l'eau tiède, puis rincer. Garder au sec entre les utilisations.
                warnings: ["Pour usage externe seulement. Éviter le contact avec les yeux. Cesser l'emploi en cas d'irritation."]
            """);
        var workshop = Workshop.Open(folder.FullName);
        return LabelJob.Prepare(Product.Planned(workshop, workshop.Recipe("fen")), Market.Ca, design, LotCode.Parse("26R25-01E").Value,
            new DateOnly(2026, 11, 26));
    }

    private void Write(string name, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.Combine(folder.FullName, name))!);
        File.WriteAllText(Path.Combine(folder.FullName, name), text);
    }
}
