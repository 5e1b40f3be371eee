using LabelForge.Checks;
using LabelForge.Lots;
using LabelForge.Papers;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Records.Books;
using LabelForge.UseCases;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace LabelForge.Web.Components.Pages;

/// <summary>One batch at the bench: what is weighed into it, what came out, what goes back.</summary>
public partial class BatchPage
{
    private int? _at;
    private string _weighed = "";
    private string _from = "";
    private string _note = "";
    private string _made = "";
    private string _rejected = "0";
    private string _yield = "";
    private ImmutableArray<Finding> _broken = [];

    /// <summary>The lot.</summary>
    [Parameter]
    public string Lot { get; set; } = "";

    private string WeighForm => $"weigh {Lot}";

    private string NoteForm => $"note {Lot}";

    private string CloseForm => $"close {Lot}";

    // It was begun on another page, and can be undone here for a minute.
    private string? JustBegun =>
        BooksCache.Last is { List: BookLists.Batch, CanBeUndone: true } last && Batch is { } batch && last.Entries.Contains(batch.Id)
            ? last.What
            : null;

    // The batch, what was weighed into it and out of which bottles, and out of which the rest may come.
    private sealed record Bench(Batch Batch, IReadOnlyList<(FrozenLine Line, decimal Weighed, bool Off)> Lines, Closing? Closing, int Left,
        Deviation[] Deviations, ILookup<string, string> From, IReadOnlyDictionary<string, ((string, string)[] Lots, string Proposed)> Use)
    {
        public static Bench? Of(IBooks books, string lot, DateOnly on, Say say)
        {
            if (books.FindBatch(lot) is not { } batch)
                return null;
            var (lines, closing) = (Production.Compare(books, batch), books.ClosingOf(batch));
            return new Bench(batch, lines, closing, books.PiecesLeft(batch), [.. books.DeviationsOf(batch)],
                books.WeighedInto(batch).Where(w => w.ReceiptId is not null)
                    .Select(w => (w.Material, Bottle: books.Bottle(w.ReceiptId!.Value))).Distinct()
                    .ToLookup(w => w.Material, w => w.Bottle),
                closing is not null ? ImmutableDictionary<string, ((string, string)[], string)>.Empty
                    : lines.Select(l => l.Line).DistinctBy(l => l.Material)
                        .ToImmutableDictionary(l => l.Material, l => (LotsOf(books, l.Material, say), Proposed(books, l, on, say))));
        }

        private static (string, string)[] LotsOf(IBooks books, string material, Say say) =>
            [.. books.InStock(material).Select(r => ($"{r.Receipt.Id}",
                r.Receipt.BestBefore is { } best
                    ? say["batch-page.bottle-best", Bottle(r.Receipt), Words.Grams(r.Left), $"{best:yyyy-MM-dd}"]
                    : say["batch-page.bottle", Bottle(r.Receipt), Words.Grams(r.Left)]))];

        private static string Bottle(Receipt receipt) => $"M{receipt.Id}{(receipt.SupplierLot is { } own ? $" ({own})" : "")}";

        private static string Proposed(IBooks books, FrozenLine line, DateOnly on, Say say) =>
            Production.Propose(books, [(line.Material, line.Grams)], on)[0] is { Take.Count: > 0 } proposal
                ? say["batch-page.first-to-expire", string.Join(", ", proposal.Take.Select(t => $"M{t.From.Id}"))]
                : say["batch-page.not-in-stock"];
    }

    private WhileSame<(string Lot, int Version, DateOnly On), Bench?>? _bench;

    private Bench? Seen =>
        (_bench ??= new(at => Asked<Bench?>(books => Bench.Of(books, at.Lot, at.On, Say), null)))
            .Of((Lot, BooksCache.Version, Options.Today()));

    private Batch? Batch => Seen?.Batch;

    private ImmutableArray<string> Cautions
    {
        get
        {
            try
            {
                return Workshop is { } workshop && Batch is { } batch && workshop.RecipeIds.Contains(batch.Recipe)
                    ? BenchCautions.Of(workshop, BatchFormula.Of(workshop, workshop.Recipe(batch.Recipe)), PaperWords.In(Say.Language))
                    : [];
            }
            catch (InputException)
            {
                // The recipe was changed since and cannot be read: what is frozen goes on.
                return [];
            }
        }
    }

    private static int NextOpen(IReadOnlyList<(FrozenLine Line, decimal Weighed, bool Off)> lines) =>
        Enumerable.Range(0, lines.Count).FirstOrDefault(i => lines[i].Weighed == 0, lines.Count - 1);

    private void Go(int at) => (_at, _weighed, _from, Done, Refused) = (at, "", "", null, null);

    // The label on a bottle is scanned: it is taken from, and its material's line is the one at hand.
    private Task Scanned(string code) => Try(() =>
    {
        if (LabelForge.Tags.BottleTags.NumberOf(code) is not { } number)
        {
            Here.NavigateTo(LabelForge.Lots.PieceCode.LotOf(code) is { IsValue: true } lot
                ? $"/trace/{lot.Value}"
                : $"/find?q={Uri.EscapeDataString(code)}");
            return Task.FromResult("");
        }
        var (receipt, lines) = (Known(books => books.ReceiptOf(number)), Seen!.Lines);
        var at = lines.ToList().FindIndex(l => l.Line.Material == receipt.Material);
        if (at < 0)
            throw new InputException("batch.bottle-of-another", ("bottle", $"M{number}"), ("material", receipt.Material),
                ("lot", Lot));
        (_at, _from) = (at, $"{receipt.Id}");
        return Task.FromResult(Say["batch-page.scanned", $"M{number}", lines[at].Line.Name]);
    });

    private async Task Weigh()
    {
        if (ScannedIntoField.Read(_weighed) is { } scan)
        {
            _weighed = scan.Before;
            Keys.Renew(WeighForm);
            await Scanned($"M{scan.Bottle}");
            return;
        }
        var lines = Seen!.Lines;
        var at = Math.Clamp(_at ?? NextOpen(lines), 0, lines.Count - 1);
        var line = lines[at].Line;
        var written = await Write(WeighForm, async form =>
        {
            var material = Workshop?.Materials.GetValueOrDefault(line.Material)
                ?? throw new InputException("form.product-gone", ("material", line.Material));
            // A bare figure is what the scale shows: grams.
            var grams = Entry.At("weighed", () => Entry.Needed(_weighed, "form.no-weighed") is var text
                && decimal.TryParse(Loose.Money(text), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var bare)
                    ? bare
                    : MaterialAmount.Read(material, Loose.Amount(text), Workshop.Dictionary).OrRefuse());
            int? from = _from.Length == 0 ? null : Entry.Count(_from, Say["entry.lot"]);
            form.Ask(Known(books => Slips.OfWeighing(books, Lot, line.Material, grams, from, Options.Today(), Options.Today())));
            await Entry.At(() => form.Several(BookLists.Weighing,
                book => Production.Weigh(book, Lot, line.Material, grams, from, Options.Today(), By)), ("stock.", "weighed"));
            // Before it is said to be written: what is typed after that is the next weight.
            (_weighed, _from, _at) = ("", "", null);
            return Say["batch-page.written", Words.Grams(grams), line.Name];
        }, Weigh);
        if (!written)
            return;
        await Judge();
        await Script.InvokeVoidAsync("labelforge.goOn", "weighed");
    }

    private async Task Note()
    {
        if (await Write(NoteForm, async form =>
        {
            var what = Entry.At("note", () => Entry.Needed(_note, "form.no-note"));
            await form.One(BookLists.Deviation, book => Production.Note(book, Lot, what, Options.Today(), By));
            return Say["batch-page.noted"];
        }))
            _note = "";
    }

    // What the books hold now, held against the rules.
    private async Task Judge()
    {
        if (Workshop is { } workshop && Batch is { } batch)
            _broken =
                await Task.Run(
                    () => Known(books => LotFindings.BrokenAtTheBench(workshop, books, batch, workshop.Market, Options.Today())));
    }

    private async Task Close()
    {
        if (await Write(CloseForm, Finish))
            await Judge();
    }

    private async Task<string> Finish(FormWriter form)
    {
        // Nothing written is not none: a lot that was closed without pieces has none to sell.
        var made = Entry.At("made", () => _made.Trim() == "0" ? 0 : Entry.Count(_made, Say["entry.pieces-out"]));
        var rejected = Entry.At("rejected", () => Entry.CountOrNone(_rejected, Say["entry.pieces-not"]));
        decimal? grams = _yield.Trim().Length == 0 ? null : Entry.At("yield", () => Entry.Mass(_yield).Grams);
        form.Ask(Known(books => Slips.OfClosing(books, Lot, made, Options.Today(), Options.Today())));
        await form.One(BookLists.Closing, book => Production.Close(book, Lot, made, rejected, grams, Options.Today(), By));
        return Say["batch-page.finished"];
    }

    // The sheet is of the recipe as it was when the batch was begun, as far as the workshop still has it.
    private Task Paper() => Try(async () =>
    {
        var (workshop, batch, on, words) = (Workshop!, Batch!, Options.Today(), PaperWords.In(Say.Language));
        var lot = LotCode.Parse(Lot).OrRefuse();
        var frozen = FrozenRecipe.FromJson(batch.Frozen);
        var bytes = await Task.Run(() =>
        {
            var recipe = workshop.Recipe(batch.Recipe) is var plain && frozen.Variant is { } variant ? plain.Variant(variant) : plain;
            var job = LabelJob.Prepare(Product.Planned(workshop,
                BatchSize.ToMass(workshop, recipe, Mass.FromGrams(frozen.TotalGrams)).Recipe with { Pieces = batch.PiecesPlanned }),
                workshop.Markets.Find(frozen.Market).OrRefuse(), null, lot, on);
            return Temporary.Written(".pdf",
                path => BatchSheetJob.Write(path, job, lot,
                    new DocumentInfo(words["batch-title", batch.Product, Lot],
                        new DateTimeOffset(on.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero)),
                    Known(books => ProposedLots.For(books, job.Batch, on)), words));
        });
        await Script.InvokeVoidAsync("labelforge.open", TemporaryDownloads.Put(bytes, "application/pdf", $"bench-{Lot}.pdf"));
        return Say["batch-page.paper-open"];
    });
}
