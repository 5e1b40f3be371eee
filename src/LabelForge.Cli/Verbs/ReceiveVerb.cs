using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>receive</c>: a material came in.</summary>
internal static class ReceiveVerb
{
    public static Command Build()
    {
        var material = new Argument<string>("MATERIAL") { Description = "The material's id" };
        var amount = new Argument<string>("AMOUNT") { Description = "How much, for example: \"5 lb\", \"16 fl oz\", \"100 pieces\"" };
        var price = new Option<string>("--price") { Description = "What all of it cost", Required = true };
        var supplier = new Option<string?>("--supplier") { Description = "Who sold it" };
        var lot = new Option<string?>("--lot") { Description = "The supplier's lot, as on the bottle" };
        var best = new Option<string?>("--best-before") { Description = "YYYY-MM-DD" };
        var certificate = new Option<string?>("--certificate") { Description = "Where its certificate lies" };
        var options = new BookOptions();
        var verb = options.AddAskingTo(new Command("receive", "Writes a material that came in into the books")
        {
            material, amount, price, supplier, lot, best, certificate,
        });
        verb.OpensBooks(r =>
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
        return verb;
    }
}
