using LabelForge.Records.Money;

namespace LabelForge.Cli;

/// <summary>What a batch and a piece cost, as a person reads it and as other programs do.</summary>
internal static class CostReport
{
    private const int MostSwings = 6;

    public static JsonObject Json(CostSheet sheet, string currency, decimal margin, decimal? price, decimal swing)
    {
        var asked = price ?? sheet.Price(margin);
        return new JsonObject
        {
            ["currency"] = currency,
            ["pieces"] = sheet.Pieces,
            ["batch"] = Math.Round(sheet.Batch, 2, MidpointRounding.AwayFromZero),
            ["piece"] = Math.Round(sheet.Piece, 4),
            ["lines"] = sheet.Lines.ToJson(l => new JsonObject
            {
                ["what"] = l.What,
                ["cost"] = Math.Round(l.Cost, 4),
                ["fixed"] = l.Fixed,
                ["source"] = l.Source,
            }),
            ["margin"] = margin,
            ["priceForMargin"] = sheet.Price(margin),
            ["price"] = asked,
            ["breakEvenPieces"] = sheet.BreakEven(asked),
            ["tornado"] = sheet.Tornado(swing / 100m)
                .ToJson(t => new JsonObject { ["what"] = t.What, ["low"] = Math.Round(t.Low, 4), ["high"] = Math.Round(t.High, 4) }),
        };
    }

    public static void Write(CostSheet sheet, string currency, decimal margin, decimal? price, decimal swing)
    {
        var asked = price ?? sheet.Price(margin);
        foreach (var line in sheet.Lines)
            Console.WriteLine(Invariant($"  {line.Cost,10:0.00}  {line.What} ({line.Source})"));
        Console.WriteLine(Invariant($"  {sheet.Batch,10:0.00}  {currency} in all; {sheet.Piece:0.000} a piece for {sheet.Pieces} pieces, before fees"));
        Console.WriteLine(Invariant($"For a margin of {margin * 100:0.#} % of the price: {sheet.Price(margin):0.00}"));
        Console.WriteLine(sheet.BreakEven(asked) is { } count
            ? Invariant(
                $"At {asked:0.00} work and overhead of a batch are paid after {count} pieces{(count > sheet.Pieces ? ", more than the batch has" : "")}.")
            : Invariant($"At {asked:0.00} every piece loses money."));
        Console.WriteLine(Invariant($"What moves the cost of a piece most, each {swing:0.#} % lower and higher:"));
        foreach (var t in sheet.Tornado(swing / 100m).Take(MostSwings))
            Console.WriteLine(Invariant($"  {t.Low,8:0.000} to {t.High:0.000}  {t.What}"));
    }
}
