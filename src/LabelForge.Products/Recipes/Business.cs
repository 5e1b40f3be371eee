using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>What the business whose name stands on the label did (21 CFR 701.12(c)).</summary>
public enum BusinessRole
{
    /// <summary>It made the product.</summary>
    Maker,

    /// <summary>It sells what another made: "Distributed by".</summary>
    Distributor,

    /// <summary>Another made it on its order: "Manufactured for".</summary>
    Packer,
}

/// <summary>Where a business is.</summary>
public sealed record Place(string? Street, string? City, string? Region, string? Postcode, string? Country)
{
    /// <summary>The place in one line, as a postal address in the country runs; empty where nothing is known.</summary>
    public string Line => Recipes.Postcode.StandsBeforeTown(Country)
        ? Joined(", ", Street, Joined(" ", Postcode, City, Region))
        : Joined(", ", Street, City, Joined(" ", Region, Postcode));

    private static string Joined(string between, params IEnumerable<string?> parts) => string.Join(between, parts.Where(HasText));

    private static bool HasText(string? text) => !string.IsNullOrWhiteSpace(text);
}

/// <summary>The business of a workshop, from workshop.yaml.</summary>
public sealed record Business(
    string Name, BusinessRole Role, Place Place, string? Phone, string? Web, string? Email,
    string Market, string? GtinPrefix, string Currency)
{
    /// <summary>The language of standard phrases: en, fr, de, es, it, nl or pl.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Who answers for the product in a market where that is another, by the market's code.</summary>
    public ImmutableDictionary<string, string> Responsible { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>How the labels of the range are to look, as far as is written.</summary>
    public LookWish Look { get; init; } = LookWish.None;

    /// <summary>How to reach the server that keeps the books, where they are not kept in the folder; null for the folder.</summary>
    public string? Records { get; init; }

    /// <summary>What the marks of the workshop's scale are apart; null where nothing says.</summary>
    public Mass? Scale { get; init; }

    /// <summary>The moulds in the workshop; empty where nothing says.</summary>
    public ImmutableArray<MouldSet> Moulds { get; init; } = [];

    /// <summary>The ids of the label stock that lies in the workshop, what is used up first in front; empty where nothing says.</summary>
    public ImmutableArray<string> LabelStock { get; init; } = [];

    /// <summary>The sales tax that the maker reckons with; null where none is written.</summary>
    public SalesTax? SalesTax { get; init; }

    /// <summary>The zone in which times are shown; null for the machine's own.</summary>
    public TimeZoneInfo? Zone { get; init; }

    /// <summary>A moment of universal time as it is written down, shown in a zone with what that is apart.</summary>
    /// <param name="zone">The zone; null for the machine's own.</param>
    /// <param name="written">The moment, in universal time.</param>
    /// <param name="format">How it is written.</param>
    public static string InZone(TimeZoneInfo? zone, string written, string format) =>
        DateTime.TryParseExact(written, format, CultureInfo.InvariantCulture,
            DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var moment)
            ? TimeZoneInfo.ConvertTime(new DateTimeOffset(moment, TimeSpan.Zero), zone ?? TimeZoneInfo.Local)
                .ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture)
            : written;

    /// <summary>The responsible person's name and address in a market (Regulation (EC) No
    /// 1223/2009, Article 19(1)(a)); null where it is the business itself.</summary>
    public string? ResponsibleIn(Market market) => Responsible.GetValueOrDefault(market.Id);

    /// <summary>The name with what the law wants before it where the business is not the maker (21 CFR 701.12(c)).</summary>
    public string NameLine => Role switch
    {
        BusinessRole.Distributor => $"Distributed by {Name}",
        BusinessRole.Packer => $"Manufactured for {Name}",
        _ => Name,
    };

    /// <summary>Every way to reach the business, in one line; null where there is none.</summary>
    public string? ContactLine
    {
        get
        {
            var ways = new[] { Phone, Web, Email }.Where(w => !string.IsNullOrWhiteSpace(w)).ToArray();
            return ways.Length == 0 ? null : string.Join(" · ", ways);
        }
    }

    /// <summary>Reads a workshop.yaml.</summary>
    /// <param name="markets">The markets that may be named.</param>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static Business Read(MapNode file, MarketBook markets)
    {
        file.OnlyKeys("workshop.yaml", "business", "role", "place", "contact", "market", "gtin prefix", "currency", "language",
            "responsible", "records", "look", "scale", "moulds", "label stock", "sales tax", "zone");
        var place = file.OptionalMap("place")?.OnlyKeys("A place", "street", "city", "region", "postcode", "country");
        var contact = file.OptionalMap("contact")?.OnlyKeys("A contact", "phone", "web", "email");
        var prefix = file.OptionalText("gtin prefix");
        return new Business(
            file.Required("business", "Your trading name").Text,
            ReadRole(file.OptionalText("role")),
            new Place(place?.OptionalText("street")?.Text, place?.OptionalText("city")?.Text, place?.OptionalText("region")?.Text,
                place?.OptionalText("postcode")?.Text, place?.OptionalText("country")?.Text),
            contact?.OptionalText("phone")?.Text, contact?.OptionalText("web")?.Text, contact?.OptionalText("email")?.Text,
            ReadMarket(file.OptionalText("market"), markets), prefix is null ? null : CompanyPrefix.Read(prefix),
            file.OptionalText("currency")?.Text ?? "USD")
        {
            Language = ReadLanguage(file.OptionalText("language")),
            Responsible = ReadResponsible(file, markets),
            Records = file.OptionalText("records")?.Text,
            Look = LookWish.Read(file),
            Moulds = MouldSet.ReadAll(file),
            LabelStock = [.. file.Texts("label stock").Select(t => t.Text)],
            SalesTax = SalesTax.Read(file),
            Zone = ReadZone(file.OptionalText("zone")),
            Scale = ReadScale(file.OptionalText("scale")),
        };
    }

    private static Mass? ReadScale(TextNode? node)
    {
        if (node is null)
            return null;
        var amount = Amount.Parse(node.Text);
        return amount.IsValue && amount.Value.IsMass && amount.Value.AsMass() is { Grams: > 0 and <= 1000 } step
            ? step
            : throw node.Refuse("business.scale-marks", ("text", node.Text));
    }

    private static TimeZoneInfo? ReadZone(TextNode? node) => node is null ? null
        : TimeZoneInfo.TryFindSystemTimeZoneById(node.Text, out var zone) ? zone
        : throw node.Refuse("business.not-a-zone", ("text", node.Text));

    private static string ReadLanguage(TextNode? node) => node is null ? "en"
        : Phrases.Languages.Contains(node.Text) ? node.Text
        : throw node.Refuse("business.not-a-language", ("text", node.Text), ("list", string.Join(", ", Phrases.Languages)));

    private static ImmutableDictionary<string, string> ReadResponsible(MapNode file, MarketBook markets) =>
        file.OptionalMap("responsible")?.OnlyKeys("The responsible persons", [.. markets.Ids]) is { } map
            ? map.Entries.ToImmutableDictionary(e => e.Key, e => map.Required(e.Key, "Name, Street 1, 1000 City, Country").Text)
            : ImmutableDictionary<string, string>.Empty;

    private static string ReadMarket(TextNode? node, MarketBook markets) => node is null
        ? markets.Ids[0]
        : markets.Ids.Contains(node.Text)
        ? node.Text
        : throw node.Refuse("market.unknown", ("text", node.Text), ("listed", markets.Listed));

    private static BusinessRole ReadRole(TextNode? node) => node?.Text switch
    {
        null or "maker" => BusinessRole.Maker,
        "distributor" => BusinessRole.Distributor,
        "packer" => BusinessRole.Packer,
        var other => throw node!.Refuse("business.not-a-role", ("other", other)),
    };
}
