using LabelForge.Papers;

namespace LabelForge.Records.Weighing;

/// <summary>What a person should know beside the verdict of a net content test.</summary>
public static class SampleNotes
{
    /// <summary>The notes, one sentence each; a source stands in the language of its law.</summary>
    public static IReadOnlyList<string> Of(NetContentTest test, int? lotSize, PaperWords? words = null)
    {
        words ??= PaperWords.English;
        var notes = ImmutableArray.CreateBuilder<string>();
        var sample = test.Sample;
        var weighing = test.Market.Ways.Weighing;
        if (lotSize is { } lot && SamplePlan.For(test.Market, lot) is var plan && plan.Sample > sample.Count)
            notes.Add(words["weigh-inspection-weighs", lot, plan.Sample, plan.Source, sample.Count]);
        if (lotSize is null && SamplePlan.For(test.Market, 250) is var usual && sample.Count < usual.Sample)
            notes.Add(words["weigh-lot-size-unknown", usual.Sample]);
        if (test.PassesByChance)
            notes.Add(words["weigh-passes-by-chance"]);
        if (test.SecondSample is { } second)
            notes.Add(words["weigh-second-sample", second.Then, second.Sample + second.Then, second.MayBeShortOfBoth, second.Source]);
        if (lotSize is { } opened && SamplePlan.Destructive(test.Market, opened) is { } destructive)
            notes.Add(words["weigh-destructive", destructive.Sample, destructive.MayBeShort, destructive.Source]);
        if (test.Allowed.Grams < 5 * 0.5m && weighing?.Test == "directive")
            notes.Add(words["weigh-finer-scale", test.Allowed.Grams]);
        if (weighing?.LeastGrams is { } least && test.Declared.Metric < least)
            notes.Add(words["weigh-below-the-test", least, test.Source]);
        if (weighing?.LargestLot is { } largest && lotSize > largest)
            notes.Add(words["weigh-largest-lot", largest, lotSize, test.Source]);
        if (test.FarShort.Length > test.MayBeFarShort)
        {
            var names = string.Join(", ", test.FarShort.Select(p => p.Name));
            notes.Add(test.MayBeFarShort == 0
                ? words["weigh-far-short-none", names]
                : words["weigh-far-short", test.MayBeFarShort, names]);
        }
        var middle = sample.Pieces.Select(p => p.Net.Grams).Order().ElementAt(sample.Count / 2);
        foreach (var odd in sample.Pieces.Where(p => p.Net.Grams > 2 * middle || p.Net.Grams < middle / 2).Take(5))
            notes.Add(words["weigh-far-from-others", odd.Line, odd.Net]);
        notes.Add(string.Join(' ', new[] { words["weigh-allowed-stands-in", test.Allowed.Source, test.Allowed.Known],
            NetContentTest.WayOf(test.Market).Note }.OfType<string>()));
        return notes.ToImmutable();
    }
}
