using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Drawing;
using LabelForge.Print.Output;

namespace LabelForge.Cli.Verbs;

/// <summary><c>lot barcode</c>: a lot's barcode as a file of its own.</summary>
internal static class LotBarcodeVerb
{
    public static Command Build()
    {
        var verb = new Verb("barcode", "The lot's barcode, drawn in whole printer dots with its quiet zones and its text");
        var code = verb.Argument<string>("CODE", "The lot code");
        var kind = verb.Option<string>("--kind",
            "code128: the lot alone; gs1-128, datamatrix, qr: item and lot; ean13, upca: the item alone", "code128");
        kind.AcceptOnlyFromAmong("code128", "gs1-128", "datamatrix", "qr", "ean13", "upca");
        var gtin = verb.Option<string?>("--gtin", "The item's number, 8 to 14 digits; every kind but code128 needs it");
        var made = verb.Option<string?>("--made", "Also encode the production date: YYYY-MM-DD");
        var useBy = verb.Option<string?>("--use-by", "Also encode the last day to use it: YYYY-MM-DD");
        var link = verb.Option<string?>("--link", "qr: your own web address, https://id.example.com");
        var dpi = verb.Option<int>("--dpi", "Your printer's dots to the inch: 300 or 600", 300);
        dpi.AcceptOnlyFromAmong("300", "600");
        var format = verb.Format();
        var output = new OutputOption("The file to write: .pdf, .svg or .png", OutputOption.Drawn).AddTo(verb);
        return verb.Runs(r =>
        {
            var path = output.Path(r);
            var lot = Shared.Need(LotCode.Parse(r.GetValue(code)!));
            var wanted = new Wanted(lot, r.GetValue(kind)!, r.GetValue(gtin), Day(r.GetValue(made)), Day(r.GetValue(useBy)),
                r.GetValue(link));
            var (block, text) = Draw(wanted, new BarcodeOptions { Dpi = r.GetValue(dpi) });
            // The lot's own day stands for the time, so that the same call gives the same bytes.
            var info = new DocumentInfo($"{wanted.Kind} of lot {lot}",
                lot.Made);
            BarcodeFile.Write(path, block, text, r.GetValue(dpi), info);
            Shared.Say(r, format, () => new JsonObject
            {
                ["file"] = path,
                ["kind"] = wanted.Kind,
                ["lot"] = lot.ToString(),
                ["text"] = text.ToJson(),
            });
            return Exit.Done;
        });
    }

    private static (InkBlock Block, ImmutableArray<string> Text) Draw(Wanted w, BarcodeOptions options)
    {
        RefuseUnused(w);
        if (w.Kind == "code128")
            return (Shared.Need(Barcode.Draw(BarcodeKind.Code128, w.Lot.ToString(), options)), BarcodeText.Of(w.Lot.ToString()));
        var item = Shared.Need(Gtin.Parse(w.Gtin ?? throw new InputException("call.item-needed", ("kind", w.Kind))));
        if (w.Kind is "ean13" or "upca")
        {
            var till = Shared.Need(Barcode.Draw(w.Kind == "ean13" ? BarcodeKind.Ean13 : BarcodeKind.UpcA, item.Digits, options));
            return (till, BarcodeText.Of(till.Caption!));
        }
        var data = Shared.Need(Gs1ElementString.ForItem(item, w.Lot.ToString(), w.Made, w.UseBy));
        var block = w.Kind switch
        {
            "gs1-128" => Barcode.Draw(BarcodeKind.Gs1Code128, data, options),
            "datamatrix" => Barcode.Draw(BarcodeKind.Gs1DataMatrix, data, options),
            _ => Barcode.Draw(BarcodeKind.Qr,
            Shared.Need(data.DigitalLink(w.Link ?? throw new InputException("call.web-address-needed"))), options),
        };
        return (Shared.Need(block), BarcodeText.Of(data));
    }

    // What would not be encoded is refused, so that nobody believes it is in the barcode.
    private static void RefuseUnused(Wanted w)
    {
        if (w.Link is not null && w.Kind != "qr")
            throw new InputException("call.no-web-address", ("kind", w.Kind));
        if (w.Kind is "code128" or "ean13" or "upca" && (w.Made ?? w.UseBy) is not null)
            throw new InputException("call.no-dates", ("kind", w.Kind));
        if (w.Kind == "code128" && w.Gtin is not null)
            throw new InputException("call.lot-alone");
    }

    private static DateOnly? Day(string? written) => written is null ? null : Shared.Date(written);

    private sealed record Wanted(LotCode Lot, string Kind, string? Gtin, DateOnly? Made, DateOnly? UseBy, string? Link);
}
