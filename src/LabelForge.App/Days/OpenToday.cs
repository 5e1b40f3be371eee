using LabelForge.Records.Books;

namespace LabelForge.Days;

/// <summary>What is open on a day: labels to print, batches to close, dates that near, complaints, materials that run low.</summary>
/// <param name="On">The day.</param>
/// <param name="Open">What is open, the first thing to do first.</param>
/// <param name="Shelf">The products that were ever made and still have a recipe, by name.</param>
public sealed record OpenToday(DateOnly On, ImmutableArray<OpenThing> Open, ImmutableArray<ShelfProduct> Shelf)
{
    /// <summary>How many days before its date a bottle is told of: common practice.</summary>
    public const int DaysBeforeADate = 30;

    private const int DaysWithoutAPrinting = 14;

    /// <summary>Looks through the books.</summary>
    /// <param name="books">The books; null where there are none.</param>
    public static OpenToday Of(Workshop workshop, IBooks? books, DateOnly on)
    {
        if (books is null)
            return new OpenToday(on, [], []);
        var labels = books.LotsInHand(Since(books, on)).Select(l => (Lot: l, Waiting: WithoutLabels(l))).Where(w => w.Waiting > 0)
            .ToArray();
        var complaints = Complaints(books, workshop.Markets, on).ToArray();
        return new OpenToday(on,
        [
            .. complaints.Where(c => c.Serious).Select(c => c.Thing),
            .. labels.OrderBy(w => w.Lot.Batch.On).Select(w => Labels(w.Lot, w.Waiting)),
            .. books.OpenBatches().OrderBy(b => b.On).GroupBy(b => b.Pot ?? b.Lot)
                .Select(g => g.ToArray() is [var one] ? AtTheBench(books, one, on) : PotAtTheBench(books, [.. g], on)),
            .. complaints.Where(c => !c.Serious).Select(c => c.Thing),
            .. Dates(workshop, books, on).Concat(Opened(workshop, books, on)).OrderBy(d => d.By),
            .. Limits(workshop, books),
            .. Papers(books, on),
            .. Low(workshop, books, on),
        ], Shelved(workshop, books, labels));
    }

    /// <summary>The same with more that is open, last of all: questions, which take longer to find and may come later.</summary>
    public OpenToday And(IEnumerable<OpenThing> more) => this with { Open = [.. Open, .. more] };

    /// <summary>The name of a batch's product, as it is named where a recipe is asked for.</summary>
    public static string ProductOf(Batch batch) => ProductOf(batch.Recipe, batch.Variant);

    private static string ProductOf(string recipe, string? variant) => variant is null ? recipe : $"{recipe}/{variant}";

    /// <summary>How many labels a batch still needs, however old it is: of an open one for what
    /// is planned, of a closed one for what is in the house.</summary>
    public static int LabelsNeeded(IBooks books, Batch batch)
    {
        var closing = books.ClosingOf(batch);
        return WithoutLabels(new LotInHand(batch, closing is null, closing is null ? 0 : closing.Made - closing.Rejected,
            books.PiecesLeft(batch), books.PrintingsOf(batch.Lot).Sum(p => p.Labels - p.Spoiled)));
    }

    /// <summary>The batches that wait for labels on a day, and how many of each; with what they froze.</summary>
    public static IReadOnlyList<(Batch Batch, int Labels)> Waiting(IBooks books, DateOnly on) =>
        [.. books.LotsInHand(Since(books, on)).Select(l => (Lot: l, Labels: WithoutLabels(l))).Where(w => w.Labels > 0)
            .Select(w => (books.BatchOf(w.Lot.Batch.Lot), w.Labels))];

    // Lots of before labels were written down had labels all the same; of these only fresh ones are asked about.
    private static DateOnly Since(IBooks books, DateOnly on)
    {
        var fresh = on.AddDays(-DaysWithoutAPrinting);
        return books.FirstPrinting() is { } first && first < fresh ? first : fresh;
    }

    // What has left the house had its labels, or is past helping.
    private static int WithoutLabels(LotInHand lot) =>
        lot.Open ? Math.Max(0, lot.Batch.PiecesPlanned - lot.Printed) : Math.Clamp(lot.Good - lot.Printed, 0, lot.Left);

    private static OpenThing Labels(LotInHand lot, int waiting) => new(OpenKind.Labels,
        new(waiting == 1 ? "labels-one" : "labels-many", waiting, lot.Batch.Product),
        [new(lot.Open ? "lot-at-bench" : "lot", lot.Batch.Lot, lot.Batch.On.ToIso())])
    {
        Lot = lot.Batch.Lot,
        Product = ProductOf(lot.Batch),
        Count = waiting,
    };

    private static OpenThing AtTheBench(IBooks books, Batch batch, DateOnly on)
    {
        var lines = Production.Compare(books, batch);
        var weighed = lines.Count(l => l.Weighed > 0);
        return new OpenThing(OpenKind.Batch, new("weighed", batch.Product, weighed, lines.Count),
            [new("begun", batch.Lot, Since(batch.On, on)),
                weighed == lines.Count ? new("all-weighed") : new("next", lines.First(l => l.Weighed == 0).Line.Name)])
        {
            Lot = batch.Lot,
            Product = ProductOf(batch),
            Count = batch.PiecesPlanned,
        };
    }

    // Ten scents out of one pot are one thing to go on with.
    private static OpenThing PotAtTheBench(IBooks books, ImmutableArray<Batch> batches, DateOnly on)
    {
        var next = batches.SelectMany(b => Production.Compare(books, b)).FirstOrDefault(l => l.Weighed == 0).Line;
        return new OpenThing(OpenKind.Batch, new("pot", batches[0].Pot!, batches.Length),
            [new("pot-begun", Since(batches[0].On, on), string.Join(", ", batches.Select(b => b.Product))),
                next is null ? new("all-weighed") : new("next", next.Name)])
        {
            Pot = batches[0].Pot,
            Lots = [.. batches.Select(b => b.Lot)],
            Products = [.. batches.Select(ProductOf)],
            Count = batches.Sum(b => b.PiecesPlanned),
        };
    }

    // FD&C Act, section 605(a): the days run from the day the maker was told. What is not serious yet may turn out to be.
    private static IEnumerable<(bool Serious, OpenThing Thing)> Complaints(IBooks books, MarketBook markets, DateOnly on) =>
        books.ComplaintsSince(on.AddDays(-90))
            .Select(c => (Complaint: c, By: c.ReportBy ?? StockMovements.LastDayToReport(markets, c.On)))
            .Where(c => c.By >= on || c.Complaint.Serious)
            .Where(c => c.By >= on.AddDays(-30))
            .OrderBy(c => c.By)
            .Select(c =>
            {
                var lot = books.BatchNow(c.Complaint.BatchId) is { } id ? books.Find(BookLists.Batch, id) as Batch : null;
                Saying said = lot is null
                    ? new("told", Short(c.Complaint.What), c.Complaint.From)
                    : new("told-lot", Short(c.Complaint.What), c.Complaint.From, lot.Product, lot.Lot);
                var (title, details) = c.Complaint.Serious
                    ? (new Saying(c.By >= on ? "report" : "report-late", c.By.ToIso()), ImmutableArray.Create(said))
                    : (new Saying("complaint", c.Complaint.On.ToIso()), [said, new("if-serious", c.By.ToIso())]);
                return (c.Complaint.Serious,
                    new OpenThing(OpenKind.Complaint, title, details)
                    {
                        Lot = lot?.Lot,
                        Product = lot is null ? null : ProductOf(lot),
                        By = c.By,
                    });
            });

    private static IEnumerable<OpenThing> Dates(Workshop workshop, IBooks books, DateOnly on) => books.InStock()
        .Where(s => s.Receipt.BestBefore is { } best && best <= on.AddDays(DaysBeforeADate))
        .Select(s => (s.Receipt, Best: s.Receipt.BestBefore!.Value, s.Left))
        .OrderBy(r => r.Best)
        .Select(r => new OpenThing(OpenKind.Date,
            new(r.Best < on ? "past-date" : "use-by", NameOf(workshop, r.Receipt.Material), books.Bottle(r.Receipt.Id), r.Best.ToIso()),
            [new("left-of", Said(workshop, r.Receipt.Material, r.Left), Said(workshop, r.Receipt.Material, r.Receipt.Amount))])
        {
            Material = r.Receipt.Material,
            Bottle = books.Bottle(r.Receipt.Id),
            By = r.Best,
        });

    // A bottle keeps for so long once it was opened, whatever its date says.
    private static IEnumerable<OpenThing> Opened(Workshop workshop, IBooks books, DateOnly on)
    {
        foreach (var (receipt, left) in books.InStock())
        {
            if (workshop.Materials.GetValueOrDefault(receipt.Material)?.MonthsAfterOpening is not { } months
                || books.OpenedOn(receipt) is not { } opened)
                continue;
            var until = opened.AddMonths(months);
            if (until > on.AddDays(DaysBeforeADate) || receipt.BestBefore <= until)
                continue;
            yield return new OpenThing(OpenKind.Date,
                new(until < on ? "open-too-long" : "opened-use-by", NameOf(workshop, receipt.Material), books.Bottle(receipt.Id),
                    until.ToIso()),
                [new("opened", opened.ToIso(), months, Said(workshop, receipt.Material, left))])
            {
                Material = receipt.Material,
                Bottle = books.Bottle(receipt.Id),
                By = until,
            };
        }
    }

    private static IEnumerable<OpenThing> Limits(Workshop workshop, IBooks books) =>
        books.ProductsMade().Where(p => workshop.RecipeIds.Contains(p.Recipe))
            .SelectMany(p => workshop.ProductsOrNone(p.Recipe).Where(product => product.Recipe.VariantName == p.Variant))
            .SelectMany(product => books.LastBatch(product.Recipe.Id, product.Recipe.VariantName) is { } last
                ? ChangedLimits.OfCertificates(product, last)
                : [])
            .GroupBy(c => c.Told).Select(g => g.First())
            .Select(c => new OpenThing(OpenKind.Limit, new("limit-changed", NameOf(workshop, c.Material!)), [new("as-told", c.Told)])
            {
                Material = c.Material,
                Product = c.Product,
                Lot = c.Lot,
            });

    // A later paper of the same kind for the same thing takes the place of one that ends.
    private static IEnumerable<OpenThing> Papers(IBooks books, DateOnly on) =>
        books.Attachments().GroupBy(a => (a.About, a.Kind)).Select(g => g.MaxBy(a => a.Id)!)
            .Where(a => a.BestBefore <= on.AddDays(DaysBeforeADate)).OrderBy(a => a.BestBefore)
            .Select(a => new OpenThing(OpenKind.Paper,
                new(a.BestBefore < on ? "paper-ended" : "paper-ends", a.Kind, a.About, a.BestBefore!.Value.ToIso()),
                [a.Revision is { } revision ? new("paper-revision", a.FileName, revision) : new("as-told", a.FileName + ".")])
            {
                By = a.BestBefore,
            });

    // A material that is kept in stock and will not do for the next batch of something, as its recipe stands.
    private static IEnumerable<OpenThing> Low(Workshop workshop, IBooks books, DateOnly on)
    {
        var needs = new Dictionary<string, (decimal Grams, string For)>();
        foreach (var product in workshop.RecipeIds.SelectMany(id => workshop.ProductsOrNone(id)))
        {
            foreach (var line in product.Batch.Lines.GroupBy(l => l.Material.Id))
            {
                var grams = line.Sum(l => l.Mass.Grams);
                // The least that would be short first: what is enough for every product is enough.
                if (!needs.TryGetValue(line.Key, out var known) || grams > known.Grams)
                    needs[line.Key] = (grams, product.Recipe.Name);
            }
        }
        var stock = books.InStock().ToLookup(s => s.Receipt.Material);
        var reserved = Reserved.Of(books);
        foreach (var material in books.KeptMaterials())
        {
            if (!needs.TryGetValue(material, out var need))
                continue;
            var left = stock[material].Where(s => s.Receipt.BestBefore is not { } best || best >= on).Sum(s => s.Left);
            // Where all that is left is past its date, that is told of the bottle.
            if (left == 0 && stock[material].Any())
                continue;
            var promised = Math.Min(left, reserved.GetValueOrDefault(material));
            if (left - promised < need.Grams)
                yield return new OpenThing(OpenKind.Stock, new(left == 0 ? "used-up" : "runs-low", NameOf(workshop, material)),
                    [promised > 0
                        ? new("left-promised", Said(workshop, material, left), need.For, Said(workshop, material, need.Grams),
                            Said(workshop, material, promised))
                        : new("left-next", Said(workshop, material, left), need.For, Said(workshop, material, need.Grams))])
                {
                    Material = material,
                };
        }
    }

    private static ImmutableArray<ShelfProduct> Shelved(Workshop workshop, IBooks books,
        IReadOnlyList<(LotInHand Lot, int Waiting)> labels) =>
    [
        .. books.ProductsMade().Where(p => workshop.RecipeIds.Contains(p.Recipe))
            .Select(p => new ShelfProduct(ProductOf(p.Recipe, p.Variant), p.Product, p.Left,
                labels.Where(l => l.Lot.Batch.Recipe == p.Recipe && l.Lot.Batch.Variant == p.Variant).Sum(l => l.Waiting)))
            .OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase),
    ];

    private static string NameOf(Workshop workshop, string material) => workshop.Materials.GetValueOrDefault(material)?.Name ?? material;

    private static Saying Said(Workshop workshop, string material, decimal amount) =>
        workshop.Materials.GetValueOrDefault(material)?.Kind == MaterialKind.Packaging
            ? new("pieces", Invariant($"{amount:0.##}"))
            : new("grams", Invariant($"{amount:0.##}"));

    private static Saying Since(DateOnly day, DateOnly on) => (on.DayNumber - day.DayNumber) switch
    {
        0 => new("begun-today"),
        1 => new("begun-yesterday"),
        var days and > 1 => new("days-ago", days),
        _ => new("on-day", day.ToIso()),
    };

    private static string Short(string text) =>
        text.ReplaceLineEndings(" ") is { Length: > 60 } line ? line[..57].TrimEnd() + "…" : text.ReplaceLineEndings(" ");
}
