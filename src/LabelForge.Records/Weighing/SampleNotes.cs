namespace LabelForge.Records.Weighing;

/// <summary>What a person should know beside the verdict of a net content test.</summary>
public static class SampleNotes
{
    /// <summary>The notes, one sentence each.</summary>
    public static IReadOnlyList<string> Of(NetContentTest test, int? lotSize)
    {
        var notes = ImmutableArray.CreateBuilder<string>();
        var sample = test.Sample;
        if (lotSize is { } lot && SamplePlan.For(test.Market, lot) is var plan && plan.Sample > sample.Count)
            notes.Add($"An inspection of a lot of {lot} weighs {plan.Sample} ({plan.Source}); {sample.Count} say less.");
        if (lotSize is null && sample.Count < SamplePlan.For(test.Market, 250).Sample)
            notes.Add($"An inspection of a lot of 250 weighs {SamplePlan.For(test.Market, 250).Sample}. Say how many the lot has.");
        if (test.PassesByChance)
            notes.Add(
                "The average is below what is declared and passes only because a sample gets the benefit of the doubt. Another sample may "
                    + "fail: fill more, or declare less.");
        if (test.SecondSample is { } second)
            notes.Add(
                $"More are short than the first sample may have, and fewer than refuse "
                    + $"the lot: weigh {second.Then} more. Of the {second.Sample + second.Then}, {second.MayBeShortOfBoth} may be short ({second.Source}).");
        if (lotSize is { } opened && SamplePlan.Destructive(test.Market, opened) is { } destructive)
            notes.Add(
                $"Where a package is opened to be weighed, {destructive.Sample} are tested, and {destructive.MayBeShort} may be short ({destructive.Source}).");
        if (test.Allowed.Grams < 5 * 0.5m && test.Market.Ways.Weighing?.Test == "directive")
            notes.Add(
                $"A scale that reads whole grams errs by up to 0.5 g; the error of weighing should be at most a fifth of the allowed "
                    + $"shortfall of {test.Allowed.Grams:0.##} g: use a finer one.");
        if (test.Market.Ways.Weighing?.LeastGrams is { } least && test.Declared.Metric < least)
            notes.Add(
                $"The test is made for packages of {least:0.##} g and more; below that the first row of its table is taken "
                    + $"all the same ({test.Source}).");
        if (test.Market.Ways.Weighing?.LargestLot is { } largest && lotSize > largest)
            notes.Add($"A batch that is tested as one has at most {largest} pieces: part the lot of {lotSize} ({test.Source}).");
        if (test.FarShort.Length > test.MayBeFarShort)
            notes.Add(
                $"Short by more than twice what is allowed, which {(test.MayBeFarShort == 0 ? "none" : $"only {test.MayBeFarShort}")} may be: {string.Join(", ", test.FarShort.Select(p => p.Name))}.");
        var middle = sample.Pieces.Select(p => p.Net.Grams).Order().ElementAt(sample.Count / 2);
        foreach (var odd in sample.Pieces.Where(p => p.Net.Grams > 2 * middle || p.Net.Grams < middle / 2).Take(5))
            notes.Add($"Line {odd.Line}: {odd.Net} is far from the others. A slip of the pen?");
        notes.Add(
            $"The allowed shortfall stands in {test.Allowed.Source}; this entry: {test.Allowed.Known}.{(NetContentTest.WayOf(test.Market).Note is { } note ? " " + note : "")}");
        return notes.ToImmutable();
    }
}
