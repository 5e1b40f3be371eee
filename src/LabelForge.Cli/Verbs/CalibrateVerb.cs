using LabelForge.Files;
using LabelForge.Print.Output;
using LabelForge.Print.Scans;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary><c>calibrate</c>: a test page for a printer, and what it showed, remembered.</summary>
internal static class CalibrateVerb
{
    public static Command Build()
    {
        var verb = new Verb("calibrate", "A test page for a printer; and the nudge and stretch it asks for, remembered in the workshop");
        var stock = verb.Option<string?>("--stock", "The label stock whose outlines the page shows (see: labelforge stock)");
        var ruler = verb.Option<string?>("--ruler", "How long the page's rulers came out, across and down, in millimetres: 169.4,220.1");
        var scan = verb.Option<string?>("--scan",
            "A scan or a photo of the printed test page, PNG or JPEG: nudge and stretch are read from it");
        var dots = verb.Option<double?>("--scan-dpi", "Dots to the inch of the scan, where its file does not say them");
        var workshop = verb.Workshop();
        var format = verb.Format();
        var output = OutputOption.Optional("The test page to write, a PDF", FileKind.Pdf).AddTo(verb);
        var printers = new PrinterInputs().AddTo(verb);
        return verb.Runs(r =>
        {
            var path = output.PathOrNone(r);
            var folder = r.GetValue(workshop) ?? Directory.GetCurrentDirectory();
            if (r.GetValue(scan) is { } picture)
                return ReadScan(r, printers, folder, picture, r.GetValue(dots), format);
            var named = r.GetValue(stock) is { } id ? StockShelf.Of(folder).Load(id) : null;
            if (named is null && (path is not null || r.GetValue(ruler) is not null))
                throw new InputException("call.no-label-stock-named");
            var stretch = r.GetValue(ruler) is { } measured
                ? Stretch(named!, printers.Remembered(r, folder), measured)
                : ((decimal X, decimal Y)?)null;
            var (printer, changed) = printers.Resolve(r, folder, stretch);
            if (path is null && !changed)
                throw new InputException("call.nothing-to-do");
            if (path is not null)
                CalibrationPage.WritePdf(path, named!, printer);
            PrinterInputs.Remember(folder, printer, changed);
            Shared.Say(r, format,
                () => new JsonObject
                {
                    ["file"] = path,
                    ["stock"] = named?.Id,
                    ["printer"] = changed ? printer.Id : null,
                    ["registration"] = Json(printer.Registration)
                });
            return Exit.Done;
        });
    }

    private static int ReadScan(ParseResult r, PrinterInputs printers, string folder, string picture, double? dots, Option<string> format)
    {
        var found = Shared.Need(CalibrationScan.Read(ScannedPicture.Read(picture, dots), id => StockShelf.Of(folder).Load(id)));
        var needed = found.Needed;
        Shared.Say(r, format,
            () => new JsonObject
            {
                ["stock"] = found.Stock.Id,
                ["used"] = Json(found.Used),
                ["needed"] = Json(needed),
                ["byEdges"] = found.ByEdges,
                ["turnDegrees"] = Math.Round(found.TurnDegrees, 3),
                ["offMm"] = Math.Round(found.OffMm, 3)
            },
            $"The page of {found.Stock.Id}, printed {found.Used}, needs to be {needed}.",
            found.ByEdges
            ? Invariant($"Measured by the sheet's own edges; the print stands turned by {found.TurnDegrees:0.00} degrees on it. The codes lie {found.OffMm:0.00} mm off the fit.")
            : Invariant($"The sheet's edges cannot be seen, so the nudge stays as it was; the stretch is measured by the scan's dots to the inch. The codes lie {found.OffMm:0.00} mm off the fit."));
        var (printer, changed) = printers.Found(r, folder, needed);
        PrinterInputs.Remember(folder, printer, changed);
        if (!changed)
            Console.Error.WriteLine("Note: nothing is remembered; name the printer with --printer.");
        return Exit.Done;
    }

    private static JsonObject Json(Registration of) =>
        new JsonObject
        {
            ["nudgeMm"] = new JsonObject { ["right"] = of.NudgeXMm, ["down"] = of.NudgeYMm },
            ["stretchPercent"] = new JsonObject { ["wider"] = of.StretchXPercent, ["higher"] = of.StretchYPercent }
        };

    private static (decimal X, decimal Y) Stretch(LabelStock stock, Registration used, string measured)
    {
        var parts = measured.Split(',')
            .Select(p => PlainFigure.Read(p.Trim()) ?? 0m)
            .ToArray();
        return parts is [> 0m, > 0m]
            ? Shared.Need(CalibrationPage.StretchFor(stock, used, parts[0], parts[1]))
            : throw new InputException("call.not-two-lengths", ("measured", measured));
    }
}
