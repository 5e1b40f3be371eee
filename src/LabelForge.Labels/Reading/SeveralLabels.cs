using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>Parts a text that holds the labels of several products: each has an ingredient list of its own.</summary>
internal static class SeveralLabels
{
    // Two lists are of one product where so much of the shorter stands in the other: one in each language, or a label twice.
    private const double SameList = 0.7;

    // More than a page of labels holds.
    private const int MostLabels = 40;

    private static readonly ImmutableArray<LabelWord> Footing = [LabelWord.Directions, LabelWord.Warnings, LabelWord.Lot,
        LabelWord.BestBefore, LabelWord.Responsible, LabelWord.MadeIn];

    /// <summary>Lists of products other than the first, in order; empty where there is one product.</summary>
    public static ImmutableArray<IngredientListRead> Others(ImmutableArray<IngredientListRead> lists)
    {
        var of = new List<IngredientListRead>();
        foreach (var list in lists.Where(l => l.Items.Count(i => i.Known is not null) > 1
            && l.Heading is { } h
            && IngredientListReader.SaysIngredients(h) && !FoldedText.Of(h).Contains("active", StringComparison.Ordinal)))
        {
            if (!of.Any(o => IsSame(o, list)))
                of.Add(list);
        }
        return of.Count > 1 ? [.. of.OrderBy(l => l.Span.Start)] : [];
    }

    /// <summary>Where each label stands, cut before what heads it; all of the text where the lists cannot be parted.</summary>
    /// <param name="text">The text.</param>
    /// <param name="all">Every list in it.</param>
    /// <param name="of">The lists of the products.</param>
    public static ImmutableArray<TextSpan> Parts(string text, ImmutableArray<IngredientListRead> all,
        ImmutableArray<IngredientListRead> of)
    {
        var cuts = new List<int> { 0 };
        foreach (var list in of.Skip(1).Take(MostLabels))
        {
            var before = all.Where(l => l.Span.End <= list.Span.Start).Select(l => l.Span.End).DefaultIfEmpty(0).Max();
            cuts.Add(Math.Max(before, Cut(text, before, list.Span.Start)));
        }
        // A label ends where the next begins, or where one like another begins.
        return [.. cuts.Select((from, i) => new TextSpan(from, (i + 1 < cuts.Count ? cuts[i + 1] : End(text, all, of[i], from)) - from))];
    }

    private static int End(string text, ImmutableArray<IngredientListRead> all, IngredientListRead list, int from) =>
        all.Where(l => l.Span.Start > list.Span.End).OrderBy(l => l.Span.Start).FirstOrDefault() is { } next
            ? Math.Max(from, Cut(text, list.Span.End, next.Span.Start))
            : text.Length;

    // The label begins below the last line that ends another: its address, lot, date, directions or warnings.
    private static int Cut(string text, int from, int to)
    {
        var cut = from;
        for (var at = from; at < to; at = Lines.Next(text, at))
        {
            var line = Lines.At(text, at);
            if (at > from && line.Trim().Length > 0 && at + line.Length < to && Ends(line))
                cut = Math.Min(to, at + line.Length + 1);
        }
        return cut == from ? Math.Min(to, Lines.Next(text, from)) : cut;
    }

    private static bool Ends(string line) =>
        LabelWords.BeginsAny(line, Footing)
            || AddressReader.Read(line).Length > 0
            || ContactReader.Read(line).Any
            || BusinessReader.Read(line).Zip is not null;

    private static bool IsSame(IngredientListRead one, IngredientListRead other)
    {
        var (a, b) = (Keys(one), Keys(other));
        return a.Intersect(b).Count() >= SameList * Math.Min(a.Count, b.Count);
    }

    private static HashSet<string> Keys(IngredientListRead list) => [.. list.Items.Select(i => i.Known?.Key ?? i.Name)];
}
