using LabelForge.Checks.Reading;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Subjects;

/// <summary>Whether an ingredient list is there, under its heading, and by the names that the market wants.</summary>
internal static partial class IngredientChecks
{
    // Where so many names are unknown, the list was misread or is none.
    private const int MostUnknown = 30;

    // How far after the list names are looked for, and how many are no chance.
    private const int MostAfter = 500;
    private const int FewestAfter = 2;
    private static readonly string[] Separators = [",", ";", "•", "·", "|", "/", "+", "\n", " - ", " – ", " — ", ". "];

    public static void Check(CheckCase label)
    {
        if (label.Product is { } product)
        {
            label.Take(product.Declaration.Findings);
            foreach (var open in Unconfirmed(product))
                label.Tell("ingredients.unconfirmed", open.File, open.Name, open.ToConfirm!, open.File);
        }
        if (label.Label.Ingredients is not { Items.IsEmpty: false } list)
        {
            // A soap that may be exempt is asked; one that is sold as soap need not list.
            if (label.SoldAs is null && label.Binding("ingredients.missing/soap-unsaid") is not null)
                label.Tell("ingredients.missing/soap-unsaid", label.Where);
            else
                label.Tell("ingredients.missing", label.Where);
            return;
        }
        if (label.Label.Own is not null)
            return;
        if (list.Heading is null)
            label.Tell("ingredients.heading", "ingredients");
        else if (label.Rules.FigureIfAny("ingredients.heading") is { } word
            && IsSet(word)
            && !FoldedText.Of(list.Heading).Contains("ingr", StringComparison.Ordinal))
            label.Tell(IngredientListReader.SaysIngredients(list.Heading) ? "ingredients.heading/translated" : "ingredients.heading",
                "ingredients", list.Heading);
        var naming = IngredientNaming.Of(label.Market);
        foreach (var item in list.Items.Where(i => IsUnknown(i, label)).Take(MostUnknown))
        {
            if (!naming.NumbersColours || !(ColourAndNumber().IsMatch(item.Name) || ColourInWords().IsMatch(item.Name))
                || !label.Tell("ingredients.colour-name/words", item.Name, item.Name))
                Unknown(label, item);
        }
        Foreign(label, list);
        GoesOn(label, list);
        MayContain(label, list);
    }

    // Only make-up in shades may list colours that it may not hold, at this door as for a recipe.
    private static void MayContain(CheckCase label, IngredientListRead list)
    {
        if (label.Product is null && label.Kind is { IsMakeup: false } kind
            && list.Items.Any(i => i.MayContain && (i.Known is { IsColourant: true } || ColourIndexNumber.OnLabel(i.Name) is not null))
            && label.Rules.FigureIfAny("colours.may-contain-to-match") is null
            && label.Rules.FigureIfAny("colours.may-contain") is { } shades)
            label.Take([label.Market.Book.Every.Rules["colour.may-contain-not-permitted"]
                .Find("ingredients", label.Market.Id, kind.Name, shades.Citation)]);
    }

    // What the shop made itself is asked for what it was made from.
    private static IEnumerable<Material> Unconfirmed(RecipeFacts product)
    {
        var (seen, waiting) = (new HashSet<string>(StringComparer.Ordinal),
            new Queue<Material>(product.Batch.Lines.Select(l => l.Material)));
        while (waiting.TryDequeue(out var material))
        {
            if (!seen.Add(material.Id))
                continue;
            if (material.ToConfirm is not null)
                yield return material;
            foreach (var part in material.MadeFrom.Select(m => product.Workshop.Materials.GetValueOrDefault(m.Material))
                .OfType<Material>())
                waiting.Enqueue(part);
        }
    }

    // Where only custom asks for a heading, any will do.
    private static bool IsSet(LawEntry heading) => !heading.Citation.Contains("common practice", StringComparison.OrdinalIgnoreCase);

    private static bool IsUnknown(IngredientRead item, CheckCase label)
    {
        // Where colours are listed one by one, they are judged apart.
        var apart = label.Rules.Rule("ingredients.colour-name/vague") is not null
            && (ColourChecks.ColourOf(item.Name, item.Known, label.Dictionary.Colours) is not null || ColourWord().IsMatch(item.Name));
        return (item.Known is null || (Saponified().IsMatch(item.Name) && label.Rules.Rule("ingredients.name-everyday") is not null))
            && !apart;
    }

    private static void Unknown(CheckCase label, IngredientRead item)
    {
        if (OtherIngredients().IsMatch(item.Name) && label.Tell("ingredients.name-unknown/other-ingredients", item.Name, item.Name))
            return;
        var saponified = Saponified().IsMatch(item.Name);
        var near = saponified ? [] : label.Dictionary.Suggest(item.Name, 1);
        label.Tell("ingredients.name-unknown/label", item.Name, item.Name, saponified
            ? "Name each oil and the alkali, or the soap that they make: Sodium Olivate, Sodium Cocoate."
            : near.IsEmpty
            ? "Check its spelling, or ask the supplier for the INCI name."
            : $"Perhaps {near[0].NameIn(label.Market)} is meant. If not, ask the supplier for the INCI name.");
    }

    // The numbers that a colour may have: its own, or where one name stands for several colours, those of each.
    private static string[] Numbers(Ingredient colour) => colour.ColourIndex.Length > 0
        ? [.. colour.ColourIndex.Select(c => $"{c}")]
        : [.. colour.Eu.Split('/').Where(n => n.StartsWith("CI ", StringComparison.Ordinal))];

    // Names that are known and are not those that a label of this market carries.
    private static void Foreign(CheckCase label, IngredientListRead list)
    {
        var naming = IngredientNaming.Of(label.Market);
        foreach (var scent in list.Items
            .Where(i => naming.NamesScent && i.Known is { Us: "Fragrance" } && !Holds(i.Name, "parfum") && !Holds(i.Name, "aroma")))
            label.Tell("ingredients.name-foreign/parfum", scent.Name, scent.Name);
        foreach (var colour in list.Items
            .Where(i => naming.NumbersColours
                && i.Known is { IsColourant: true } known
                && Numbers(known).Length > 0
                && !Holds(i.Name, "ci ")
                && !Holds(i.Name, "ci7") && !Numbers(known).Any(c => Holds(i.Name, Digits(c)))))
        {
            var certified = label.Dictionary.Colours.Find(colour.Known!) is { Certified: true };
            label.Tell(certified ? "ingredients.colour-name" : "ingredients.colour-name/mineral", colour.Name, colour.Name,
                string.Join(" or ", Numbers(colour.Known!)));
        }
        var foreign = list.Items.Where(i => i.Known is { IsColourant: false } known && naming.IsForeign(i.Name, i.IsKitchenName, known))
            .ToArray();
        foreach (var plant in foreign.Where(i => IsBotanicalWithoutSpecies(i, naming)
            && label.Binding("ingredients.name-foreign/botanical") is not null))
            label.Tell("ingredients.name-foreign/botanical", plant.Name, plant.Name, naming.NameOf(plant.Known!));
        foreign = [
            .. foreign.Where(i => !IsBotanicalWithoutSpecies(i, naming) || label.Binding("ingredients.name-foreign/botanical") is null)];
        if (foreign.Length > 0)
            label.Tell("ingredients.name-foreign", "ingredients", string.Join(", ", foreign.Select(i => i.Name)),
                string.Join(", ", foreign.Select(i => naming.NameOf(i.Known!)).Distinct()));
        var everyday = list.Items
            .Where(i => i.Known is { IsColourant: false } known
                && !Saponified().IsMatch(i.Name)
                && naming.IsEveryday(i.Name, i.IsKitchenName, known)).ToArray();
        if (everyday.Length > 0)
            label.Tell("ingredients.name-everyday", "ingredients", string.Join(", ", everyday.Select(i => i.Name)),
                string.Join(", ", everyday.Select(i => naming.NameOf(i.Known!)).Distinct()));
    }

    // Genus and species are the first two words of a plant's INCI name.
    private static bool IsBotanicalWithoutSpecies(IngredientRead item, IngredientNaming naming) =>
        item.Known!.Flags.HasFlag(IngredientFlags.Botanical) && naming.NameOf(item.Known).Split(' ') is [var genus, var species, _, ..]
        && !(Holds(item.Name, genus) && Holds(item.Name, species));

    // Names that stand just after the list belong to it: what was not read was not judged, and that is said.
    private static void GoesOn(CheckCase label, IngredientListRead list)
    {
        var text = label.Label.Text.Text;
        var after = text[list.Span.End..Math.Min(text.Length, list.Span.End + MostAfter)];
        var read = list.Items.Select(i => i.Known?.Key).ToHashSet();
        var names = after.Split(Separators, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Where(p => IsFormalName(p, read, label.Dictionary)).Distinct(StringComparer.OrdinalIgnoreCase).ToArray();
        if (names.Length >= FewestAfter && label.Label.OtherLists.IsEmpty)
            label.Tell("ingredients.list-goes-on", "ingredients", list.Items[^1].Name, string.Join(", ", names));
    }

    // Shea butter and honey stand in any praise; names of the nomenclature do not.
    private static bool IsFormalName(string name, HashSet<string?> read, IngredientDictionary dictionary) =>
        dictionary.Find(name) is { } known
            && !read.Contains(known.Key)
            && !known.Everyday.Any(e => string.Equals(e, name, StringComparison.OrdinalIgnoreCase));

    private static string Digits(string number) => string.Concat(number.Where(char.IsDigit));

    private static bool Holds(string name, string part) => name.Contains(part, StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"^(?:and\s+)?other\s+ingredients?$", RegexOptions.IgnoreCase)]
    private static partial Regex OtherIngredients();

    [GeneratedRegex(@"\bsaponified\b|\bsoap base\b|\boils of\b", RegexOptions.IgnoreCase)]
    private static partial Regex Saponified();

    [GeneratedRegex(@"\b(?:colou?r(?:ant|ing)?s?|dyes?|pigments?|f?d\s?&\s?c)\b|\bc\.?i\.?\s?[0-9]{5}", RegexOptions.IgnoreCase)]
    private static partial Regex ColourWord();

    // A colour and a number in the larger languages, as the trade calls dyes.
    [GeneratedRegex(@"^(?:acid|basic|food|lebensmittel|(?:f?d\s?&\s?c))?\s*(?:red|pink|blue|green|yellow|orange|purple|violet|brown|black"
        + "|rot|rosa|blau|grün|gelb|schwarz|braun|rouge|bleu|vert|jaune|noir|rojo|azul|verde|amarillo|negro|rosso|blu|giallo|nero"
        + @"|rood|blauw|groen|geel|zwart|czerwony|niebieski|zielony|żółty|vermelho|amarelo)\s+(?:no?\.?|nr\.?|n°)?\s*[0-9]{1,3}$",
        RegexOptions.IgnoreCase)]
    private static partial Regex ColourAndNumber();

    // "Colorante rojo", "Ocean Blue Colourant", "roter Farbstoff": a word for what colours, with others or alone.
    [GeneratedRegex(@"^(?:[\p{L}'’-]+\s+){0,4}(?:colou?r(?:ant|ing)s?|colorante?s?|coloranti|dyes?|pigments?|pigmento|farbstoffe?|pigmente?|kleurstof(?:fen)?"
        + @"|barwniki?|barviv[oa]|färgämnen?|farvestof(?:fer)?|corantes?)(?:\s+[\p{L}'’-]+){0,3}\W*$", RegexOptions.IgnoreCase)]
    private static partial Regex ColourInWords();
}
