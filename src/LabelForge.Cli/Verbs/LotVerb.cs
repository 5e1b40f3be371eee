using LabelForge.Lots;

namespace LabelForge.Cli.Verbs;

/// <summary><c>lot</c>: makes and reads lot codes.</summary>
internal static class LotVerb
{
    public static Command Build() =>
        new("lot", "Makes and reads lot codes, and draws their barcodes") { New(), Read(), LotBarcodeVerb.Build() };

    private static Command New()
    {
        var made = new Option<string?>("--made") { Description = "The production date, YYYY-MM-DD (default: today)" };
        var batch = new Option<int>("--batch") { Description = "The batch of that day, from 1", DefaultValueFactory = _ => 1 };
        var format = Shared.Format();
        var verb = new Command("new", "The code for a batch") { made, batch, format };
        verb.SetAction(r => Exit.Run(() =>
        {
            var number = r.GetValue(batch);
            if (number is < 1 or > LotCode.MostBatches)
                throw new InputException("call.not-a-batch-day", ("number", number), ("most-batches", LotCode.MostBatches));
            var date = Shared.Date(r.GetValue(made));
            if (date < LotCode.FirstDay || date > LotCode.LastDay)
                throw new InputException("call.outside-lot-years", ("date", $"{date:yyyy-MM-dd}"),
                    ("first-day", $"{LotCode.FirstDay:yyyy-MM-dd}"), ("last-day", $"{LotCode.LastDay:yyyy-MM-dd}"));
            Show(new LotCode(date, number), r.GetValue(format)!);
            return Exit.Done;
        }));
        return verb;
    }

    private static Command Read()
    {
        var code = new Argument<string>("CODE") { Description = "A lot code as somebody wrote or said it" };
        var format = Shared.Format();
        var verb = new Command("read", "What a lot code says") { code, format };
        verb.SetAction(r => Exit.Run(() =>
        {
            Show(Shared.Need(LotCode.Parse(r.GetValue(code)!)), r.GetValue(format)!);
            return Exit.Done;
        }));
        return verb;
    }

    private static void Show(LotCode lot, string format)
    {
        if (format == "json")
            JsonOut.Write(new JsonObject
            {
                ["lot"] = lot.ToString(),
                ["made"] = lot.Made.ToIso(),
                ["batch"] = lot.Batch,
                ["spoken"] = lot.Spoken,
            });
        else
            Console.WriteLine($"{lot}\n  made {lot.Made:yyyy-MM-dd}, batch {lot.Batch} of that day\n  said aloud: {lot.Spoken}");
    }
}
