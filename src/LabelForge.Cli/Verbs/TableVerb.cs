using LabelForge.Files;
using LabelForge.Lots;
using LabelForge.Print.Designs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using LabelForge.Selling;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>table</c>: tags, signs and cards for the table.</summary>
internal static class TableVerb
{
    public static Command Build()
    {
        var verb = new Verb("table",
            "Price tags, shelf signs, ingredient cards, tester signs, care cards and gift-set labels, fitted as labels are");
        var card = verb.Argument<string>("CARD", string.Join(", ", CardDesign.Known));
        card.AcceptOnlyFromAmong([.. CardDesign.Known]);
        var products = verb.Argument<string[]>("PRODUCT=COUNT",
            "The products, and how many cards of each: bramble-bar \"meadow-bar/Moss Lane=2\"; of a gift set, how many are in it, or "
                + "the set's id in sets/ (default: every product, one card each)", ArgumentArity.ZeroOrMore);
        var words = verb.Option<string?>("--words", "Your own words, where the card has a place for them; of a gift set, what it is");
        var name = verb.Option<string?>("--name", "The name of the gift set");
        var count = verb.Option<int>("--count", "How many labels of the gift set", 1);
        var lot = verb.Option<string?>("--lot", "The gift set's own lot, where its package has one");
        var despite = verb.Option<string[]>("--despite",
            "Print the gift set although this rule is broken, as the findings name it; once for each rule");
        var stock = verb.Option<string?>("--stock", "The label or card stock (default: what is at hand, else what fits)");
        var first = verb.Option<int>("--first", "The first free position of a part-used sheet, counted from 1", 1);
        var workshop = verb.Workshop();
        var market = verb.Market();
        var on = verb.On();
        var format = verb.Format();
        var output = new OutputOption("The PDF to write", FileKind.Pdf).AddTo(verb);
        return verb.Runs(r =>
        {
            var path = output.Path(r);
            var opened = Shared.OpenFolder(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            var day = Shared.Date(r.GetValue(on));
            var cards = new TableCards(opened, Shared.MarketOf(r.GetValue(market), opened), day);
            var asked = r.GetValue(products) is { Length: > 0 } named ? named : [.. opened.RecipeIds];
            var id = r.GetValue(card)!;
            var set = id == "gift-set"
                ? cards.GiftSet(SetOf(opened, asked, r.GetValue(name), r.GetValue(words)),
                    r.GetValue(lot) is { } code ? Shared.Need(LotCode.Parse(code)) : null)
                : null;
            (TableCard Card, int Count)[] made = set is not null
                ? [(new TableCard(set.Content.ProductName, set.Fit.OrRefuse()), r.GetValue(count))]
                : [.. Products(opened, asked).Select(w => (cards.Of(id, w.Product, r.GetValue(words)), w.Count))];
            var sheet = cards.StockFor(made[0].Card.Layout.Design, r.GetValue(stock));
            if (set is not null)
                PrintInputs.StopWhereBroken(new PrintOutcome { Open = PrintLabels.Open([set], r.GetValue(despite) ?? []) },
                    weighed: false);
            var order = new SheetOrder
            {
                Stock = sheet,
                Runs = [.. made.Select(m => new LabelRun(m.Card.Layout, m.Count))],
                First = r.GetValue(first),
                Note = set is null ? null : PrintLabels.Note([set], [.. r.GetValue(despite) ?? []]),
            };
            SheetWriter.WritePdf(path, order, new DocumentInfo($"{id}, {opened.Business.Name}", day));
            foreach (var missing in made.SelectMany(m => m.Card.LeftOut.Select(l => $"{m.Card.Product}: {l}")))
                Console.Error.WriteLine($"Note: {missing}");
            if (set is not null)
                Console.Error.WriteLine("Note: a set is a package of its own, judged product by product and as a whole; keep the lots of what is in it.");
            Shared.Say(r, format, () => Data(path, id, order, made.SelectMany(m => m.Card.LeftOut)),
                $"{path}: {order.Count} on {order.Plan().Sheets} {(order.Plan().Sheets == 1 ? "sheet" : "sheets")} of {sheet.Id}. Print at actual size.");
            return Exit.Done;
        });
    }

    private static JsonObject Data(string path, string card, SheetOrder order, IEnumerable<string> leftOut) => new()
    {
        ["file"] = path,
        ["card"] = card,
        ["stock"] = order.Stock.Id,
        ["cards"] = order.Count,
        ["sheets"] = order.Plan().Sheets,
        ["leftOut"] = leftOut.ToJson(),
    };

    // A set that the workshop has a file of, or one put together here.
    private static GiftSet SetOf(Workshop workshop, string[] asked, string? name, string? words)
    {
        if (asked is [var only] && GiftSet.Named(workshop, only) is { } known)
            return known with { Identity = words ?? known.Identity, Name = name ?? known.Name };
        return new GiftSet(name ?? throw new InputException("call.set-no-name"), name,
            [.. Products(workshop, asked).Select(w => new SetItem(w.Product.Name, w.Count, 0))])
        { Identity = words };
    }

    private static ImmutableArray<(Product Product, int Count)> Products(Workshop workshop, string[] asked) =>
        [.. asked.Select(t => Split(workshop, t)).SelectMany(t => workshop.ProductsOf(t.Product).Select(p => (p, t.Count)))];

    private static (string Product, int Count) Split(Workshop workshop, string text)
    {
        var at = text.LastIndexOf('=');
        if (at < 0)
            return (text, 1);
        return PlainFigure.Whole(text[(at + 1)..].Trim()) is > 0 and <= 10_000 and var count
            ? (text[..at].Trim(), count)
            : throw new InputException("call.how-many-of-what", ("text", text),
                ("first-or-default", workshop.RecipeIds.FirstOrDefault() ?? "bramble-bar"));
    }
}
