using LabelForge.Recipes.Files;

namespace LabelForge.Markets;

/// <summary>How net contents are tested where a market's packages are inspected.</summary>
/// <param name="Test">The way: the class that reckons.</param>
/// <param name="Shortfalls">The table of how far one package may fall short.</param>
/// <param name="Samples">The table of how many are weighed.</param>
/// <param name="By">Where it is written.</param>
/// <param name="Note">What else to tell, or null.</param>
/// <param name="MayBeFarShort">How many packages of a sample may be short by more than twice what is allowed.</param>
public sealed record WeighingWay(string Test, string Shortfalls, string Samples, string By, string? Note, int MayBeFarShort = 0)
{
    /// <summary>The least declared mass, in grams, that the test is made for; null where none is set.</summary>
    public decimal? LeastGrams { get; init; }

    /// <summary>The largest lot that is tested as one; null where none is set.</summary>
    public int? LargestLot { get; init; }
}

/// <summary>How a market names, counts and shows things, from its market.yaml. A way that is new
/// is a small class that the file names.</summary>
public sealed record MarketWays
{
    /// <summary>Its name in a sentence: <c>the European Union</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What the law calls its ground: <c>the Union</c>.</summary>
    public required string Territory { get; init; }

    /// <summary>The countries whose law it is, by ISO 3166-1; empty where the folder names none.</summary>
    public ImmutableArray<string> Countries { get; init; } = [];

    /// <summary>The languages that a label there stands in, by ISO 639-1; empty where the country of sale decides.</summary>
    public required ImmutableArray<string> Languages { get; init; }

    /// <summary>Whether all of those languages stand on one label.</summary>
    public required bool EachLanguage { get; init; }

    /// <summary>The market whose rules hold where it has none of its own; null where it stands by itself.</summary>
    public string? RulesFrom { get; init; }

    /// <summary>Rules of that market that do not hold here.</summary>
    public ImmutableHashSet<string> Without { get; init; } = [];

    /// <summary>Words of its citations that read otherwise here; null where none do.</summary>
    public string? Cited { get; init; }

    /// <summary>How they read here.</summary>
    public string CitedAs { get; init; } = "";

    /// <summary>How ingredients are named.</summary>
    public required string IngredientNames { get; init; }

    /// <summary>Where that is written.</summary>
    public required string IngredientNamesBy { get; init; }

    /// <summary>How a net quantity is stated.</summary>
    public required string NetQuantity { get; init; }

    /// <summary>The symbol of the millilitre.</summary>
    public required string Millilitre { get; init; }

    /// <summary>What stands before colours that some shades hold.</summary>
    public required string MayContain { get; init; }

    /// <summary>The parts of an address: street, city, region, postcode.</summary>
    public required ImmutableArray<string> Address { get; init; }

    /// <summary>How an address is read.</summary>
    public required string AddressForm { get; init; }

    /// <summary>Whether a way to reach the business stands on the label even where a whole address does.</summary>
    public bool ContactBesideAddress { get; init; }

    /// <summary>Whether a package counts as small by all of its surface for labels, and not by its largest side.</summary>
    public required bool IsSmallByWholeSurface { get; init; }

    /// <summary>Whether a net quantity's height is that of its small letters, and not of its figures.</summary>
    public bool MeasuresSmallLetters { get; init; }

    /// <summary>The table of prohibited and restricted substances; null where none is held.</summary>
    public string? Substances { get; init; }

    /// <summary>How rows of that table are cited, with places for list, reference, instrument and
    /// export; null as the Union's annexes are.</summary>
    public string? SubstancesCited { get; init; }

    /// <summary>The same for rows that hold in this market alone.</summary>
    public string? OwnSubstancesCited { get; init; }

    /// <summary>The words before who answers there for a product made elsewhere; null where none are set.</summary>
    public string? ImportedBy { get; init; }

    /// <summary>How net contents are tested; null where that is not known here.</summary>
    public WeighingWay? Weighing { get; init; }

    /// <summary>The usual paper: <c>letter</c> or <c>a4</c>.</summary>
    public required string Paper { get; init; }

    /// <summary>Reads a folder's market.yaml.</summary>
    /// <exception cref="InputException">There is none, or something in it is wrong.</exception>
    internal static MarketWays Read(MarketFolder folder)
    {
        var (name, root) = folder.Read("market.yaml").FirstOrDefault();
        if (name is null)
            throw new InputException(folder.Id, 0, "market.no-file");
        var file = ((MapNode)root)
            .OnlyKeys("A market", "name", "territory", "countries", "languages", "each language", "rules from", "without", "cited",
            "cited as", "ingredient names", "ingredient names by", "net quantity", "millilitre", "may contain", "address", "address form",
            "contact beside address", "small package by", "net quantity measured by", "substances", "substances cited",
            "own substances cited", "weighing", "paper", "imported by");
        return new MarketWays
        {
            Name = file.Required("name", "the United States").Text,
            Territory = file.Required("territory", "the Union").Text,
            Countries = [.. file.Texts("countries").Select(t => t.Text)],
            Languages = [.. file.Texts("languages").Select(t => t.Text)],
            EachLanguage = file.OptionalText("each language")?.Text == "true",
            RulesFrom = file.OptionalText("rules from")?.Text,
            Without = [.. file.Texts("without").Select(t => t.Text)],
            Cited = file.OptionalText("cited")?.Text,
            CitedAs = file.OptionalText("cited as")?.Text ?? "",
            IngredientNames = file.Required("ingredient names", "european").Text,
            IngredientNamesBy = file.Required("ingredient names by", "21 CFR 701.3(c)").Text,
            NetQuantity = file.Required("net quantity", "metric").Text,
            Millilitre = file.Required("millilitre", "mL").Text,
            MayContain = file.Required("may contain", "+/-").Text,
            Address = [.. file.Texts("address").Select(t => t.Text)],
            AddressForm = file.Required("address form", "any country").Text,
            IsSmallByWholeSurface = file.Required("small package by", "panel").Text == "labelling surface",
            ContactBesideAddress = file.OptionalText("contact beside address")?.Text == "true",
            MeasuresSmallLetters = file.OptionalText("net quantity measured by")?.Text == "small letters",
            Substances = file.OptionalText("substances")?.Text,
            SubstancesCited = file.OptionalText("substances cited")?.Text,
            OwnSubstancesCited = file.OptionalText("own substances cited")?.Text,
            ImportedBy = file.OptionalText("imported by")?.Text,
            Weighing = file.OptionalMap("weighing") is { } weighing ? WeighingOf(weighing) : null,
            Paper = file.Required("paper", "a4").Text,
        };
    }

    private static WeighingWay WeighingOf(MapNode map)
    {
        map.OnlyKeys("A way of weighing", "test", "shortfalls", "samples", "far short", "by", "note", "least grams", "largest lot");
        return new(map.Required("test", "directive").Text, map.Required("shortfalls", "a table").Text,
            map.Required("samples", "a table").Text, map.Required("by", "Directive 76/211/EEC").Text, map.OptionalText("note")?.Text,
            map.OptionalText("far short") is { } far ? int.Parse(far.Text, System.Globalization.CultureInfo.InvariantCulture) : 0)
        {
            LeastGrams = map.OptionalText("least grams") is { } least
                ? decimal.Parse(least.Text, System.Globalization.CultureInfo.InvariantCulture)
                : null,
            LargestLot = map.OptionalText("largest lot") is { } lot
                ? int.Parse(lot.Text, System.Globalization.CultureInfo.InvariantCulture)
                : null,
        };
    }
}
