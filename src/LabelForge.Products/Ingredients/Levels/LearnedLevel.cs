namespace LabelForge.Ingredients.Levels;

/// <summary>Reads what was learned from published formulas: usual levels by family, and by place in a list.</summary>
internal static class LearnedLevel
{
    /// <summary>The heading of the table by family.</summary>
    internal static readonly string[] FamilyHeading = ["family", "form", "percent", "n"];

    /// <summary>The heading of the table by place.</summary>
    internal static readonly string[] PlaceHeading = ["place", "water first", "other"];

    /// <summary>Mass percent by family and form.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    public static Dictionary<(string Family, ProductForm Form), double> ReadFamilies(DataTable table) =>
        table.Rows(FamilyHeading).ToArray()
            .ToDictionary(r => (r.Needed("family"), UseLevel.ReadForm(r)), r => UseLevel.ReadPercent(r, "percent"));

    /// <summary>Mass percent by place, from the first.</summary>
    /// <exception cref="InputException">A row cannot be used.</exception>
    public static ImmutableArray<(double WaterFirst, double Other)> ReadPlaces(DataTable table) =>
        [.. table.Rows(PlaceHeading).ToArray()
            .Select(r => (UseLevel.ReadPercent(r, "water first"), UseLevel.ReadPercent(r, "other")))];
}
