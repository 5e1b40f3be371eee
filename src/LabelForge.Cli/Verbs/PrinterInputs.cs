using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Cli.Verbs;

/// <summary>What the verbs that fit a print to a printer take alike.</summary>
internal sealed class PrinterInputs
{
    private readonly Option<string?> _printer = new("--printer")
    {
        Description = "The printer; --nudge and --stretch are remembered for it in the workshop",
    };
    private readonly Option<string?> _nudge = new("--nudge")
    {
        Description = "Move the print right and down, in millimetres: 0.5,-0.3",
        AllowMultipleArgumentsPerToken = false,
    };
    private readonly Option<string?> _stretch = new("--stretch") { Description = "Make the print wider and higher, in percent: 0.4,-0.2" };

    public PrinterInputs AddTo(Command verb)
    {
        foreach (var option in new Option[] { _printer, _nudge, _stretch })
            verb.Options.Add(option);
        return this;
    }

    /// <summary>How prints for the printer named are moved and stretched as remembered; not at all where it is new.</summary>
    public Registration Remembered(ParseResult r, string workshopFolder) => r.GetValue(_printer) is { } id
        ? (PrinterFile.Find(workshopFolder, id) ?? Printer.Unknown).Registration
        : throw new InputException("call.no-printer-named");

    /// <summary>The printer as remembered and as changed now.</summary>
    /// <param name="r">The words of the command.</param>
    /// <param name="workshopFolder">Where printers are remembered.</param>
    /// <param name="stretchMeasured">A stretch found from measurements, or null.</param>
    /// <returns>The printer, and whether it differs from what is remembered.</returns>
    public (Printer Printer, bool Changed) Resolve(ParseResult r, string workshopFolder, (decimal X, decimal Y)? stretchMeasured = null)
    {
        var nudge = r.GetValue(_nudge) is { } n ? Shared.Need(Registration.ParseNudge(n)) : ((decimal X, decimal Y)?)null;
        var stretch = r.GetValue(_stretch) is { } s ? Shared.Need(Registration.ParseStretch(s)) : stretchMeasured;
        var changed = nudge is not null || stretch is not null;
        var id = r.GetValue(_printer);
        var known = (id, changed) switch
        {
            (null, _) => Printer.Unknown,
            (_, true) => PrinterFile.Find(workshopFolder, id) ?? Printer.Unknown with { Id = id },
            _ => PrinterFile.Load(workshopFolder, id),
        };
        return (known.With(nudge, stretch), changed && id is not null);
    }

    /// <summary>The printer named, moved and stretched as was measured; changed where one is named.</summary>
    public (Printer Printer, bool Changed) Found(ParseResult r, string workshopFolder, Registration measured) =>
        r.GetValue(_printer) is { } id
            ? ((PrinterFile.Find(workshopFolder, id) ?? Printer.Unknown with { Id = id }) with { Registration = measured }, true)
            : (Printer.Unknown with { Registration = measured }, false);

    /// <summary>Remembers a printer that was changed, once what was asked for is written.</summary>
    public static void Remember(string workshopFolder, Printer printer, bool changed)
    {
        if (!changed)
            return;
        if (!File.Exists(Path.Combine(workshopFolder, "workshop.yaml")))
            throw new InputException("call.no-workshop-yaml-printer", ("workshop-folder", workshopFolder));
        PrinterFile.Save(workshopFolder, printer);
        Console.Error.WriteLine($"Remembered in printers/{printer.Id}.yaml: {printer.Registration}.");
    }
}
