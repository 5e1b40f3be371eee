namespace LabelForge.Ingredients;

/// <summary>
/// A row of the dictionary with its names at hand. A label needs a dozen of a thousand: the rest of a row is read when it is
/// first found.
/// </summary>
internal sealed class IngredientRow
{
    private Ingredient? _read;

    /// <summary>A row whose names are there.</summary>
    /// <exception cref="Measures.InputException">It has no name, or a number that is none.</exception>
    public IngredientRow(DataRow row)
    {
        Row = row;
        Us = row.Needed("us");
        IsColourant = row["flags"].Contains("colourant", StringComparison.Ordinal);
        Names = [.. Written(row).Distinct(StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>The row.</summary>
    public DataRow Row { get; }

    /// <summary>As <see cref="Ingredient.Us"/>.</summary>
    public string Us { get; }

    /// <summary>As <see cref="Ingredient.IsColourant"/>.</summary>
    public bool IsColourant { get; }

    /// <summary>As <see cref="Ingredient.Names"/>.</summary>
    public string[] Names { get; }

    /// <summary>As <see cref="Ingredient.Key"/>.</summary>
    public string Key => IsColourant ? Ingredient.Key : Us;

    /// <summary>The ingredient, the same one for whoever asks.</summary>
    /// <exception cref="Measures.InputException">The row cannot be used.</exception>
    public Ingredient Ingredient => _read ?? Interlocked.CompareExchange(ref _read, IngredientFile.Of(Row), null) ?? _read;

    private static IEnumerable<string> Written(DataRow row)
    {
        yield return row.Needed("us");
        yield return row.Needed("eu");
        foreach (var column in new[] { "inci", "ca" })
        {
            if (row[column] is { Length: > 0 } name)
                yield return name;
        }
        foreach (var number in row.Several("ci"))
            yield return row.Value(ColourIndexNumber.Parse(number)).ToString();
        foreach (var name in row.Several("everyday"))
            yield return name;
    }
}
