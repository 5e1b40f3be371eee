using LabelForge.Ingredients;

namespace LabelForge.Recipes.Saponification;

/// <summary>What a fat is, which decides what comes of it beside soap.</summary>
public enum FatKind
{
    /// <summary>An oil or butter, counted as pure triglyceride: three parts alkali give three parts soap and one glycerin.</summary>
    Triglyceride,

    /// <summary>A free fatty acid: alkali gives soap and water, at once and completely.</summary>
    Acid,

    /// <summary>An acid that is no fat, such as citric or lactic acid: alkali gives its salt and
    /// water, before any fat finds alkali.</summary>
    PlainAcid,

    /// <summary>A wax: alkali gives soap and fatty alcohols that stay in the bar, and no glycerin.</summary>
    Wax,

    /// <summary>Looks like a fat and takes up no alkali, such as mineral oil.</summary>
    Inert,
}

/// <summary>A row of the table: a fat, what kind it is, and what its soaps are called.</summary>
/// <param name="Fat">Its name in the dictionary.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Sodium">The name of its soap with sodium; null where no standard name is known here.</param>
/// <param name="Potassium">The name of its soap with potassium; null where no standard name is known here.</param>
public sealed record SoapEntry(string Fat, FatKind Kind, string? Sodium, string? Potassium)
{
    /// <summary>Whether alkali turns it into a salt and water, with nothing else left.</summary>
    public bool IsAcid => Kind is FatKind.Acid or FatKind.PlainAcid;

    /// <summary>The name of its soap with this alkali, or null.</summary>
    public string? With(Alkali alkali) => alkali == Alkali.Sodium ? Sodium : Potassium;

    /// <summary>The same under the maker's own name for its soap, where there is one.</summary>
    public SoapEntry Called(string? own) => own is null ? this : this with { Sodium = own, Potassium = own };
}

/// <summary>Which soap comes of which fat: ingredients/tables/soaps-of-fats.csv.</summary>
public static class SoapTable
{
    private static readonly string[] Heading = ["fat", "kind", "sodium", "potassium", "source", "basis", "read"];
    private static readonly Lazy<ImmutableDictionary<string, SoapEntry>> Lazy = new(Load);

    /// <summary>Every row.</summary>
    public static IEnumerable<SoapEntry> All => Lazy.Value.Values;

    /// <summary>The row of a fat by its dictionary name, or null.</summary>
    public static SoapEntry? Find(string fat) => Lazy.Value.GetValueOrDefault(fat);

    private static ImmutableDictionary<string, SoapEntry> Load()
    {
        var rows = DataTable.Embedded("ingredients/tables/soaps-of-fats").SelectMany(t => t.Rows(Heading));
        var table = ImmutableDictionary.CreateBuilder<string, SoapEntry>(StringComparer.Ordinal);
        foreach (var row in rows)
        {
            var entry = new SoapEntry(row.Needed("fat"), Kind(row), OrNull(row["sodium"]), OrNull(row["potassium"]));
            row.Needed("source");
            _ = row.Basis();
            if (!table.TryAdd(entry.Fat, entry))
                throw row.Refuse("soap.fat-twice", ("fat", entry.Fat));
        }
        return table.ToImmutable();
    }

    private static string? OrNull(string text) => text.Length == 0 ? null : text;

    private static FatKind Kind(DataRow row) => row["kind"] switch
    {
        "triglyceride" => FatKind.Triglyceride,
        "acid" => FatKind.Acid,
        "plain acid" => FatKind.PlainAcid,
        "wax" => FatKind.Wax,
        "inert" => FatKind.Inert,
        var other => throw row.Refuse("soap.not-a-kind-fat", ("other", other)),
    };
}
