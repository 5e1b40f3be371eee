using LabelForge.Checks.Reading;
using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// Colours where they are listed one by one: by their listed names, and listed for where the product goes; what is not listed
/// may not be used at all (21 U.S.C. 379e; 21 CFR parts 73, 74 and 82). The rules say whether that binds here.
/// </summary>
internal static partial class ColourChecks
{
    private const string NotListed = "FD&C Act section 721(a) (21 U.S.C. 379e(a)); 21 CFR parts 73, 74 and 82 do not list it";

    public static void Check(CheckCase label)
    {
        CoalTar(label);
        if (label.Product is { } product)
        {
            OfComposition(label, product.Finished, product.Kind);
            Limits(label, product.Finished, product.Kind);
            LabelWords(label, label.Label.Cautions,
                product.Finished.Substances.Select(s => ColourOf(s.Name, s.Entry, label.Dictionary.Colours)));
            return;
        }
        foreach (var item in label.Label.Names)
            Named(label, item);
        LabelWords(label, label.Label.Text.Text, label.Label.Names.Select(n => ColourOf(n.Name, n.Known, label.Dictionary.Colours)));
    }

    // Colours that the United States certify batch by batch are the synthetic organic ones, once made of coal tar (21 CFR part 74).
    private static void CoalTar(CheckCase label)
    {
        if (label.Kind is not { Area: AreaOfUse.Eye } || label.Binding("colour.not-permitted/coal-tar") is null)
            return;
        var names = label.Product is { } product ? product.Finished.Substances.Select(s => (s.Name, Known: s.Entry)) : label.Names;
        foreach (var (name,
            known) in names.Where(n => n.Known is { IsColourant: true } && label.Dictionary.Colours.Find(n.Known) is { Certified: true }))
            label.Tell("colour.not-permitted/coal-tar", name, known!.NameIn(label.Market));
    }

    // Words that a listing wants on the label, where it lets the colour into this product.
    private static void LabelWords(CheckCase label, string text, IEnumerable<ColourAdditive?> colours)
    {
        foreach (var listing in colours.OfType<ColourAdditive>().Distinct()
            .Where(l => l.Label.Length > 0 && label.Kind is { } kind && l.Permits(kind) == Applies.Yes))
        {
            var missing = listing.Label.Split(". ", StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(s => s.TrimEnd('.')).Where(s => !text.Contains(s, StringComparison.OrdinalIgnoreCase)).ToArray();
            // Henna's section speaks of the label of henna itself (21 CFR 73.2190(d)).
            if (missing.Length > 0)
                label.TellBy(listing.Basis,
                    listing.Citation == "21 CFR 73.2190" ? "warning.missing/colour-itself" : "warning.missing/colour", "warnings",
                    listing.Name, string.Join(". ", missing) + ".", listing.Citation);
        }
    }

    // Shares that a listing sets, as 3 percent of Red 33 on the lips.
    private static void Limits(CheckCase label, FinishedProduct product, ProductKind kind)
    {
        if (label.Binding("colour.not-permitted") is null)
            return;
        foreach (var share in product.Substances)
        {
            if (ColourOf(share.Name, share.Entry, label.Dictionary.Colours) is not { Most: { } most } listing
                || ProductGroup.Covers(kind, most.Groups) != Applies.Yes || share.High.Percent <= most.Highest.Percent)
                continue;
            var (low, high, limit) = (SubstanceChecks.Rounded(share.Low.Percent, 4), SubstanceChecks.Rounded(share.High.Percent, 4),
                SubstanceChecks.Percent(most.Highest.Percent));
            if (share.Low.Percent > most.Highest.Percent)
                label.TellBy(listing.Basis, "substance.over-limit", label.Where, share.Name, low, "", limit, "", share.From,
                    listing.Citation);
            else
                label.TellBy(listing.Basis, "substance.over-limit/unproven", label.Where, share.Name, high, "", limit, "",
                    $"Ask for the figure of {share.Name} in {share.From}.", listing.Citation);
        }
    }

    // The name in full where the listing forms it so: FD&C Blue No. 1-Aluminum Lake (21 CFR 82.51(b)).
    private static string FullName(ColourAdditive colour) =>
        IsLake(colour) && colour.OtherNames.Length > 1 ? colour.OtherNames[1] : colour.Name;

    private static bool IsLake(ColourAdditive colour) => colour.Name.EndsWith(" Lake", StringComparison.Ordinal);

    private static void OfComposition(CheckCase label, FinishedProduct product, ProductKind kind)
    {
        var materials = product.Materials.Select(f => f.Material).ToArray();
        // Two materials may hold the same colour: it is judged once, and each of them holds one.
        var colours = materials.SelectMany(m => m.Contains.Select(c => (Material: m, c.Name)))
            .Concat(product.Batch.Recipe.MayContain.Select(c => (Material: materials[0], c.Name)))
            .Select(c => (c.Material, c.Name, Entry: label.Dictionary.Find(c.Name)))
            .Select(c => (c.Material, Name: c.Entry?.Key ?? c.Name, c.Entry, Listing: ColourOf(c.Name, c.Entry, label.Dictionary.Colours)))
            .Where(c => c.Listing is not null || c.Entry is { IsColourant: true })
            .ToArray();
        foreach (var (material, name, _, listing) in colours.DistinctBy(c => c.Name))
        {
            if (listing is null)
                label.Tell("colour.not-permitted", material.File, name, Where(null, kind), NotListed);
            else if (listing.Permits(kind) != Applies.Yes)
                label.TellBy(listing.Basis, "colour.not-permitted", material.File, name, Where(listing, kind), listing.Citation);
            else if (listing.Limit.Length > 0 && (kind.Area != AreaOfUse.External || !listing.Only.IsEmpty || listing.Most is not null))
                label.TellBy(listing.Basis, "colour.condition", material.File, name, listing.Limit, listing.Citation);
        }
        foreach (var material in materials.Where(m => m.Kind == MaterialKind.Colourant && colours.All(c => c.Material != m)))
            label.Tell("colour.not-listed", material.File, material.Name, string.Join(", ", material.Contains.Select(c => c.Name)),
                NotListed);
    }

    private static void Named(CheckCase label, IngredientRead item)
    {
        if (Vague().IsMatch(item.Name)
            || (item.Known is null && Fancy().IsMatch(item.Name) && ColourOf(item.Name, null, label.Dictionary.Colours) is null))
        {
            label.Tell("ingredients.colour-name/vague", item.Name, item.Name,
                "Name each colour additive as it is listed, for example Red 40, Iron Oxides or Mica.");
            return;
        }
        var colour = ColourOf(item.Name, item.Known, label.Dictionary.Colours);
        if (colour is null && item.Known?.IsColourant != true)
        {
            // A number that nothing here knows is no name either way.
            if (Certified().IsMatch(item.Name))
                label.Tell("colour.not-permitted/not-listed", item.Name, item.Name,
                    "Its name is formed as those of certified colours are; none of this name is listed for cosmetics.");
            else if (OfIndex().IsMatch(item.Name))
                label.Tell("ingredients.colour-name/number", item.Name, item.Name,
                    "The Colour Index names it so, and the listings do not: ask its maker for the listed name, or use another.");
            else if (NumberAlone().IsMatch(item.Name))
                label.Tell("ingredients.colour-name/number", item.Name, item.Name,
                    "No colour additive listed in the United States is known here by this number: ask its maker for the listed name, or "
                        + "use another.");
            return;
        }
        if (NumberAlone().IsMatch(item.Name))
        {
            label.Tell("ingredients.colour-name/number", item.Name, item.Name, colour is null
                ? "The United States list no colour additive of this number: use another, and name it as listed."
                : $"Write {colour.Name}; the number may follow it: {colour.Name} ({item.Name.ToUpperInvariant()})");
        }
        else if (Odd().Match(item.Name) is { Success: true } && colour is not null)
        {
            label.Tell("ingredients.colour-name/form", item.Name, item.Name, FullName(colour));
        }
        else if (colour is not null && IsLake(colour) && !Radical().IsMatch(item.Name))
        {
            label.Tell("colour.lake-name", item.Name, item.Name, FullName(colour));
        }
        if (colour is null)
            label.Tell("colour.not-permitted/not-listed", item.Name, item.Name,
                "Listed are among others iron oxides, mica, titanium dioxide, ultramarines (not for lips) and the certified colours.");
        else if (label.Kind is { } kind && colour.Permits(kind) != Applies.Yes)
            label.TellBy(colour.Basis, "colour.not-permitted/area", item.Name, colour.Name, Place(kind.Area),
                colour.Limit.Length > 0 ? colour.Limit : $"not listed for it in {colour.Citation}", colour.Citation);
    }

    /// <summary>The listed colour that a name means, in a recipe and on a label alike, or null. A listed name that the dictionary
    /// lacks, or knows for other uses, means that colour too.</summary>
    /// <param name="name">The name.</param>
    /// <param name="known">What the dictionary knows it as, or null.</param>
    /// <param name="listed">The colours listed.</param>
    public static ColourAdditive? ColourOf(string name, Ingredient? known, ColourAdditives listed)
    {
        var bare = Abbreviated().Replace(Parenthesis().Replace(name, ""), "").Trim();
        return listed.Find(name) ?? listed.Find(bare) ?? listed.Find(Lake().Replace(bare, ""))
            ?? (known is { IsColourant: true }
                ? listed.Find(known) ?? known.ColourIndex.Select(c => listed.Find(c.ToString())).FirstOrDefault(c => c is not null)
                : null);
    }

    private static string Where(ColourAdditive? listing, ProductKind kind) =>
        listing is { Only.IsEmpty: false }
            ? $"{Place(kind.Area)}; only in {string.Join(", ", listing.Only.Select(ProductGroup.Phrase))}"
            : Place(kind.Area);

    private static string Place(AreaOfUse area) => area switch
    {
        AreaOfUse.Lips => "on the lips",
        AreaOfUse.Eye => "in the area of the eye",
        _ => "on the outside of the body",
    };

    [GeneratedRegex(@"^(?:\W*)(?:(?:natural|artificial|cosmetic|soap|food|mineral|mica|skin[- ]safe|vegan|synthetic|added|approved|fda[- "
        + @"]approved)\s+)*(?:colou?rs?|colou?rants?|colou?rings?|dyes?|pigments?|colou?r added|food colou?ring|fd\s?&\s?c(?: colou?rs?| "
        + @"dyes?)?|d\s?&\s?c(?: colou?rs?| dyes?)?|tints?"
        + @"|(?:black|blue|brown|green|orange|pink|purple|red|violet|white|yellow|gold|silver)\s+(?:oxides?|pigments?|dyes?|colou?r(?:ant|ing)?s?|lakes?))(?:\s+(?:added|blend|powder|dispersion))?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex Vague();

    // "Ocean Blue Colorant": a name of its maker's before the word.
    [GeneratedRegex(@"^(?:[\p{L}'’-]+\s+){1,4}(?:colou?rants?|dyes?|pigments?|colou?ring|colou?rs?|tints?)\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex Fancy();

    [GeneratedRegex(@"^\W*c\.?\s?i\.?\s?#?\s?[0-9]{5}(?::[0-9])?\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex NumberAlone();

    [GeneratedRegex(@"^(?:(?:ext\.?\s*)?F?D\s?&\s?C\s+|citrus\s+)?(?:red|yellow|blue|green|orange|violet|brown|black)\s+(?:no\.?\s*)?(?:[0-9]{1,2}|B)(?:\s+(?:\w+\s+)?lake)?$", RegexOptions.IgnoreCase)]
    private static partial Regex Certified();

    [GeneratedRegex(@"^(?:acid|basic|direct|disperse|food|mordant|natural|pigment|reactive|solvent|vat)\s+"
        + @"(?:red|yellow|blue|green|orange|violet|brown|black|white)\s+[0-9]{1,3}(?::[0-9])?$", RegexOptions.IgnoreCase)]
    private static partial Regex OfIndex();

    [GeneratedRegex(@"#|\bdye\b|\bcolou?r\b|\bE[0-9]{3}\b", RegexOptions.IgnoreCase)]
    private static partial Regex Odd();

    [GeneratedRegex(@"\(?\bext\.?\s*(?=d)|\b(?:F\s?)?D\s?&\s?C\b|\bNo\.?(?=\s*[0-9])|#", RegexOptions.IgnoreCase)]
    private static partial Regex Abbreviated();

    [GeneratedRegex(@"\b(?:aluminum|aluminium|calcium|barium|sodium|potassium|strontium|zirconium)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Radical();

    [GeneratedRegex(@"\s*[(\[][^)\]]*[)\]]")]
    private static partial Regex Parenthesis();

    [GeneratedRegex(@"\s+(?:aluminum\s+|calcium\s+|barium\s+)?lake$", RegexOptions.IgnoreCase)]
    private static partial Regex Lake();
}
