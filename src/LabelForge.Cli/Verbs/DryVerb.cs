using LabelForge.Records.Weighing;

namespace LabelForge.Cli.Verbs;

/// <summary><c>dry</c>: what a piece will weigh at an age, from weighings over days.</summary>
internal static class DryVerb
{
    public static Command Build()
    {
        var verb = new Verb("dry", "What a drying piece of soap will weigh at an age, with its interval");
        var list = verb.Argument<string>("CSV", "Day and mass, one weighing a line: 14,112.6 (or dates: 2026-11-25,112.6)");
        var at = verb.Option<decimal>("--at", "The age in days", required: true);
        var format = verb.Format();
        return verb.Runs(r =>
        {
            if (r.GetValue(at) is < 0 or > 10_000)
                throw new InputException("call.age-out-range");
            var curve = DryingCurve.Fit(DryingList.ReadFile(r.GetValue(list)!));
            var mass = curve.At(r.GetValue(at));
            var beyond = mass.Day > 2 * curve.Weights[^1].Day;
            if (r.GetValue(format) == "json")
            {
                JsonOut.Write(new JsonObject
                {
                    ["day"] = mass.Day,
                    ["grams"] = mass.Grams,
                    ["low"] = mass.Low,
                    ["high"] = mass.High,
                    ["confidence"] = 0.95,
                    ["endGrams"] = Math.Round(curve.EndGrams, 3),
                    ["paceDays"] = Math.Round(curve.PaceDays, 3),
                    ["farBeyondTheWeighings"] = beyond
                });
                return Exit.Done;
            }
            Console.WriteLine(Invariant($"At {mass.Day:0.##} days: {mass.Grams:0.00} g, between {mass.Low:0.00} and {mass.High:0.00} g with 95 % confidence (the curve, not the next bar)."));
            Console.WriteLine(Invariant($"It dries towards {curve.EndGrams:0.00} g; the water still to go falls to 37 % in {curve.PaceDays:0.#} days."));
            if (beyond)
                Console.WriteLine(Invariant($"The last weighing was on day {curve.Weights[^1].Day:0.##}: this looks far beyond it. Weigh again later."));
            return Exit.Done;
        });
    }
}
