using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes.Files;
using LabelForge.Recipes.Saponification;

namespace LabelForge.Recipes;

/// <summary>Reads materials/ID.yaml.</summary>
public static class MaterialFile
{
    /// <summary>The key of a list that nobody has held against the wrapper yet.</summary>
    public const string ConfirmKey = "to confirm";

    /// <summary>The key of the day on which the supplier was asked.</summary>
    public const string AskedKey = "asked";

    private static int ReadMonths(TextNode node) =>
        node.Text.EndsWith(" months", StringComparison.Ordinal)
            && PlainFigure.Whole(node.Text[..^" months".Length]) is > 0 and <= 120 and var months
            ? months
            : throw node.Refuse("material.keeps", ("text", node.Text));

    private static readonly string[] Keys =
    [
        "name", "kind", "listed", "contains", "made from", "density", "drops per mL", "limits", "allergens", "packs", "lot", "supplier",
        "flash point", "notes", "saponification", "soap name", "purity", "swatch", "swatch at", "scent", "own names", "trust",
        "label stock", "period after opening", ConfirmKey, AskedKey,
    ];

    /// <summary>The keys that a material's file may have.</summary>
    public static IReadOnlyList<string> KnownKeys => Keys;

    /// <summary>Reads a material.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static Material Read(string id, MapNode file, MarketBook? markets = null)
    {
        file.OnlyKeys("A material", Keys);
        var kind = ReadKind(file.Required("kind", "base"));
        var contains = ReadContains(file, file.Items("contains"));
        var madeFrom = BlendParts.AsMasses(file, MaterialUses.Read(file, "made from"));
        // A fragrance oil is one ingredient and water is water: their papers need not be copied to say so.
        if (contains.IsEmpty && madeFrom.IsEmpty && kind is MaterialKind.Fragrance or MaterialKind.Water)
            contains = [new DeclaredConstituent(kind == MaterialKind.Water ? "Water" : "Fragrance", ShareRange.Unknown, file.Line)];
        if (kind != MaterialKind.Packaging && contains.IsEmpty && madeFrom.IsEmpty)
            throw file.Refuse("material.no-contents", ("id", id));
        if (!contains.IsEmpty && !madeFrom.IsEmpty)
            throw file.Refuse("material.contains-and-made-from");
        return new Material
        {
            Id = id,
            File = file.File,
            Name = file.Required("name", "Clear shea base").Text,
            Kind = kind,
            Listed = ReadListed(file.OptionalText("listed")),
            Contains = contains,
            MadeFrom = madeFrom,
            GramsPerMillilitre = ReadDensity(file.OptionalText("density")),
            DropsPerMillilitre = ReadDrops(file.OptionalText("drops per mL")),
            DropsAreWritten = file.OptionalText("drops per mL") is not null,
            Limits = ReadLimits(file.OptionalMap("limits")),
            Allergens = ReadAllergens(file.OptionalMap("allergens")),
            Packs = MaterialPacks.Read(file),
            Saponification = SoapText.ReadSaponification(file.OptionalText("saponification")),
            SoapName = file.OptionalText("soap name")?.Text,
            Purity = SoapText.ReadPurity(file.OptionalText("purity"), kind),
            Lot = file.OptionalText("lot")?.Text,
            OwnNames = ReadOwnNames(file, contains),
            Trusted = ReadTrust(file.OptionalText("trust"), markets),
            Supplier = file.OptionalText("supplier")?.Text is { Length: > 0 } supplier ? supplier : null,
            ToConfirm = file.OptionalText(ConfirmKey)?.Text is { Length: > 0 } from ? from : null,
            Asked = file.OptionalText(AskedKey) is { } asked ? RecipeFile.ReadDate(asked) : null,
            Swatch = file.OptionalText("swatch"),
            SwatchAt = file.OptionalText("swatch at") is { } at ? ReadSwatchAt(at) : null,
            Scent = file.OptionalText("scent"),
            LabelStock = file.OptionalText("label stock")?.Text,
            MonthsAfterOpening = file.OptionalText("period after opening") is { } months ? ReadMonths(months) : null,
        };
    }

    private static MaterialKind ReadKind(TextNode node) => node.Text.ToLowerInvariant() switch
    {
        "base" => MaterialKind.Base,
        "oil" => MaterialKind.Oil,
        "fragrance" => MaterialKind.Fragrance,
        "colourant" => MaterialKind.Colourant,
        "additive" => MaterialKind.Additive,
        "lye" => MaterialKind.Lye,
        "water" => MaterialKind.Water,
        "packaging" => MaterialKind.Packaging,
        _ => throw node.Refuse("material.kind", ("text", node.Text)),
    };

    private static ListedOrder ReadListed(TextNode? node) => node?.Text switch
    {
        null or "label" => ListedOrder.Label,
        "strict" => ListedOrder.Strict,
        "none" => ListedOrder.None,
        var other => throw node!.Refuse("material.listed", ("other", other)),
    };

    private static ImmutableArray<DeclaredConstituent> ReadContains(MapNode file, ImmutableArray<Node> items)
    {
        var read = items.Select(ReadConstituent).ToImmutableArray();
        var twice = read.GroupBy(c => c.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
            throw new InputException(file.File, twice.Last().Line, "material.constituent-twice", ("name", twice.Key),
                ("figures", Figures(twice)));
        RefuseTooMuch(file.File, read);
        return read;
    }

    // Told here, where the line is known, and before anything is made of it.
    private static void RefuseTooMuch(string file, ImmutableArray<DeclaredConstituent> read)
    {
        var sum = 0m;
        foreach (var constituent in read)
        {
            sum += constituent.Share.Low.Percent;
            if (sum > 100)
            {
                throw new InputException(file, constituent.Line, "material.figures-above-whole", ("constituent", constituent.Name),
                    ("sum", sum.ToString("0.####", CultureInfo.InvariantCulture)));
            }
        }
    }

    private static string Figures(IEnumerable<DeclaredConstituent> same) =>
        same.All(c => c.Share == ShareRange.Unknown)
            ? ""
            : $": {string.Join(" and ", same.Select(c => c.Share == ShareRange.Unknown ? "no figure" : c.Share.ToString()))}";

    private static DeclaredConstituent ReadConstituent(Node node) => node switch
    {
        TextNode { Text.Length: > 0 } text => new DeclaredConstituent(text.Text, ShareRange.Unknown, text.Line),
        MapNode { Entries: [{ Value: TextNode share } only] } =>
            new DeclaredConstituent(only.Key, Read(share, ShareText.Parse), only.Line),
        _ => throw node.Refuse("material.not-a-constituent"),
    };

    private static TrustedLimits? ReadTrust(TextNode? node, MarketBook? markets)
    {
        const string limits = "legal limits";
        if (node is null)
            return null;
        if (node.Text == limits)
            return new(null);
        if (node.Text.StartsWith(limits + " of ", StringComparison.Ordinal)
            && node.Text[(limits.Length + 4)..] is var market && markets?.Find(market).IsValue != false)
            return new(market);
        throw node.Refuse("material.trust", ("text", node.Text));
    }

    private static ImmutableArray<string> ReadOwnNames(MapNode file, ImmutableArray<DeclaredConstituent> contains) =>
        [.. file.Items("own names").Select(node =>
        {
            var text = node as TextNode ?? throw node.Refuse("material.own-name");
            return contains.Any(c => NameIdentity.Same.Equals(c.Name, text.Text))
                ? text.Text
                : throw text.Refuse("material.not-under-contains", ("text", text.Text));
        })];

    private static decimal? ReadDensity(TextNode? node)
    {
        if (node is null)
            return null;
        var parts = node.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts.Length == 2 && parts[1] is "g/mL" or "g/ml" or "g/cm3" or "kg/L"
            && PlainFigure.Read(parts[0]) is > 0 and < 25 and var density)
            return density;
        throw node.Refuse("material.not-a-density", ("text", node.Text));
    }

    private static decimal ReadDrops(TextNode? node) => node is null
        ? Volume.DropsPerMillilitre
        : PlainFigure.Read(node.Text) is >= 1 and <= 200 and var drops
            ? drops
            : throw node.Refuse("material.drops", ("text", node.Text));

    private static Share ReadSwatchAt(TextNode node) =>
        node.Text.EndsWith('%')
            && PlainFigure.Read(node.Text[..^1].Trim()) is >= 0.001m and <= 50m and var percent
            ? Share.FromPercent(percent)
            : throw node.Refuse("material.swatch-at", ("text", node.Text));

    private static ImmutableArray<FragranceLimit> ReadLimits(MapNode? map) => map is null ? [] : [.. map.Entries.Select(e =>
    {
        if (!e.Key.StartsWith("category ", StringComparison.OrdinalIgnoreCase))
            throw new InputException(map.File, e.Line, "material.ifra-category", ("name", e.Key));
        var text = e.Value as TextNode ?? throw e.Value.Refuse("material.limit-share");
        var range = Read(text, ShareText.Parse);
        return new FragranceLimit(e.Key["category ".Length..].Trim().ToUpperInvariant(), range.High);
    })];

    private static ImmutableArray<AllergenShare> ReadAllergens(MapNode? map) => map is null ? [] : [.. map.Entries.Select(e =>
    {
        var text = e.Value as TextNode ?? throw e.Value.Refuse("material.allergen-share");
        return new AllergenShare(e.Key, Read(text, ShareText.Parse));
    })];

    private static T Read<T>(TextNode node, Func<string, Parsed<T>> parse) =>
        parse(node.Text) is { IsValue: true, Value: { } value } ? value : throw Refusal(node, parse(node.Text));

    private static InputException Refusal<T>(TextNode node, Parsed<T> parsed) => node.Refuse(parsed.Problem!);
}
