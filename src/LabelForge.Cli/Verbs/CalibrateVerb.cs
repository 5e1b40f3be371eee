using System.CommandLine;
using System.Globalization;
using LabelForge.Files;
using LabelForge.Measures;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>calibrate</c>: a test page for a printer, and what it showed, remembered.</summary>
internal static class CalibrateVerb
{
    public static Command Build()
    {
        var printers = new PrinterInputs();
        var workshop = Shared.Workshop();
        var stock = new Option<string?>("--stock") { Description = "The label stock whose outlines the page shows (see: labelforge stock)" };
        var ruler = new Option<string?>("--ruler") { Description = "How long the page's rulers came out, across and down, in millimetres: 169.4,220.1" };
        var output = OutputOption.Optional("The test page to write, a PDF", FileKind.Pdf);
        var verb = new Command("calibrate", "A test page for a printer; and the nudge and stretch it asks for, remembered in the workshop") { stock, ruler, workshop };
        output.AddTo(verb);
        printers.AddTo(verb);
        verb.SetAction(r => Exit.Run(() =>
        {
            var path = output.PathOrNone(r);
            var folder = r.GetValue(workshop) ?? Directory.GetCurrentDirectory();
            var named = r.GetValue(stock) is { } id ? StockShelf.Of(folder).Load(id) : null;
            if (named is null && (path is not null || r.GetValue(ruler) is not null))
                throw new InputException(new Problem(null, 0, "No label stock is named.", "Name it with --stock (see: labelforge stock)."));
            var stretch = r.GetValue(ruler) is { } measured ? Stretch(named!, printers.Remembered(r, folder), measured) : ((decimal X, decimal Y)?)null;
            var (printer, changed) = printers.Resolve(r, folder, stretch);
            if (path is null && !changed)
                throw new InputException(new Problem(null, 0, "There is nothing to do.", "Write a test page with --stock ID --out page.pdf, or remember what it showed with --printer ID and --nudge, --stretch or --ruler."));
            if (path is not null)
                CalibrationPage.WritePdf(path, named!, printer);
            PrinterInputs.Remember(folder, printer, changed);
            return Exit.Done;
        }));
        return verb;
    }

    private static (decimal X, decimal Y) Stretch(LabelStock stock, Registration used, string measured)
    {
        var parts = measured.Split(',').Select(p => decimal.TryParse(p.Trim(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var v) ? v : 0m).ToArray();
        return parts is [> 0m, > 0m]
            ? Shared.Need(CalibrationPage.StretchFor(stock, used, parts[0], parts[1]))
            : throw new InputException(new Problem(null, 0, $"\"{measured}\" is not two lengths with a comma between them.", "Write how long the rulers came out, across and down, in millimetres: --ruler 169.4,220.1"));
    }
}
