using System.CommandLine;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>stock</c>: the label stock known, by its geometry.</summary>
internal static class StockVerb
{
    public static Command Build()
    {
        var format = Shared.Format();
        var verb = new Command("stock", "Lists the label stock known, by its geometry") { format };
        verb.SetAction(r => Exit.Run(() =>
        {
            if (r.GetValue(format) == "json")
            {
                JsonOut.Write(LabelStock.All.Select(s => new
                {
                    id = s.Id,
                    name = s.Name,
                    labels = s.PerSheet,
                    widthMm = s.LabelWidth.Millimetres,
                    heightMm = s.LabelHeight.Millimetres,
                }));
                return Exit.Done;
            }
            foreach (var s in LabelStock.All)
                Console.WriteLine($"  {s.Id,-28}{s.PerSheet,4} to a sheet   {s.Name}");
            return Exit.Done;
        }));
        return verb;
    }
}
