using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>stock</c>: the label stock known, by its geometry.</summary>
internal static class StockVerb
{
    public static Command Build()
    {
        var verb = new Verb("stock", "Lists the label stock known, by its geometry; your own goes in the workshop's folder stock");
        var show = verb.Option<string?>("--show", "Tell of one stock; with --out, draw it at actual size");
        var workshop = verb.Workshop();
        var format = verb.Format();
        var output = OutputOption.Optional("The drawing to write: .pdf, .svg or .png", OutputOption.Drawn).AddTo(verb);
        return verb.Runs(r =>
        {
            var shelf = StockShelf.Of(r.GetValue(workshop) ?? Directory.GetCurrentDirectory());
            var json = r.GetValue(format) == "json";
            if (r.GetValue(show) is { } id)
                Show(shelf, id, output.PathOrNone(r), json);
            else if (output.Written(r) is not null)
                throw new InputException("call.one-stock");
            else if (json)
                JsonOut.Write(shelf.All.ToJson(Told));
            else
                List(shelf);
            return Exit.Done;
        });
    }

    private static void List(StockShelf shelf)
    {
        foreach (var s in shelf.All.OrderBy(s => s.Kind).ThenBy(s => s.PageHeight)
            .ThenByDescending(s => s.LabelWidth.Millimetres * s.LabelHeight.Millimetres))
            Console.WriteLine($"  {s.Id,-30}{(s.Kind == StockKind.Roll ? "  a roll" : $"{s.PerSheet,4} to a sheet"),-14}  {s.Name}{(shelf.IsOwn(s.Id) ? "  (your own)" : "")}");
    }

    private static void Show(StockShelf shelf, string id, string? path, bool json)
    {
        var stock = shelf.Load(id);
        if (path is not null)
            PictureFile.Write(path, StockDrawing.Of(stock), new DocumentInfo($"Label stock {stock.Id}", DateTimeOffset.UnixEpoch));
        if (json)
        {
            JsonOut.Write(Told(stock));
            return;
        }
        Console.WriteLine(stock.Name);
        Console.WriteLine($"  labels    {stock.LabelWidth} wide, {stock.LabelHeight} high");
        if (stock.Kind == StockKind.Roll)
        {
            Console.WriteLine($"  roll      {stock.Gap} between labels");
        }
        else
        {
            Console.WriteLine($"  sheet     {stock.PageWidth} by {stock.PageHeight}; {stock.Columns} across, {stock.Rows} down");
            Console.WriteLine($"  first     {stock.Left} from the left, {stock.Top} from the top");
            Console.WriteLine($"  apart     {stock.PitchX} across, {stock.PitchY} down, from edge to the same edge");
        }
        Console.WriteLine($"  figures   {BasisInWords(stock.Basis)}: {stock.Source}");
    }

    private static string BasisInWords(StockBasis basis) => basis switch
    {
        StockBasis.CommonPractice => "common practice",
        StockBasis.FromMemory => "from memory",
        StockBasis.Measured => "measured",
        _ => "stated geometry",
    };

    private static JsonObject Told(LabelStock s) => new JsonObject
    {
        ["id"] = s.Id,
        ["name"] = s.Name,
        ["kind"] = s.Kind == StockKind.Roll ? "roll" : "sheet",
        ["labels"] = s.PerSheet,
        ["widthMm"] = s.LabelWidth.Millimetres,
        ["heightMm"] = s.LabelHeight.Millimetres,
        ["round"] = s.Shape == StockShape.Round,
        ["basis"] = BasisInWords(s.Basis),
        ["source"] = s.Source,
    };
}
