using System.Collections.Frozen;
using LabelForge.Print.Documents;

namespace LabelForge.ProductPapers;

/// <summary>Papers of one product whose parts a market's law lists: each item is answered by a
/// part of the workshop, or said to be missing.</summary>
internal static class DutyPapers
{
    private static readonly FrozenDictionary<string, Func<PaperItem, PaperCase, PaperSection>> Parts =
        new Dictionary<string, Func<PaperItem, PaperCase, PaperSection>>
        {
            ["description"] = Facts(DescriptionParts.Description),
            ["name"] = DescriptionParts.Name,
            ["category"] = Facts(DescriptionParts.Category),
            ["function"] = Facts(DescriptionParts.Function),
            ["form"] = DescriptionParts.Form,
            ["sold-as"] = Facts(DescriptionParts.SoldAs),
            ["specifications"] = Facts(DescriptionParts.Specifications),
            ["packaging"] = Facts(DescriptionParts.Packaging),
            ["use"] = Facts(DescriptionParts.Used),
            ["undesirable"] = DescriptionParts.Undesirable,
            ["claims"] = Facts(DescriptionParts.Claims),
            ["label"] = DescriptionParts.Label,
            ["composition"] = CompositionParts.Composition,
            ["formulation"] = CompositionParts.Formulation,
            ["ranges"] = CompositionParts.Ranges,
            ["ingredients"] = CompositionParts.Names,
            ["nano"] = Facts(CompositionParts.Nano),
            ["materials"] = CompositionParts.Materials,
            ["papers"] = AttachmentParts.SuppliersPapers,
            ["manufacture"] = MakingParts.Manufacture,
            ["responsible"] = Facts(BusinessParts.Responsible),
            ["origin"] = BusinessParts.Origin,
            ["sold-in"] = BusinessParts.SoldIn,
            ["contact"] = BusinessParts.Contact,
            ["label-contact"] = BusinessParts.LabelContact,
            ["local-address"] = BusinessParts.LocalAddress,
            ["maker"] = BusinessParts.Maker,
            ["signed"] = BusinessParts.Signed,
            ["goes-on"] = BusinessParts.GoesOn,
            ["deadline"] = Facts(BusinessParts.Deadline),
            ["facility"] = Facts(BusinessParts.Facility),
            ["agent"] = BusinessParts.Agent,
            ["facility-number"] = BusinessParts.FacilityNumber,
            ["brands"] = BusinessParts.Brands,
            ["listing-number"] = BusinessParts.ListingNumber,
            ["small-business"] = SmallBusinessTest.Section,
        }.ToFrozenDictionary(StringComparer.Ordinal);

    private static Func<PaperItem, PaperCase, PaperSection> Facts(Func<PaperItem, PaperCase, ImmutableArray<PaperFact>> of) =>
        (item, product) => new(item.Id, item.What, item.At) { Facts = of(item, product) };

    /// <summary>The parts of a paper.</summary>
    /// <exception cref="InputException">The data names a part that is not known, or the product cannot be declared.</exception>
    public static ImmutableArray<PaperSection> Of(PaperDuty duty, PaperCase of) => [.. duty.Items.Select(item => item.From switch
    {
        null => AttachmentParts.ByHand(item, of),
        var from when Parts.TryGetValue(from, out var part) => part(item, of),
        var other =>
            throw new InputException($"markets/{of.Market.Id}/papers.yaml", 0, "papers.no-such-part", ("duty", duty.Id), ("item", item.Id),
                ("other", other), ("list", string.Join(", ", Parts.Keys.Order(StringComparer.Ordinal)))),
    })];
}
