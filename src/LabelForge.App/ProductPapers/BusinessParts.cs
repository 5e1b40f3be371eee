using LabelForge.Print.Documents;

namespace LabelForge.ProductPapers;

/// <summary>What a paper says of who makes a product, who answers for it and where.</summary>
internal static class BusinessParts
{
    private const string Workshop = "workshop.yaml";

    /// <summary>Who answers for the product in the market, and the product's name.</summary>
    public static ImmutableArray<PaperFact> Responsible(PaperItem item, PaperCase of)
    {
        var named = of.Business.ResponsibleIn(of.Market);
        var inside = of.IsInside(item.Inside);
        return [
            named is not null ? PaperFact.Of("name", "Name and address", named, Workshop)
                : inside == false
                ? PaperFact.Lacking("name", "Name and address",
                    $"The business is in {of.Business.Place.Country}: somebody in {of.Market.Name} has to answer for "
                        + $"the product. {Workshop}: responsible: {{ {of.Market.Id}: \"Name, Street 1, 1000 City, Country\" }}")
                : PaperFact.Of("name", "Name and address", Address(of.Business), Workshop),
            PaperFact.OrMissing("contact", "How to reach them", of.Business.ContactLine,
                $"{Workshop}: contact: {{ phone: ..., email: ... }}", Workshop),
            PaperFact.Of("product", "The product's name, as on its label", of.Name, of.Product.Recipe.File),
        ];
    }

    /// <summary>Where it was made, where that is another country.</summary>
    public static PaperSection Origin(PaperItem item, PaperCase of) => new(item.Id, item.What, item.At)
    {
        Facts = [of.IsInside(item.Inside) switch
        {
            true =>
                PaperFact.Of("origin", "Country of origin", $"Not imported: the business is in {of.Business.Place.Country}.", Workshop),
            false =>
                PaperFact.Of("origin", "Country of origin", of.Product.Recipe.Words.Origin ?? of.Business.Place.Country!,
                    of.Product.Recipe.Words.Origin is null ? Workshop : of.Product.Recipe.File),
            null => PaperFact.Lacking("origin", "Country of origin", $"{Workshop}: place: {{ country: FR }}, two letters."),
        }],
    };

    /// <summary>Where it is sold.</summary>
    public static PaperSection SoldIn(PaperItem item, PaperCase of) =>
        One(item, "states", "States", string.Join(", ", of.Answers.SoldIn), $"{PaperAnswers.FileName}: sold in: [FR, DE]",
            PaperAnswers.FileName);

    /// <summary>The person to contact.</summary>
    public static PaperSection Contact(PaperItem item, PaperCase of) =>
        One(item, "person", "Name, telephone, email", of.Answers.Contact,
            $"{PaperAnswers.FileName}: contact person: \"Name, +1 555 0100, name@example.com\"", PaperAnswers.FileName);

    /// <summary>The contact that stands on the label.</summary>
    public static PaperSection LabelContact(PaperItem item, PaperCase of) =>
        One(item, "contact", "As on the label", of.Job.Content.Contact ?? of.Business.ContactLine,
            $"{Workshop}: contact: {{ email: ... }}", Workshop);

    /// <summary>An address inside the market.</summary>
    public static PaperSection LocalAddress(PaperItem item, PaperCase of) => One(item, "address", "Name and address",
        of.Business.ResponsibleIn(of.Market) ?? (of.IsInside(item.Inside) == true ? Address(of.Business) : null),
        $"The business is not in {of.Market.Name}: the importer's. {Workshop}: responsible: {{ {of.Market.Id}: \"Name, 1 Street, City\" }}", Workshop);

    /// <summary>Who made it, where that is another.</summary>
    public static PaperSection Maker(PaperItem item, PaperCase of) => of.Business.Role == BusinessRole.Maker
        ? One(item, "maker", "Maker",
            of.Business.ResponsibleIn(of.Market) is null && of.IsInside(item.Inside) != false
                ? $"The same: {of.Business.Name}"
                : Address(of.Business), "", Workshop)
        : One(item, "maker", "Maker", of.Answers.Maker, $"{PaperAnswers.FileName}: maker: \"Name, Street 1, 1000 City, Country\"",
            PaperAnswers.FileName);

    /// <summary>Who signs.</summary>
    public static PaperSection Signed(PaperItem item, PaperCase of) =>
        One(item, "signs", "Name and title", of.Answers.Signs,
            $"{PaperAnswers.FileName}: signs: \"Name, owner\"; and the signature on the form.", PaperAnswers.FileName);

    /// <summary>Whether sales go on.</summary>
    public static PaperSection GoesOn(PaperItem item, PaperCase of) =>
        One(item, "goes-on", "To go on", of.Answers.GoesOn switch { true => "yes", false => "no", null => null },
            $"{PaperAnswers.FileName}: sales go on: yes", PaperAnswers.FileName);

    /// <summary>The last day to notify.</summary>
    public static ImmutableArray<PaperFact> Deadline(PaperItem item, PaperCase of)
    {
        var days = of.Rules.Figure("notification.days");
        var count = (int)((LawFigure)days.Value).Figure;
        return [of.History?.FirstSale is { } first
            ? PaperFact.Of("until", "At the latest",
                $"{first.AddDays(count).ToIso()}, {count} days after {first.ToIso()}, the first sale in the books, "
                    + $"wherever it was.", days.Citation, first.AddDays(count))
            : PaperFact.Of("until", "At the latest",
                $"{count} days after the first sale in {of.Market.Name}; no sale of it is in the books.", days.Citation)];
    }

    /// <summary>The facility that is registered.</summary>
    public static ImmutableArray<PaperFact> Facility(PaperItem item, PaperCase of) =>
    [
        PaperFact.OrMissing("name", "Name", of.Business.Name, Workshop, Workshop),
        of.Business.Place is { Street: { Length: > 0 }, City: { Length: > 0 } }
            ? PaperFact.Of("address", "Physical address", $"{of.Business.Place.Line}, {of.Business.Place.Country}", Workshop)
            : PaperFact.Lacking("address", "Physical address",
                $"{Workshop}: place: {{ street: ..., city: ..., region: ..., postcode: ... }}; a post office box is none."),
        PaperFact.OrMissing("email", "Email", of.Business.Email, $"{Workshop}: contact: {{ email: ... }}", Workshop),
        PaperFact.OrMissing("telephone", "Telephone", of.Business.Phone, $"{Workshop}: contact: {{ phone: ... }}", Workshop),
    ];

    /// <summary>The agent of a facility abroad.</summary>
    public static PaperSection Agent(PaperItem item, PaperCase of) => of.IsInside(item.Inside) == true
        ? One(item, "agent", "Agent", $"None is needed: the facility is in {of.Business.Place.Country}.", "", Workshop)
        : One(item, "agent", "Agent", of.Answers.Agent,
            $"The facility is abroad, or its country is not written. {PaperAnswers.FileName}: agent: \"Name, address, telephone\"",
            PaperAnswers.FileName);

    /// <summary>The facility's number.</summary>
    public static PaperSection FacilityNumber(PaperItem item, PaperCase of) =>
        One(item, "number", "Number", of.Answers.Facility,
            $"It is assigned at the registration. {PaperAnswers.FileName}: facility number: ...", PaperAnswers.FileName);

    /// <summary>The brand names.</summary>
    public static PaperSection Brands(PaperItem item, PaperCase of) =>
        One(item, "brands", "Brands", string.Join(", ", of.Answers.Brands.Prepend(of.Business.Name).Distinct()), "",
            of.Answers.Brands.IsEmpty ? Workshop : $"{Workshop} and {PaperAnswers.FileName}");

    /// <summary>The product's listing number.</summary>
    public static PaperSection ListingNumber(PaperItem item, PaperCase of) =>
        One(item, "number", "Number", of.Own.Listing ?? "None is written: it is assigned at the first listing.", "",
            of.Own.Listing is null ? null : PaperAnswers.FileName);

    /// <summary>The business's name and address in one line.</summary>
    internal static string Address(Business business) =>
        string.Join(", ", new[] { business.Name, business.Place.Line, business.Place.Country }.Where(t => !string.IsNullOrWhiteSpace(t)));

    internal static PaperSection One(PaperItem item, string key, string what, string? text, string missing, string? source) =>
        new(item.Id, item.What, item.At) { Facts = [PaperFact.OrMissing(key, what, text, missing, source)] };
}
