using LabelForge.Checks;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Quantities;
using LabelForge.Recipes.Files;
using LabelForge.Records.Books;
using LabelForge.UseCases;
using LabelForge.Web.Components.Parts;
using LabelForge.Web.Editing;
using LabelForge.Web.Wording;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace LabelForge.Web.Components.Pages;

/// <summary>A recipe as it is edited: its rows, its moulds, what is wrong at which field.</summary>
public partial class RecipePage
{
    private static readonly Step[] Told = ["name", "identity", "product", "sold as", "pieces", "net", "superfat", "declare as", "yield",
        "directions", "price", .. Elsewhere];

    // What the labels of some markets say of how long it keeps, where it comes from, and what barcodes are numbered by.
    private static Step[] Elsewhere => ["best before", "period after opening", "origin", "item"];

    private string _moulds = "";
    private (string Use, string Amount)? _line;

    private readonly WhileSame<Workshop?, (string Id, string Name)[]> _names = new(workshop => [.. (workshop?.Materials.Values ?? [])
        .Where(m => m.Kind != MaterialKind.Packaging).OrderBy(m => m.Name, StringComparer.OrdinalIgnoreCase).Select(m => (m.Id, m.Name))]);

    private (string Id, string Name)[] MaterialNames => _names.Of(WorkshopCache.Read().Workshop);

    // Where a label is judged against the rules of such a market, the fields are at hand.
    private bool AsksHowLong => View.Report?.Findings.Any(f => f.Rule is "durability.missing" or "durability.sign" or "origin.missing") == true;

    private bool UsesLye => View.Job?.Batch.Lines.Any(l => l.Material.Kind == MaterialKind.Lye) == true;

    private bool ShownAtAField =>
        Told.Any(k => Wrong(k) is not null)
            || Wrong("package", "shape") is not null
            || Wrong("package", "size") is not null
            || new Step[] { "warnings", "claims" }.Any(k => Enumerable.Range(0, YamlEdit.Count(Text, k)).Any(i => Wrong(k, i) is not null))
            || Enumerable.Range(0, YamlEdit.Count(Text, "materials")).Any(i => Wrong("materials", i) is not null);

    private (BatchFormula? Batch, string? Wrong) Scaled
    {
        get
        {
            if (_moulds.Trim().Length == 0 || View.IsOld || View.Job is not { } job)
                return default;
            try
            {
                return (BatchSize.ToMoulds(job.Workshop, job.Batch.Recipe, _moulds), null);
            }
            catch (InputException e)
            {
                return (null, PageWords.Of(e.Problem, Say.Language).Wrong);
            }
        }
    }

    // A number that does not say of what: the answers, as buttons.
    private string[] OfWhat(string amount)
    {
        // A decimal comma is read as it is everywhere.
        var text = amount.Trim().EndsWith('%') ? $"{Loose.Money(amount.Trim().TrimEnd('%', ' '))} %" : Loose.Money(amount).Trim();
        if (text.TrimEnd('%', ' ') is not { Length: > 0 } figure
            || !decimal.TryParse(figure, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out _))
            return [];
        return text.EndsWith('%') ? UsesLye ? [$"{figure} % of batch", $"{figure} % of oils"] : [$"{figure} % of batch"]
            : [$"{figure} g", $"{figure} oz", $"{figure} tsp", $"{figure} % of batch"];
    }

    private string? UsualFor =>
        ProductKinds.All.FirstOrDefault(k => k.Id == Get("product")) is { } kind ? UsualPackage.For(kind) : null;

    private string NameOf(string id) => WorkshopCache.Read().Workshop?.Materials.GetValueOrDefault(id)?.Name ?? id;

    private int Lines => YamlEdit.Count(Text, "materials");

    private void AddMaterial()
    {
        if (MaterialNames.Length > 0)
            _line = ("", "");
        else
            Here.NavigateTo("/materials/new");
    }

    // A row goes into the recipe once it says what and how much: an amount that nobody wrote would be weighed out.
    private void TypeLine(int at, string? use, string? amount)
    {
        if (at < Lines)
        {
            if (use is null)
                SetLoosely(amount ?? "", Loose.Amount, "materials", at, "amount");
            else
                Set(use, "materials", at, "use");
            return;
        }
        var now = _line ?? ("", "");
        now = (use ?? now.Use, amount ?? now.Amount);
        _line = now;
        if (now.Use.Length == 0 || now.Amount.Trim().Length == 0)
            return;
        _line = null;
        Edit(t => YamlEdit.Add(t, ["materials"], $"{{ use: {now.Use}, amount: {YamlScalar.Write(now.Amount)} }}", Order),
            $"materials/{at}/amount");
    }

    private void RemoveLine(int at)
    {
        if (at < Lines)
            Edit(t => YamlEdit.Remove(t, ["materials", at]));
        else
            _line = null;
    }

    private IReadOnlyList<string> Lots() =>
        BooksCache.Asked<string[]>(books => [.. books.Lots(null, 100, Id).Select(l => l.Batch.Lot)], []);
}
