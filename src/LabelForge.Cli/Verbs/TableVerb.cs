using System.Collections.Immutable;
using System.CommandLine;
using System.Globalization;
using LabelForge.Files;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;
using LabelForge.Recipes;
using LabelForge.Selling;

namespace LabelForge.Cli.Verbs;

/// <summary><c>table</c>: tags, signs and cards for the table.</summary>
internal static class TableVerb
{
    public static Command Build()
    {
        var card = new Argument<string>("CARD") { Description = string.Join(", ", CardDesign.Known) };
        card.AcceptOnlyFromAmong([.. CardDesign.Known]);
        var products = new Argument<string[]>("PRODUCT=COUNT") { Description = "The products, and how many cards of each: bramble-bar \"meadow-bar/Moss Lane=2\"; of a gift set, how many are in it (default: every product, one card each)", Arity = ArgumentArity.ZeroOrMore };
        var words = new Option<string?>("--words") { Description = "Your own words, where the card has a place for them; of a gift set, what it is" };
        var name = new Option<string?>("--name") { Description = "The name of the gift set" };
        var count = new Option<int>("--count") { Description = "How many labels of the gift set", DefaultValueFactory = _ => 1 };
        var stock = new Option<string?>("--stock") { Description = "The label or card stock (default: what is at hand, else what fits)" };
        var first = new Option<int>("--first") { Description = "The first free position of a part-used sheet, counted from 1", DefaultValueFactory = _ => 1 };
        var (workshop, market, on) = (Shared.Workshop(), Shared.Market(), Shared.On());
        var output = new OutputOption("The PDF to write", FileKind.Pdf);
        var verb = output.AddTo(new Command("table", "Price tags, shelf signs, ingredient cards, tester signs, care cards and gift-set labels, fitted as labels are") { card, products, words, name, count, stock, first, workshop, market, on });
        verb.SetAction(r => Exit.Run(() =>
        {
            var path = output.Path(r);
            var opened = Shared.OpenFolder(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            var day = Shared.Date(r.GetValue(on));
            var cards = new TableCards(opened, Shared.Need(MarketText.Parse(r.GetValue(market) ?? opened.Business.Market)), day);
            var asked = r.GetValue(products) is { Length: > 0 } named ? named : [.. opened.RecipeIds];
            ImmutableArray<(Product Product, int Count)> wanted = [.. asked.SelectMany(t => Split(opened, t) is var (what, n) ? opened.ProductsOf(what).Select(p => (p, n)) : [])];
            var id = r.GetValue(card)!;
            (TableCard Card, int Count)[] made = id == "gift-set"
                ? [(cards.GiftSet(r.GetValue(name) ?? throw new InputException(null, 0, "call.set-no-name"), [.. wanted.SelectMany(w => Enumerable.Repeat(w.Product, w.Count))], r.GetValue(words)), r.GetValue(count))]
                : [.. wanted.Select(w => (cards.Of(id, w.Product, r.GetValue(words)), w.Count))];
            var sheet = cards.StockFor(made[0].Card.Layout.Design, r.GetValue(stock));
            var order = new SheetOrder { Stock = sheet, Runs = [.. made.Select(m => new LabelRun(m.Card.Layout, m.Count))], First = r.GetValue(first) };
            SheetWriter.WritePdf(path, order, new DocumentInfo($"{id}, {opened.Business.Name}", new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero)));
            foreach (var missing in made.SelectMany(m => m.Card.LeftOut.Select(l => $"{m.Card.Product}: {l}")))
                Console.Error.WriteLine($"Note: {missing}");
            if (id == "gift-set")
                Console.Error.WriteLine("Note: a set is a package of its own: check what your law asks of packages of several products, and keep the lots of what is in it.");
            Console.WriteLine($"{path}: {order.Count} on {order.Plan().Sheets} {(order.Plan().Sheets == 1 ? "sheet" : "sheets")} of {sheet.Id}. Print at actual size.");
            return Exit.Done;
        }));
        return verb;
    }

    private static (string Product, int Count) Split(Workshop workshop, string text)
    {
        var at = text.LastIndexOf('=');
        if (at < 0)
            return (text, 1);
        return int.TryParse(text[(at + 1)..].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= 10_000
            ? (text[..at].Trim(), count)
            : throw new InputException(null, 0, "call.how-many-of-what", ("text", text), ("first-or-default", workshop.RecipeIds.FirstOrDefault() ?? "bramble-bar"));
    }
}
