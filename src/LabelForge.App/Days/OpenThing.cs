using System.Collections.Frozen;
using LabelForge.Recipes.Files;

namespace LabelForge.Days;

/// <summary>What kind of thing is open.</summary>
public enum OpenKind
{
    /// <summary>Pieces wait for their labels.</summary>
    Labels,

    /// <summary>A batch is at the bench.</summary>
    Batch,

    /// <summary>Someone complained, and days run.</summary>
    Complaint,

    /// <summary>A material is past its date, or nears it.</summary>
    Date,

    /// <summary>A material will not do for the next batch.</summary>
    Stock,

    /// <summary>A limit is another than when a product was made last.</summary>
    Limit,

    /// <summary>A paper that is kept holds no more, or not for long.</summary>
    Paper,

    /// <summary>A list nobody has held against its wrapper.</summary>
    Wrapper,

    /// <summary>A question that a supplier has not answered, or was not asked.</summary>
    Question,
}

/// <summary>One thing that is open, the most urgent of its kind first.</summary>
/// <param name="Kind">What kind of thing.</param>
/// <param name="Titled">What it is, in a few words.</param>
/// <param name="Details">What is known about it, sentence by sentence.</param>
public sealed record OpenThing(OpenKind Kind, Saying Titled, ImmutableArray<Saying> Details)
{
    /// <summary>What it is, in English.</summary>
    public string Title => Titled.ToString();

    /// <summary>What is known about it, in English.</summary>
    public string Detail => string.Join(' ', Details);

    /// <summary>The lot that it is about; null where it is about none.</summary>
    public string? Lot { get; init; }

    /// <summary>The pot that it is about, where several products are poured out of one; null where it is about none.</summary>
    public string? Pot { get; init; }

    /// <summary>The lots of that pot; empty where it is about none.</summary>
    public ImmutableArray<string> Lots { get; init; } = [];

    /// <summary>The products of that pot, in the order of its lots; empty where it is about none.</summary>
    public ImmutableArray<string> Products { get; init; } = [];

    /// <summary>The product that it is about, as it is named where a recipe is asked for; null where it is about none.</summary>
    public string? Product { get; init; }

    /// <summary>The material's id; null where it is about none.</summary>
    public string? Material { get; init; }

    /// <summary>The supplier as the materials name it; null where it is about none, or none is named.</summary>
    public string? Supplier { get; init; }

    /// <summary>The number on the bottle; null where it is about none.</summary>
    public string? Bottle { get; init; }

    /// <summary>The things that this one stands for, where several of a kind are told as one; else empty.</summary>
    public ImmutableArray<OpenThing> Each { get; init; } = [];

    /// <summary>How many: labels that wait, pieces planned; null where nothing is counted.</summary>
    public int? Count { get; init; }

    /// <summary>The day by which something is to be done; null where none is set.</summary>
    public DateOnly? By { get; init; }
}

/// <summary>A sentence as data: what it says, and of what.</summary>
/// <param name="Key">What it says.</param>
/// <param name="Filled">Of what: names, numbers and days as they are written, and sayings again.</param>
public sealed record Saying(string Key, params object[] Filled)
{
    private static readonly Lazy<FrozenDictionary<string, string>> English = new(() => Words("en"));

    /// <summary>What sayings are in a language, by their keys.</summary>
    /// <param name="language">One that they are told in: <c>en</c> or <c>fr</c>.</param>
    public static FrozenDictionary<string, string> Words(string language)
    {
        using var reader = new StreamReader(typeof(Saying).Assembly.GetManifestResourceStream($"sayings/{language}.yaml")!);
        return YamlFile.ReadText(reader.ReadToEnd(), $"sayings-{language}.yaml").Entries
            .ToFrozenDictionary(e => e.Key, e => ((TextNode)e.Value).Text, StringComparer.Ordinal);
    }

    /// <summary>The sentence in English.</summary>
    public override string ToString() => string.Format(CultureInfo.InvariantCulture, English.Value[Key], Filled);
}

/// <summary>A product on the shelf.</summary>
/// <param name="Product">As it is named where a recipe is asked for.</param>
/// <param name="Name">Its name on the label.</param>
/// <param name="Left">Pieces of it in the house, over all lots.</param>
/// <param name="WithoutLabels">Of these, or of what is at the bench, how many wait for their labels.</param>
public sealed record ShelfProduct(string Product, string Name, int Left, int WithoutLabels);
