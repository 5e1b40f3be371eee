using LabelForge.Quantities;
using LabelForge.Records.Weighing;
using LabelForge.UseCases;

namespace LabelForge.Cli.Verbs;

/// <summary><c>weigh</c>: do weighed pieces meet the declared net quantity, and what could be declared?</summary>
internal static class WeighVerb
{
    public static Command Build()
    {
        var verb = new Verb("weigh", "Whether weighed pieces meet the declared net quantity, and the largest that could be declared");
        var list = verb.Argument<string>("CSV",
            "One weight a line in grams (or name,mass or name,mass,tare; \"mass oz\" as heading for ounces)");
        var declared = verb.Option<string>("--declared", "What the label declares, for example: 113 g or 4 oz", required: true);
        var lotSize = verb.Option<int?>("--lot-size", "How many pieces the whole lot has");
        var tare = verb.Option<string?>("--tare", "What an empty package weighs, for example: 3.2 g; or a CSV of weighed empties");
        var market = verb.Market();
        var format = verb.Format();
        var on = verb.On();
        return verb.Runs(r =>
        {
            if (r.GetValue(lotSize) is < 1)
                throw new InputException("call.lot-size");
            var where = Shared.MarketOf(r.GetValue(market));
            var amount = Shared.Need(NetAmount.Parse(r.GetValue(declared)!));
            var sample = WeighingList.ReadFile(r.GetValue(list)!, Tare(r.GetValue(tare)));
            var judged = WeighPieces.Judge(where, amount, sample, r.GetValue(lotSize), Shared.Date(r.GetValue(on)));
            if (r.GetValue(format) == "json")
                WriteJson(judged.Test, judged.Largest, judged.Notes);
            else
                WriteText(judged.Test, judged.Largest, judged.Notes);
            return judged.Passes ? Exit.Done : Exit.FindingStands;
        });
    }

    private static Mass? Tare(string? text)
    {
        if (text is null)
            return null;
        if (File.Exists(text))
            return Mass.FromGrams(WeighingList.ReadFile(text).Mean);
        var amount = Shared.Need(Amount.Parse(text));
        return amount.IsMass ? amount.AsMass() : throw new InputException("call.not-a-mass-2", ("text", text));
    }

    private static void WriteJson(NetContentTest test, LargestDeclaration largest, IReadOnlyList<string> notes) =>
        JsonOut.Write(new JsonObject
        {
            ["market"] = test.Market.Id,
            ["n"] = test.Sample.Count,
            ["unit"] = "g",
            ["declared"] = Round(test.Declared.Metric),
            ["mean"] = Round(test.Sample.Mean),
            ["sd"] = test.Sample.Sd is { } sd ? Round(sd) : (decimal?)null,
            ["average"] = Verdict(test.AveragePasses),
            ["averageLimit"] = Round(test.AverageLimit),
            ["individual"] = Verdict(test.IndividualPasses),
            ["shortest"] = Round(test.Sample.Shortest),
            ["allowedShortfall"] = Round(test.Allowed.Grams),
            ["shortPieces"] = test.Short.ToJson(p => p.Name),
            ["mayBeShort"] = test.MayBeShort,
            ["mayDeclare"] = largest.Statement?.Statement,
            ["mayDeclareGrams"] = Round(largest.Grams),
            ["confidence"] = LargestDeclaration.Confidence,
            ["why"] = largest.Why,
            ["notes"] = notes.ToJson(),
            ["source"] = test.Source,
        });

    private static void WriteText(NetContentTest test, LargestDeclaration largest, IReadOnlyList<string> notes)
    {
        var sample = test.Sample;
        Console.WriteLine(Invariant($"{sample.Count} weighed: average {sample.Mean:0.###} g, lightest {sample.Shortest:0.###} g{(sample.Sd is { } sd ? Invariant($", standard deviation {sd:0.###} g") : "")}"));
        Console.WriteLine(Invariant($"declared {test.Declared.Metric:0.###} g"));
        Console.WriteLine(Invariant($"  average:    {Verdict(test.AveragePasses)} (passes from {test.AverageLimit:0.###} g on)"));
        Console.WriteLine(Invariant($"  individual: {Verdict(test.IndividualPasses)} ({test.Short.Length} short by more than {test.Allowed.Grams:0.##} g, {test.MayBeShort} may be)"));
        foreach (var piece in test.Short)
            Console.WriteLine(Invariant($"    {piece.Name}, line {piece.Line}: {piece.Net.Grams:0.###} g"));
        Console.WriteLine($"  checked against {test.Source}");
        Console.WriteLine($"These weights support: {largest.Statement?.Statement ?? "no declaration"}");
        Console.WriteLine($"  {largest.Why}");
        foreach (var note in notes)
            Console.WriteLine($"note: {note}");
    }

    private static string Verdict(bool passes) => passes ? "pass" : "fail";

    private static decimal Round(decimal figure) => Math.Round(figure, 6) / 1.000000000000m;
}
