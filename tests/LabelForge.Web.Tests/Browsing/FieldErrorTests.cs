using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>What is wrong with a form stands at the field that is to blame, is read out with it, and the focus goes there.</summary>
public sealed partial class FieldErrorTests(Chromium chromium)
{
    // A form: the page's file, where it is shown, what sends it (nothing where it is told as it is typed), and what is typed one after
    // another, with the field to blame each time.
    private sealed record Form(string File, string Route, string Send, params (string Typed, string Field)[] Slips);

    private const string Pot = "POT";

    private static readonly Form[] Forms =
    [
        new("StockIn", "/stock/in", "form .chief", ("", "material"), ("material=bramble-fragrance", "amount"), ("amount=heaps", "amount"),
            ("amount=500 g", "price"), ("price=dear", "price")),
        new("StockOut", "/stock/out", "form[aria-labelledby=sold] [type=submit]", ("", "sale-lot"),
            ($"sale-lot={FilledBooks.Lot}", "pieces"),
            ("pieces=some", "pieces"), ("pieces=900", "to"), ("to=Fairport market", "paid"), ("paid=0", "paid"), ("paid=9000", "pieces")),
        new("StockOut", "/stock/out", "form[aria-labelledby=gone] [type=submit]", ("", "gone-what"), ("gone-what=M1", "gone-amount"),
            ("gone-amount=heaps", "gone-amount"), ("gone-amount=90 kg", "reason"), ("reason=Spilled", "gone-amount")),
        new("ComplaintsPage", "/stock/complaints", "form .chief", ("", "from"), ("from=A. Reader", "what")),
        new("TallyPage", "/tally", "#book-day", ("", "place"), ("place=Fairport market", "sold-bramble-bar"),
            ("sold-bramble-bar=two", "sold-bramble-bar"), ("sold-bramble-bar=1;given-bramble-bar=x", "given-bramble-bar"),
            ("given-bramble-bar=;card=much", "card")),
        new("RecipeNew", "/recipes/new", "form .chief", ("", "name"), ("name=Fern Hollow", "material"),
            ("material=clear-glycerin-base", "amount"), ("amount=heaps", "amount"), ("amount=900 g;pieces=some", "pieces")),
        new("MaterialNew", "/materials/new", "form .chief", ("", "name"), ("name=Bramble fragrance;kind=base", "list"),
            ("list=Aqua", "name")),
        new("CopyPage", "/copy", "#copy", ("", "name"), ("name=Fern Hollow;price=dear", "price"),
            ("from=meadow-bar/Moss Lane;name=Salt Meadow;price=", "name")),
        new("KeptPapers", "/papers/kept", "form .chief", ("", "file"), ("file=@", "about"), ("about=nobody-knows", "about")),
        new("StockBooks", "/stock/books/complaint", "form[aria-labelledby=correct] [type=submit]", ("", "number"), ("number=1", "why")),
        new("Batches", "/batches", "form .chief", ("by=pieces", "size"), ("by=moulds;size=heaps", "size")),
        new("BatchPage", $"/batches/{FilledBooks.OpenLot}", "form.bench-now .chief", ("", "weighed"), ("weighed=heaps", "weighed")),
        new("BatchPage", $"/batches/{FilledBooks.OpenLot}", "form:not(.bench-now) [type=submit]", ("", "made"), ("made=some", "made"),
            ("made=6;rejected=none", "rejected"), ("rejected=0;yield=heavy", "yield")),
        new("PourPage", "/pour", "#begin-pot", ("", "pour-bath-salt-Hayloft-Soak"),
            ("pour-bramble-bar=some", "pour-bramble-bar")),
        new("PourPage", $"/pour?pot={Pot}", "#do-weigh", ("", "weighed"), ("weighed=heaps", "weighed")),
        new("TablePage", "/table", "#make-cards", ("", "card-bath-salt-Hayloft-Soak"),
            ("card-bramble-bar=some", "card-bramble-bar"),
            ("card=gift-set", "set-name")),
        new("BuyPage", "/costs/buy", "form .chief", ("", "want-bath-salt-Hayloft-Soak"), ("want-bramble-bar=✓", "pieces-bramble-bar"),
            ("pieces-bramble-bar=6;budget=dear", "budget")),
        new("WeighPage", "/weigh", "form .chief", ("", "piece"), ("piece=heavy", "piece")),
        new("WeighPage", "/weigh", "", ("list=113 g;tare=heavy", "tare"), ("tare=;declared=some", "declared"),
            ("declared=113 g;lot-size=all", "lot-size")),
        new("PrintPage", "/print/bramble-bar", "", ("count=some", "count"), ("count=;first=900", "first"), ("first=;lot=today", "lot")),
        new("MarketPage", "/market", "#close-day", ("", "float"), ("float=20", "card"), ("card=dear", "card"), ("card=0", "cash")),
    ];

    // What is only looked for is never refused; and the start of a workshop has its own tests.
    private static readonly string[] Others = ["FindPage", "TracePage", "Start"];

    [Fact]
    public async Task What_is_wrong_stands_at_its_field_and_the_focus_goes_there()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var pot = FilledBooks.BeginPot(window.Folder);
        var found = new List<string>();
        foreach (var form in Forms)
        {
            await window.GoAsync(form.Route.Replace(Pot, pot, StringComparison.Ordinal));
            foreach (var (typed, field) in form.Slips)
            {
                foreach (var entry in typed.Split(';', StringSplitOptions.RemoveEmptyEntries))
                    await TypeAsync(window.Page, entry);
                if (form.Send.Length > 0)
                    await window.Page.ClickAsync(form.Send);
                if (await FaultAsync(window.Page, field) is { } fault)
                    found.Add($"{form.Route} after \"{typed}\": {fault}");
            }
        }
        Assert.True(found.Count == 0, string.Join('\n', found));
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public void Every_form_is_tried()
    {
        var forms = Directory.EnumerateFiles(Components(), "*.razor", SearchOption.AllDirectories)
            .Select(f => (Name: Path.GetFileNameWithoutExtension(f), Count: Submits().Count(File.ReadAllText(f))))
            .Where(f => f.Count > 0).Where(f => !Others.Contains(f.Name));
        Assert.All(forms, f => Assert.Contains(Forms, known => known.File == f.Name));
    }

    private static async Task TypeAsync(IPage page, string entry)
    {
        var (id, text) = entry.Split('=') is [var name, var what] ? (name, what) : throw new FormatException(entry);
        var field = page.Locator($"[id='{id}']");
        switch (await field.EvaluateAsync<string>("e => e.tagName + ':' + e.type"))
        {
            case "SELECT:select-one":
                await field.SelectOptionAsync(text);
                break;
            case "INPUT:checkbox":
                await field.CheckAsync();
                break;
            case "INPUT:file":
                await field.SetInputFilesAsync(new FilePayload { Name = "paper.txt", MimeType = "text/plain", Buffer = [65] });
                break;
            default:
                await field.FillAsync(text);
                break;
        }
    }

    // Waits until the field has the focus and is the one that is wrong, and says what is not so after a while.
    private static async Task<string?> FaultAsync(IPage page, string field)
    {
        const string Seen = """
            field => {
              const wrong = [...document.querySelectorAll('main [aria-invalid=true]')].map(e => e.id);
              if (wrong.join() !== field) return `wrong are [${wrong}] and not ${field}`;
              const e = document.getElementById(field);
              const told = (e.getAttribute('aria-describedby') ?? '').split(' ').map(id => document.getElementById(id))
                .filter(t => t?.matches('.wrong') && t.textContent.trim());
              if (told.length !== 1) return `${field} is described by ${told.length} words of what is wrong`;
              const others = [...document.querySelectorAll('main .notice.must[role=alert], main .wrong')].filter(t => t !== told[0] && t.offsetParent);
              if (others.length) return `it is told elsewhere too: ${others[0].textContent.trim()}`;
              if (document.activeElement !== e) return `the focus is at ${document.activeElement?.id || document.activeElement?.tagName}`;
              return '';
            }
            """;
        try
        {
            await page.WaitForFunctionAsync($"f => ({Seen})(f) === ''", field, new() { Timeout = 20_000 });
            return null;
        }
        catch (TimeoutException)
        {
            return await page.EvaluateAsync<string>(Seen, field);
        }
    }

    private static string Components([CallerFilePath] string here = "") =>
        Path.Combine(Path.GetDirectoryName(here)!, "../../../src/LabelForge.Web/Components");

    [GeneratedRegex("type=\"submit\"")]
    private static partial Regex Submits();
}
