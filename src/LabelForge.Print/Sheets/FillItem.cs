namespace LabelForge.Print.Sheets;

/// <summary>So many labels of a recipe, perhaps of a lot of its own, on sheets that several share.</summary>
/// <param name="Recipe">The recipe's id or file.</param>
/// <param name="Lot">The lot as written, or null for the one given for all.</param>
/// <param name="Count">How many labels.</param>
public sealed record FillItem(string Recipe, string? Lot, int Count)
{
    /// <summary>Reads <c>recipeA:10,recipeB@26R25-02C:20</c>.</summary>
    public static Parsed<ImmutableArray<FillItem>> ParseAll(string text)
    {
        var items = ImmutableArray.CreateBuilder<FillItem>();
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            // The last colon, so that a path with a drive letter may stand before it.
            var colon = part.LastIndexOf(':');
            if (colon <= 0
                || PlainFigure.Whole(part[(colon + 1)..].Trim()) is not { } count
                || count is < 1 or > SheetWriter.MostLabels)
                return Parsed<ImmutableArray<FillItem>>.Refused("sheet.how-many-of-what", ("part", part));
            var (what, at) = (part[..colon].Trim(), part[..colon].LastIndexOf('@'));
            items.Add(at > 0 ? new FillItem(what[..at].Trim(), what[(at + 1)..].Trim(), count) : new FillItem(what, null, count));
        }
        return items.Count > 0
            ? Parsed<ImmutableArray<FillItem>>.Of(items.ToImmutable())
            : Parsed<ImmutableArray<FillItem>>.Refused("sheet.nothing-to-fill");
    }
}
