using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Tags;

namespace LabelForge.Cli.Verbs;

/// <summary><c>tags</c>: labels for bottles and bins in the workshop, with a code to scan.</summary>
internal static class TagsVerb
{
    public static Command Build()
    {
        var verb = new Verb("tags", "Labels for bottles and bins: number, name, received, best before, and a code to scan");
        var of = verb.Argument<string[]>("BOTTLE",
            "Bottles (M3), or materials for a label on their bin (default: every bottle in the house)", ArgumentArity.ZeroOrMore);
        var size = verb.Option<string>("--size", string.Join(", ", BottleTags.Designs), BottleTags.Designs[0]);
        size.AcceptOnlyFromAmong([.. BottleTags.Designs]);
        var stock = verb.Option<string?>("--stock", "The label stock (default: what is at hand, else what fits)");
        var first = verb.Option<int>("--first", "The first free position of a part-used sheet, counted from 1", 1);
        var output = new OutputOption("The PDF to write", FileKind.Pdf).AddTo(verb);
        var options = new BookOptions().AddReadingTo(verb, dated: false);
        return verb.OpensBooks(r =>
        {
            var path = output.Path(r);
            var workshop = options.Workshop(r);
            var tags = BookOptions.Book(workshop)
                .Ask(books => BottleTags.Of(workshop, books, r.GetValue(of) ?? [], r.GetValue(size)!, BookOptions.Today));
            var order = BottleTags.Order(workshop, tags, r.GetValue(stock), r.GetValue(first));
            BottleTags.WritePdf(path, workshop, order, BookOptions.Today);
            return options.Told(r, new JsonObject
            {
                ["file"] = path,
                ["stock"] = order.Stock.Id,
                ["sheets"] = order.Plan().Sheets,
                ["tags"] = tags.ToJson(t => t.Code),
            }, $"{path}: {tags.Length} on {order.Plan().Sheets} {(order.Plan().Sheets == 1 ? "sheet" : "sheets")} of {order.Stock.Id}. Print at actual size.");
        });
    }
}
