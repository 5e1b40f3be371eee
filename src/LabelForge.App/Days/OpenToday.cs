using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Measures;
using LabelForge.Recipes;
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

    // Lots of before labels were written down had labels all the same; of these only fresh ones are asked about.
    private const int DaysWithoutAPrinting = 14;

    /// <summary>Looks through the books.</summary>
    /// <param name="workshop">The workshop.</param>
    /// <param name="ledger">The books; null where there are none.</param>
    /// <param name="on">The day.</param>
    public static OpenToday Of(Workshop workshop, Ledger? ledger, DateOnly on)
    {
        if (ledger is null)
            return new OpenToday(on, [], []);
        var labels = ledger.Batches.Select(b => (Batch: b, Waiting: LabelsWaiting(ledger, b, on))).Where(w => w.Waiting > 0).ToArray();
        return new OpenToday(on,
        [
            .. Complaints(ledger, on).Where(c => c.Serious).Select(c => c.Thing),
            .. labels.OrderBy(w => w.Batch.On).Select(w => Labels(ledger, w.Batch, w.Waiting)),
            .. ledger.Batches.Where(b => ledger.ClosingOf(b) is null).OrderBy(b => b.On).Select(b => AtTheBench(ledger, b, on)),
            .. Complaints(ledger, on).Where(c => !c.Serious).Select(c => c.Thing),
            .. Dates(workshop, ledger, on),
            .. Low(workshop, ledger, on),
        ], Shelved(workshop, ledger, labels));
    }

    /// <summary>The name of a batch's product, as it is named where a recipe is asked for.</summary>
    public static string ProductOf(Batch batch) => FrozenRecipe.FromJson(batch.Frozen).Variant is { } variant ? $"{batch.Recipe}/{variant}" : batch.Recipe;

    /// <summary>How many labels a batch still needs, however old it is: of an open one for what is planned, of a closed one for what is in the house.</summary>
    public static int LabelsNeeded(Ledger ledger, Batch batch)
    {
        var printed = ledger.Printings.Where(p => p.Lot == batch.Lot).Sum(p => p.Labels - p.Spoiled);
        var closing = ledger.ClosingOf(batch);
        // What has left the house had its labels, or is past helping.
        return closing is null ? Math.Max(0, batch.PiecesPlanned - printed) : Math.Clamp(closing.Made - closing.Rejected - printed, 0, Math.Max(0, ledger.PiecesLeft(batch)));
    }

    /// <summary>How many labels of a batch wait to be printed on a day; none of a lot from before labels were written down, but for fresh ones.</summary>
    public static int LabelsWaiting(Ledger ledger, Batch batch, DateOnly on)
    {
        var since = ledger.AllPrintings.Count > 0 ? ledger.AllPrintings.Min(p => p.On) : DateOnly.MaxValue;
        if (batch.On < since && batch.On < on.AddDays(-DaysWithoutAPrinting))
            return 0;
        return LabelsNeeded(ledger, batch);
    }

    private static OpenThing Labels(Ledger ledger, Batch batch, int waiting) => new(OpenKind.Labels,
        Text($"{Pieces(waiting)} of {batch.Product} {(waiting == 1 ? "waits" : "wait")} for {(waiting == 1 ? "its label" : "their labels")}"),
        ledger.ClosingOf(batch) is null ? Text($"Lot {batch.Lot}, begun on {batch.On:yyyy-MM-dd} and still at the bench.") : Text($"Lot {batch.Lot}, begun on {batch.On:yyyy-MM-dd}."))
    {
        Lot = batch.Lot,
        Product = ProductOf(batch),
        Count = waiting,
    };

    private static OpenThing AtTheBench(Ledger ledger, Batch batch, DateOnly on)
    {
        var lines = Bench.Compare(ledger, batch);
        var weighed = lines.Count(l => l.Weighed > 0);
        return new OpenThing(OpenKind.Batch, Text($"{batch.Product}: {weighed} of {lines.Count} weighed"),
            weighed == lines.Count
                ? Text($"Lot {batch.Lot}, begun {Ago(batch.On, on)}. All is weighed in: write down what came out.")
                : Text($"Lot {batch.Lot}, begun {Ago(batch.On, on)}. Next: {lines.First(l => l.Weighed == 0).Line.Name}."))
        {
            Lot = batch.Lot,
            Product = ProductOf(batch),
            Count = batch.PiecesPlanned,
        };
    }

    // FD&C Act, section 605(a): the days run from the day the maker was told. What is not serious yet may turn out to be.
    private static IEnumerable<(bool Serious, OpenThing Thing)> Complaints(Ledger ledger, DateOnly on) => ledger.Complaints
        .Select(c => (Complaint: c, By: c.ReportBy ?? Shop.LastDayToReport(c.On)))
        .Where(c => c.By >= on || c.Complaint.Serious)
        .Where(c => c.By >= on.AddDays(-30))
        .OrderBy(c => c.By)
        .Select(c =>
        {
            var lot = ledger.BatchNow(c.Complaint.BatchId) is { } id ? ledger.Batches.First(b => b.Id == id) : null;
            var told = Text($"\"{Short(c.Complaint.What)}\", {c.Complaint.From}{(lot is null ? "" : $", {lot.Product}, lot {lot.Lot}")}.");
            return (c.Complaint.Serious, c.Complaint.Serious
                ? new OpenThing(OpenKind.Complaint, c.By >= on ? Text($"Report a serious complaint by {c.By:yyyy-MM-dd}") : Text($"A serious complaint was to be reported by {c.By:yyyy-MM-dd}"), told) { Lot = lot?.Lot, Product = lot is null ? null : ProductOf(lot), By = c.By }
                : new OpenThing(OpenKind.Complaint, Text($"A complaint of {c.Complaint.On:yyyy-MM-dd}"), Text($"{told} If it turns out to be serious, it is to be reported by {c.By:yyyy-MM-dd}.")) { Lot = lot?.Lot, Product = lot is null ? null : ProductOf(lot), By = c.By });
        });

    private static IEnumerable<OpenThing> Dates(Workshop workshop, Ledger ledger, DateOnly on) => ledger.Receipts
        .Where(r => r.BestBefore is { } best && best <= on.AddDays(DaysBeforeADate))
        .Select(r => (Receipt: r, Best: r.BestBefore!.Value, Left: ledger.Left(r))).Where(r => r.Left > 0)
        .OrderBy(r => r.Best)
        .Select(r => new OpenThing(OpenKind.Date,
            r.Best < on ? Text($"{NameOf(workshop, r.Receipt.Material)} {ledger.Bottle(r.Receipt.Id)}: past its date since {r.Best:yyyy-MM-dd}") : Text($"{NameOf(workshop, r.Receipt.Material)} {ledger.Bottle(r.Receipt.Id)}: use by {r.Best:yyyy-MM-dd}"),
            Text($"{Amount(workshop, r.Receipt.Material, r.Left)} left of {Amount(workshop, r.Receipt.Material, r.Receipt.Amount)}."))
        {
            Material = r.Receipt.Material,
            Bottle = ledger.Bottle(r.Receipt.Id),
            By = r.Best,
        });

    // A material that is kept in stock and will not do for the next batch of something, as its recipe stands.
    private static IEnumerable<OpenThing> Low(Workshop workshop, Ledger ledger, DateOnly on)
    {
        var needs = new Dictionary<string, (decimal Grams, string For)>();
        foreach (var product in workshop.RecipeIds.SelectMany(id => Products(workshop, id)))
        {
            foreach (var line in product.Batch.Lines.GroupBy(l => l.Material.Id))
            {
                var grams = line.Sum(l => l.Mass.Grams);
                // The least that would be short first: what is enough for every product is enough.
                if (!needs.TryGetValue(line.Key, out var known) || grams > known.Grams)
                    needs[line.Key] = (grams, product.Recipe.Name);
            }
        }
        foreach (var material in ledger.Receipts.Select(r => r.Material).Distinct().Order(StringComparer.Ordinal))
        {
            if (!needs.TryGetValue(material, out var need))
                continue;
            var left = ledger.InStock(material).Where(s => s.Receipt.BestBefore is not { } best || best >= on).Sum(s => s.Left);
            // Where all that is left is past its date, that is told of the bottle.
            if (left == 0 && ledger.InStock(material).Any())
                continue;
            if (left < need.Grams)
                yield return new OpenThing(OpenKind.Stock, left == 0 ? Text($"{NameOf(workshop, material)} is used up") : Text($"{NameOf(workshop, material)} runs low"),
                    Text($"{Amount(workshop, material, left)} left; the next batch of {need.For} takes {Amount(workshop, material, need.Grams)}."))
                { Material = material };
        }
    }

    private static ImmutableArray<ShelfProduct> Shelved(Workshop workshop, Ledger ledger, IReadOnlyList<(Batch Batch, int Waiting)> labels) =>
    [
        .. ledger.Batches.Where(b => workshop.RecipeIds.Contains(b.Recipe)).GroupBy(ProductOf)
            .Select(g => new ShelfProduct(g.Key, g.Last().Product, g.Sum(ledger.PiecesLeft), labels.Where(l => ProductOf(l.Batch) == g.Key).Sum(l => l.Waiting)))
            .OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase),
    ];

    private static ImmutableArray<Product> Products(Workshop workshop, string recipe)
    {
        try
        {
            return workshop.ProductsOf(recipe);
        }
        catch (InputException)
        {
            // A recipe that cannot be used yet needs nothing yet.
            return [];
        }
    }

    private static string NameOf(Workshop workshop, string material) => workshop.Materials.GetValueOrDefault(material)?.Name ?? material;

    private static string Amount(Workshop workshop, string material, decimal amount) =>
        workshop.Materials.GetValueOrDefault(material)?.Kind == MaterialKind.Packaging ? Text($"{amount:0.##} pieces") : Text($"{amount:0.##} g");

    private static string Pieces(int count) => count == 1 ? "1 piece" : Text($"{count} pieces");

    private static string Ago(DateOnly day, DateOnly on) => (on.DayNumber - day.DayNumber) switch
    {
        0 => "today",
        1 => "yesterday",
        var days and > 1 => Text($"{days} days ago"),
        _ => Text($"on {day:yyyy-MM-dd}"),
    };

    private static string Short(string text) => text.ReplaceLineEndings(" ") is { Length: > 60 } line ? line[..57].TrimEnd() + "…" : text.ReplaceLineEndings(" ");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
