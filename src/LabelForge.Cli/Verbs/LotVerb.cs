using LabelForge.Lots;

namespace LabelForge.Cli.Verbs;

/// <summary><c>lot</c>: makes and reads lot codes.</summary>
internal static class LotVerb
{
    public static Command Build() =>
        new("lot", "Makes and reads lot codes, and draws their barcodes") { New(), Read(), LotBarcodeVerb.Build() };

    private static Command New()
    {
        var verb = new Verb("new", "The code for a batch");
        var made = verb.Option<string?>("--made", "The production date, YYYY-MM-DD (default: today)");
        var batch = verb.Option<int>("--batch", "The batch of that day, from 1", 1);
        var format = verb.Format();
        return verb.Runs(r =>
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
        });
    }

    private static Command Read()
    {
        var verb = new Verb("read", "What a lot code says");
        var code = verb.Argument<string>("CODE", "A lot code as somebody wrote or said it");
        var format = verb.Format();
        return verb.Runs(r =>
        {
            Show(Shared.Need(LotCode.Parse(r.GetValue(code)!)), r.GetValue(format)!);
            return Exit.Done;
        });
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
