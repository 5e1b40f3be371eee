using LabelForge.Cli.Handover;
using LabelForge.Files;
using LabelForge.Print.Documents;
using LabelForge.ProductPapers;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Verbs;

/// <summary><c>papers</c>: what goes with a product besides its label, as a PDF and as data.</summary>
internal static class PapersVerb
{
    public static Command Build()
    {
        var verb = new Verb("papers",
            "Papers that go with a product: product file, data for notifications, sheets for shops, a lot's certificate, questions to "
                + "suppliers; each says what is missing");
        var kind = verb.Argument<string?>("PAPER",
            "product-file, notification, shop-sheet, line-sheet, lot-certificate or supplier-questions (default: lists those of "
                + "the market)", ArgumentArity.ZeroOrOne);
        var of = verb.Argument<string[]>("OF",
            "What it is of: a product, several, a lot, materials or a supplier (default: all that there are)", ArgumentArity.ZeroOrMore);
        var workshop = verb.Workshop();
        var market = verb.Market();
        var on = verb.On();
        var format = verb.Format();
        var output = OutputOption.Optional("The PDF to write", FileKind.Pdf).AddTo(verb);
        return verb.OpensBooksWhereKept(r => r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), r =>
        {
            var path = output.PathOrNone(r);
            var json = r.GetValue(format) == "json";
            var opened = Shared.OpenFolder(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            var where = Shared.MarketOf(r.GetValue(market), opened);
            var day = Shared.Date(r.GetValue(on));
            if (r.GetValue(kind) is not { } asked)
            {
                if (path is not null)
                    throw new InputException("call.which-paper",
                        ("list", string.Join(", ", MakePaper.Known(where).Select(d => d.Id))));
                return List(where, json);
            }
            var call = new PaperCall(asked, [.. r.GetValue(of) ?? []], day, where);
            var paper = BookOptions.AskIfAny(opened, books => MakePaper.Run(call, opened, books));
            if (path is not null)
                MakePaper.WritePdf(path, paper, day);
            if (json)
                Console.WriteLine(PaperData.Text(paper));
            else if (path is null)
                Write(paper);
            else
                Console.WriteLine($"{path}: {paper.Title}, {paper.Subtitle}.{(paper.Missing.Count() is > 0 and var missing ? Invariant($" {missing} {(missing == 1 ? "thing is" : "things are")} missing; the paper says which.") : "")}");
            return Exit.Done;
        });
    }

    private static int List(Market market, bool json)
    {
        var papers = MakePaper.Known(market);
        if (json)
            JsonOut.Write(new JsonObject
            {
                ["market"] = market.Id,
                ["papers"] = papers.ToJson(p => new JsonObject
                {
                    ["paper"] = p.Id,
                    ["title"] = p.Title,
                    ["source"] = p.Citation,
                    ["basis"] = BasisText.Of(p.Basis),
                    ["items"] = p.Items.ToJson(i => new JsonObject { ["id"] = i.Id, ["what"] = i.What, ["source"] = i.At })
                })
            });
        foreach (var paper in json ? [] : papers)
            Console.WriteLine($"  {paper.Id,-20} {paper.Title} [{paper.Citation}]");
        return Exit.Done;
    }

    private static void Write(Paper paper)
    {
        Console.WriteLine($"{paper.Title}: {paper.Subtitle}");
        Console.WriteLine($"[{paper.Source}]");
        foreach (var note in paper.Notes)
            Console.WriteLine(note);
        foreach (var section in paper.Sections)
        {
            Console.WriteLine();
            Console.WriteLine($"{section.Title}{(section.Source is { } source ? $" [{source}]" : "")}");
            foreach (var fact in section.Facts)
                Console.WriteLine(fact.IsQuestion
                    ? $"  {fact.What}: ____"
                    : fact.Missing is { } missing
                    ? $"  MISSING: {fact.What}. {missing}"
                    : $"  {fact.What}: {fact.Value!.Text}");
            if (section.Table is { } table)
            {
                Console.WriteLine($"  {string.Join(" | ", table.Columns.Select(c => c.Heading))}");
                foreach (var row in table.Rows)
                    Console.WriteLine($"  {string.Join(" | ", row.Select(v => v.Text))}");
            }
            foreach (var note in section.Notes)
                Console.WriteLine($"  {note}");
        }
    }
}
