using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>receive</c>: a material came in.</summary>
internal static class ReceiveVerb
{
    public static Command Build()
    {
        var verb = new Verb("receive", "Writes a material that came in into the books");
        var material = verb.Argument<string>("MATERIAL", "The material's id");
        var amount = verb.Argument<string>("AMOUNT", "How much, for example: \"5 lb\", \"16 fl oz\", \"100 pieces\"");
        var price = verb.Option<string>("--price", "What all of it cost", required: true);
        var supplier = verb.Option<string?>("--supplier", "Who sold it");
        var lot = verb.Option<string?>("--lot", "The supplier's lot, as on the bottle");
        var best = verb.Option<string?>("--best-before", "YYYY-MM-DD");
        var certificate = verb.Option<string?>("--certificate", "Where its certificate lies");
        var options = new BookOptions().AddAskingTo(verb);
        return verb.OpensBooks(r =>
        {
            var workshop = options.Workshop(r);
            var what = workshop.Material(r.GetValue(material)!, "the call", 0);
            var written = new Receipt
            {
                On = options.On(r),
                By = options.By(r),
                Note = options.Note(r),
                Material = what.Id,
                Amount = Shared.Need(MaterialAmount.Read(what, r.GetValue(amount)!, workshop.Dictionary)),
                Price = BookOptions.Money(r.GetValue(price)!, "--price"),
                Supplier = r.GetValue(supplier),
                SupplierLot = r.GetValue(lot),
                BestBefore = r.GetValue(best) is { } day ? Shared.Date(day) : null,
                Certificate = r.GetValue(certificate),
            };
            options.Ask(r, Slips.OfReceipt(written, what, BookOptions.Today));
            var receipt = StockMovements.Receive(BookOptions.Book(workshop), written);
            return options.Told(r, new JsonObject
            {
                ["materialLot"] = $"M{receipt.Id}",
                ["material"] = receipt.Material,
                ["amount"] = receipt.Amount,
                ["price"] = receipt.Price
            }, Invariant($"M{receipt.Id}: {receipt.Amount:0.###} {(what.Kind == Recipes.MaterialKind.Packaging ? "pieces or g" : "g")} of {what.Name}. Write M{receipt.Id} on the bottle."));
        });
    }
}
