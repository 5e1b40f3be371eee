using LabelForge.Checks.Words;
using LabelForge.Print.Documents;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Quantities;
using LabelForge.Records.Books;
using LabelForge.Records.Money;

namespace LabelForge.ProductPapers;

/// <summary>What a paper says of a product as it is sold: what it is, how it looks, what it is
/// packed in, how it is used, what is said of it.</summary>
internal static class DescriptionParts
{
    /// <summary>What ties a file to a product.</summary>
    public static ImmutableArray<PaperFact> Description(PaperItem item, PaperCase of) =>
    [
        PaperFact.Of("name", "Name", of.Name, of.Product.Recipe.File),
        PaperFact.OrMissing("identity", "What it is", of.Product.Recipe.Identity, $"{of.Product.Recipe.File}: identity: ...",
            of.Product.Recipe.File),
        PaperFact.Of("recipe", "Recipe", of.Product.Name, of.Product.Recipe.File),
        PaperFact.Of("kind", "Kind of product", of.Product.Kind.Name, of.Product.Recipe.File, of.Product.Kind.Id),
        ItemNumber(of),
        PaperFact.Of("net", "Net content", of.Job.Content.NetQuantity),
    ];

    /// <summary>The name alone.</summary>
    public static PaperSection Name(PaperItem item, PaperCase of) =>
        BusinessParts.One(item, "name", "Name", of.Name, "", of.Product.Recipe.File);

    /// <summary>Its category, in our words and in those of the office.</summary>
    public static ImmutableArray<PaperFact> Category(PaperItem item, PaperCase of) =>
    [
        PaperFact.Of("name", "Name", of.Name, of.Product.Recipe.File),
        PaperFact.Of("kind", "Kind of product", $"{of.Product.Kind.Name}, {Use(of.Product.Kind)}", of.Product.Recipe.File,
            of.Product.Kind.Id),
        OfficialCategory(of),
    ];

    private static PaperFact OfficialCategory(PaperCase of) =>
        of.Own.Category is null && of.Office is { } office && of.OfOffice is { } known
        ? PaperFact.Of("category", "Official category, proposed by the kind of product", known.Name, office.Citation)
        : PaperFact.OrMissing("category", "Official category", of.Own.Category,
            $"{(of.Office is null ? "The official list is not held here" : "None of the official list is proposed for this kind")}: "
                + $"choose there, and write it down in {PaperAnswers.FileName}: products: {{ {of.Product.Name}: {{ category: ... }} }}",
            PaperAnswers.FileName);

    /// <summary>What it does, and whether it stays on.</summary>
    public static ImmutableArray<PaperFact> Function(PaperItem item, PaperCase of) =>
    [
        PaperFact.OrMissing("function", "Function", of.Product.Recipe.Identity, $"{of.Product.Recipe.File}: identity: ...",
            of.Product.Recipe.File),
        PaperFact.Of("use", "Left on or rinsed off", Use(of.Product.Kind), null,
            of.Product.Kind.Use == ProductUse.LeaveOn ? "leave-on" : "rinse-off"),
    ];

    /// <summary>Its form.</summary>
    public static PaperSection Form(PaperItem item, PaperCase of) =>
        BusinessParts.One(item, "form", "Form", $"{of.Product.Kind.Name}: {(of.Product.Kind.IsSolid ? "solid" : "liquid or cream")}", "",
            of.Product.Recipe.File);

    /// <summary>Whether it is a cosmetic in the law's sense, by how it is sold.</summary>
    public static ImmutableArray<PaperFact> SoldAs(PaperItem item, PaperCase of) =>
        [of.Product.Recipe.SoldAs == Recipes.SoldAs.Soap
            ? PaperFact.Of("sold-as", "Sold as",
                "soap, for cleaning only. Soap in that sense is no cosmetic, and is neither registered nor listed: check that its "
                    + "cleansing comes from the alkali salts of fatty acids alone, and that nothing else is said of it.",
                of.Product.Recipe.File, "soap")
            : PaperFact.Of("sold-as", "Sold as", "cosmetic", of.Product.Recipe.File, "cosmetic")];

    /// <summary>Characteristics: what the recipe says, and what a person has looked at and measured.</summary>
    public static ImmutableArray<PaperFact> Specifications(PaperItem item, PaperCase of)
    {
        string Where(string key) => $"{PaperAnswers.FileName}: products: {{ {of.Product.Name}: {{ {key}: ... }} }}";
        return [
            PaperFact.Of("form", "Form", of.Product.Kind.IsSolid ? "solid" : "liquid or cream", of.Product.Recipe.File),
            PaperFact.Of("net", "Net content of a piece", of.Job.Content.NetQuantity, of.Product.Recipe.File),
            PaperFact.OrMissing("looks", "What it looks like", of.Own.Looks, Where("looks"), PaperAnswers.FileName),
            PaperFact.OrMissing("smells", "What it smells like", of.Own.Smells, Where("smells"), PaperAnswers.FileName),
            PaperFact.OrMissing("ph", "pH, as measured", of.Own.Ph,
                $"{Where("ph")}; for a product without water, write why it has none.", PaperAnswers.FileName),
            of.Product.Recipe.Words is { PeriodAfterOpening: null, BestBefore: null }
                ? PaperFact.Lacking("keeps", "How long it keeps",
                    $"{of.Product.Recipe.File}: period after opening: 12 months, or best before: 2028-05; by a test of stability.")
                : PaperFact.Of("keeps", "How long it keeps", of.Job.Content.PeriodAfterOpening ?? of.Job.Content.BestBefore ?? "",
                    of.Product.Recipe.File),
        ];
    }

    /// <summary>What it is packed in.</summary>
    public static ImmutableArray<PaperFact> Packaging(PaperItem item, PaperCase of)
    {
        var packed = CostsFile.Of(of.Workshop).Packaging
            .Select(p => of.Workshop.Materials.GetValueOrDefault(p.Material)?.Name ?? p.Material).ToArray();
        return [
            PaperFact.OrMissing("package", "Package", of.Product.Recipe.Package is { } package ? Size(package) : null,
                $"{of.Product.Recipe.File}: package: ...", of.Product.Recipe.File),
            PaperFact.OrMissing("packed-in", "Packed in", string.Join(", ", packed),
                $"{CostsFile.FileName}: packaging: [ {{ use: clear-bag, count: 1 }} ]", CostsFile.FileName),
            AttachmentParts.OrMissing(of, "specification", "Purity and stability of the material", "packaging",
                "The packaging supplier's specification."),
        ];
    }

    /// <summary>How it is used.</summary>
    public static ImmutableArray<PaperFact> Used(PaperItem item, PaperCase of) =>
    [
        PaperFact.Of("use", "Use", Use(of.Product.Kind), null, of.Product.Kind.Use == ProductUse.LeaveOn ? "leave-on" : "rinse-off"),
        PaperFact.Of("area", "Where it is used",
            of.Product.Kind.Area switch
            {
                AreaOfUse.Lips => "the lips or a mucous membrane",
                AreaOfUse.Eye => "the area of the eye",
                _ => "outside parts of the body",
            }),
        PaperFact.Of("directions", "Directions on the label", of.Job.Content.Directions ?? "none"),
        PaperFact.Of("warnings", "Warnings on the label",
            of.Job.Content.Warnings.IsEmpty ? "none" : string.Join(' ', of.Job.Content.Warnings), null, of.Job.Content.Warnings),
        .. of.Product.Recipe.Facts.Settled
            .Select(f => PaperFact.Of(f.Key, $"Settled by the maker: {f.Key}", f.Value ? "yes" : "no", of.Product.Recipe.File,
                f.Value)),
    ];

    /// <summary>Complaints in the books.</summary>
    public static PaperSection Undesirable(PaperItem item, PaperCase of)
    {
        if (of.History is not { } history)
            return new(item.Id, item.What, item.At)
            {
                Facts = [PaperFact.Lacking("complaints", "Complaints", "No books are kept, so nothing is known.")],
            };
        return new(item.Id, item.What, item.At)
        {
            Facts = [PaperFact.Of("complaints", "Complaints in the books",
                Invariant($"{history.Complaints.Count}, of these {history.Complaints.Count(c => c.Serious)} serious; {history.Batches} batches in all"), "the books", history.Complaints.Count)],
            Table = history.Complaints.Count == 0
                ? null
                : new PaperTable([new("on", "told on", 1), new("what", "what", 5), new("serious", "serious", 0.8)],
                [.. history.Complaints
                    .Select(c => (ImmutableArray<PaperValue>)[new(c.On.ToIso()), new(c.What),
                        new(c.Serious ? "yes" : "no", c.Serious)])]),
        };
    }

    /// <summary>What is claimed, and the proof of each.</summary>
    public static ImmutableArray<PaperFact> Claims(PaperItem item, PaperCase of)
    {
        var (recipe, proofs) = (of.Product.Recipe, AttachmentParts.Of(of, "claim-proof").ToArray());
        // What the look puts on the front is mostly a scent or a place; it stands here where it says something of the product.
        string[] claims = [.. recipe.Claims.Distinct()
            .Where(c => !recipe.SaidOnFront.Contains(c) || Enum.GetValues<Makes>().Any(m => WordCheck.Claims(c, m)))];
        return [
            .. claims.Select((claim,
                i) => proofs.FirstOrDefault(p => p.Note?.Contains(claim, StringComparison.OrdinalIgnoreCase) == true) is { } proof
                ? PaperFact.Of($"claim-{i + 1}", $"\"{claim}\"", AttachmentParts.Shown(proof), "the books")
                : PaperFact.Lacking($"claim-{i + 1}", $"\"{claim}\"",
                    $"Its proof, where its nature or effect calls for one: "
                        + $"attach it to {of.Product.Name} as claim-proof, with the claim as its note.")),
            .. claims.Length == 0 ? [PaperFact.Of("claims", "Claims", "none in the recipe", of.Product.Recipe.File)] : (PaperFact[])[],
        ];
    }

    /// <summary>The label as it is laid out.</summary>
    public static PaperSection Label(PaperItem item, PaperCase of) => new(item.Id, item.What, item.At)
    {
        Facts = of.Job.Fit switch
        {
            Fit.Fits =>
                [PaperFact.Of("label", "Design", of.Job.Fit.OrRefuse().Design.Id),
                    .. item.Paper is { } kind
                        ? [AttachmentParts.OrMissing(of, "photo", "Photograph of the packaging", kind,
                            "A photograph of the packed product.")]
                        : (PaperFact[])[]],
            Fit.DoesNotFit not => [PaperFact.Lacking("label", "Label", $"It does not fit its design: {not.Wrong} {not.Write}")],
            _ => [],
        },
        Labels = [.. new[] { of.Job.Fit }.Concat(of.Job.Companions.Values).OfType<Fit.Fits>().Select(f => f.Layout)],
    };

    private static PaperFact ItemNumber(PaperCase of) => LotSymbol.ItemNumber(of.Workshop, of.Product.Recipe) is { } gtin
        ? PaperFact.Of("gtin", "Item number (GTIN)", gtin.Digits, of.Product.Recipe.File)
        : PaperFact.Of("gtin", "Item number (GTIN)", "none", null, "");

    private static string Size(Package package) => Invariant($"{package.Shape.ToString().ToLowerInvariant()}, {string.Join(" by ", new[] { "width", "height", "depth", "diameter" }.Where(package.Sides.ContainsKey).Select(side => string.Create(CultureInfo.InvariantCulture, $"{side} {package.Sides[side].Millimetres:0.#} mm")))}");

    private static string Use(ProductKind kind) => kind.Use == ProductUse.LeaveOn ? "left on" : "rinsed off";
}
