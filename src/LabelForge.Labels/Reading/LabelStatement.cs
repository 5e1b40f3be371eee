using LabelForge.Declarations;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>
/// What a label says, each part with where it stands and how it is drawn, before anything is judged: as it would be printed
/// (<see cref="Printed"/>), or as it was read on somebody's label (<see cref="Read"/>).
/// </summary>
/// <param name="Text">The label's words, with the heights of their letters where they are known.</param>
/// <param name="Identity">What it says the product is.</param>
/// <param name="NetQuantities">Its net quantity statements, the likeliest first.</param>
/// <param name="Ingredients">Its ingredient list.</param>
/// <param name="Business">Who answers for it and where.</param>
/// <param name="Contact">How to reach them.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Origin">The country that "Made in" names, or null.</param>
/// <param name="Rest">The text with ingredients, quantity, address, contacts and lot blanked: the words that may claim something.</param>
public sealed partial record LabelStatement(
    LabelText Text, IdentityRead? Identity, ImmutableArray<NetQuantityRead> NetQuantities, IngredientListRead? Ingredients,
    BusinessRead Business, ContactRead Contact, LotRead? Lot, string? Origin, string Rest)
{
    /// <summary>The likeliest net quantity statement, or null.</summary>
    public NetQuantityRead? NetQuantity => NetQuantities.FirstOrDefault();

    /// <summary>The addresses on it, of any country.</summary>
    public ImmutableArray<AddressRead> Addresses { get; init; } = [];

    /// <summary>A code that may be the lot, where none is announced; null where none is left.</summary>
    public string? MayBeLot { get; init; }

    /// <summary>A line that may be an address, where none was understood; null where none is.</summary>
    public string? MayBeAddress { get; init; }

    /// <summary>The words at the head of a label that was read, which may be the business's name
    /// or the product's; null where none stand there.</summary>
    public string? Brand { get; init; }

    /// <summary>The dictionary by which its names are known.</summary>
    public required IngredientDictionary Dictionary { get; init; }

    /// <summary>The names of the ingredient list; empty where there is none.</summary>
    public ImmutableArray<IngredientRead> Names => Ingredients?.Items ?? [];

    /// <summary>The workshop's own business and its place, where the label is its own; null where the label was read.</summary>
    public Business? Own { get; init; }

    /// <summary>Whether the symbol of the open jar is drawn; null where words do not tell.</summary>
    public bool? DrawsOpenJar { get; init; }

    /// <summary>Whether the label draws a date of minimum durability.</summary>
    public bool DrawsBestBefore { get; init; }

    /// <summary>The words that warn and direct; of a label that was read all its words, since they may stand anywhere.</summary>
    public string Cautions { get; init; } = Text.Text;

    /// <summary>What a label of a workshop's own says, as it is laid out.</summary>
    /// <param name="content">What it is to say.</param>
    /// <param name="declaration">Its ingredients.</param>
    /// <param name="recipe">The recipe.</param>
    /// <param name="kind">The product's kind.</param>
    /// <param name="workshop">The workshop whose label it is.</param>
    /// <param name="printed">The parts that are printed; null where it is not laid out.</param>
    public static LabelStatement Printed(LabelContent content, Declaration declaration, Recipe recipe, ProductKind kind, Workshop workshop,
        ImmutableHashSet<LabelPart>? printed) =>
        PrintedLabel.Of(content, declaration, recipe, kind, workshop, printed);

    /// <summary>The labels of other products that the same text holds, each read by itself.</summary>
    public ImmutableArray<LabelStatement> Others { get; init; } = [];

    /// <summary>Ingredient lists of other products on this label, which could not be parted from it: they were read by nothing.</summary>
    public ImmutableArray<IngredientListRead> OtherLists { get; init; } = [];

    /// <summary>Words that belong to no part.</summary>
    public ImmutableArray<StrayWords> Strays { get; init; } = [];

    /// <summary>Reads a label. Where the text holds the labels of several products, the first,
    /// and the others in <see cref="Others"/>.</summary>
    public static LabelStatement Read(LabelText text, IngredientDictionary dictionary)
    {
        // Of a drawing the places of the words have told already what is a line.
        if (text.Places.IsEmpty && WrappedLines.Unwrapped(text.Text, dictionary) is var whole && whole != text.Text)
            text = text with { Text = StatementSigns.Parted(whole) };
        var lists = IngredientListReader.ReadAll(text.Text, dictionary);
        var several = SeveralLabels.Others(lists);
        if (several.IsEmpty)
            return ReadOne(text, lists, dictionary);
        var parts = SeveralLabels.Parts(text.Text, lists, several).Select(p => text.Only(p))
            .Select(t => ReadOne(t, IngredientListReader.ReadAll(t.Text, dictionary), dictionary)).ToImmutableArray();
        // Each with a quantity of its own is a label of its own; else it is one label of several things.
        return parts.All(p => p.NetQuantity is not null)
            ? parts[0] with { Text = parts[0].Text with { Unseen = text.Unseen }, Others = parts[1..] }
            : ReadOne(text, lists, dictionary) with { OtherLists = [.. several.Skip(1)] };
    }

    // Names and places are read of a label in capitals as if it had small letters, and told in the letters that it has.
    private static AddressRead AsWritten(AddressRead address, string text) => address with
    {
        Name = Written(text, address.Name),
        Line = string.Join(", ", address.Line.Split(", ").Select(p => Written(text, p))),
    };

    private static BusinessRead AsWritten(BusinessRead business, string text) => business with
    {
        Name = Written(text, business.Name),
        Street = Written(text, business.Street),
        City = Written(text, business.City),
        State = Written(text, business.State),
    };

    private static string? Written(string text, string? name) =>
        name is not null && !text.Contains(name, StringComparison.Ordinal)
            && text.IndexOf(name, StringComparison.OrdinalIgnoreCase) is >= 0 and var at
            ? text.Substring(at, name.Length)
            : name;

    private static LabelStatement ReadOne(LabelText text, ImmutableArray<IngredientListRead> lists, IngredientDictionary dictionary)
    {
        var ingredients = lists.FirstOrDefault();
        text = BrokenWords.Joined(text, lists.Select(l => l.Span));
        // The same list again, in another language or on another label, is read once.
        var taken = lists.Where(l => l == ingredients || (l.Heading is { } h && IngredientListReader.SaysIngredients(h)))
            .Select(l => l.Span).ToList();
        var lot = LotReader.Read(text.Without(taken));
        if (lot is not null)
            taken.Add(lot.Span);
        var contact = ContactReader.Read(text.Without(taken));
        taken.AddRange(contact.Spans);
        var quantities = NetQuantityReader.Read(text.Without(taken));
        taken.AddRange(quantities.Select(q => q.Span));
        var addresses = AddressReader.Read(CapitalLetters.Given(text.Without(taken)));
        var business = BusinessReader.Read(CapitalLetters.Given(text.Without(taken)));
        taken.AddRange(business.Spans);
        // "Peppermint also: Mentha Piperita Oil" over the address is no business.
        bool IsIngredient(string? name) => name is not null
            && dictionary.Find(ListNames.Bare(name[(name.LastIndexOf(':') + 1)..])) is not null;
        addresses = [.. addresses.Select(a => AsWritten(IsIngredient(a.Name) ? a with { Name = null } : a, text.Text))];
        business = AsWritten(IsIngredient(business.Name) ? business with { Name = null } : business, text.Text);
        var rest = text.Without(taken);
        var traders = addresses.Select(a => a.Name).Append(business.Name).OfType<string>().Where(n => LegalForms.Without(n) != n)
            .Select(LegalForms.Without).ToArray();
        var identity = IdentityReader.Read(traders.Aggregate(rest, WholeWords.Blanked), business.Name);
        // "Shea Butter Soap" over the address is what it is where nothing else says so.
        if (identity is null
            && business is { Name: { } taking, LeadIn: null }
            && !BusinessReader.IsCorporate(taking)
            && StandsApart(text.Text, taking) && IdentityReader.Read(taking, null) is not null)
            (identity, business) = (IdentityReader.Read(text.Without(taken.Except(business.Spans)), null), business with { Name = null });
        if (business.Name is null)
            business = business with { Name = NameElsewhere(text, rest, contact, identity, addresses, ingredients) };
        IEnumerable<TextSpan> Said(ImmutableArray<TextSpan> places) =>
            places.SelectMany(p => AddressReader.WithoutSentences(text.Text, p));
        var names = addresses.Select(a => a.Name).Append(business.Name).OfType<string>().ToArray();
        // Streets are named after anything: no address claims.
        return new(text, identity, quantities, ingredients, business, contact, lot, OriginOf(text.Text),
            names.Where(n => n.Length > 2)
                .Aggregate(text.Without([.. taken, .. Said([.. addresses.Select(a => a.Span)])]), WholeWords.Blanked))
        {
            Dictionary = dictionary,
            Addresses = addresses,
            MayBeLot = lot is null
                ? LotReader.Elsewhere(text.Text) ?? Leftovers.Lot(text.Without([.. taken, .. addresses.Select(a => a.Span)]))
                : null,
            MayBeAddress = addresses.IsEmpty ? Leftovers.Address(rest) : null,
            Brand = BusinessReader.NameAtHead(rest, identity?.Span),
            Strays = WordAccount.Of(text, Said([.. taken, .. addresses.Select(a => a.Span)]), identity?.Span,
                [.. Said([.. business.Spans, .. contact.Spans, .. addresses.Select(a => a.Span)])], names, dictionary,
                ingredients?.Items ?? []),
        };
    }

    private const string America = "US";

    // A business's name where it stands beside no address: at its contact, after the list, by its trade or its legal form.
    private static string? NameElsewhere(LabelText text, string rest, ContactRead contact, IdentityRead? identity,
        ImmutableArray<AddressRead> addresses, IngredientListRead? ingredients)
    {
        if (contact.NameIn(text.Text, identity?.Span) is { } own)
            return own;
        // Names beside American addresses are read with them, by BusinessReader.
        if (addresses.FirstOrDefault(a => a.Name is not null) is { } addressed)
            return addressed.Country is null or America ? null : addressed.Name;
        return (ingredients is null ? null : BusinessReader.NameAfter(rest, ingredients.Span.End, identity?.Span))
            ?? (addresses.Length > 0 ? BusinessReader.NameByTrade(rest) : null)
            ?? LegalForms.NameIn(rest);
    }

    // "Made in Canada", "Fabricat în Regatul Unit": words for it with a country after them, or in English any place.
    private static string? OriginOf(string text)
    {
        if (MadeIn().Match(text) is { Success: true } made)
            return made.Groups["country"].Value;
        foreach (Match words in LabelWords.Pattern(LabelWord.MadeIn).Matches(FoldedText.Of(text)))
        {
            var at = words.Index + words.Length;
            var after = text[at..Math.Min(text.Length, at + 48)].TrimStart(' ', ':', '.', '\n');
            if (Countries.FirstIn(after, 3) is { } country)
                return after.Substring(country.Start, country.Length);
            if (Countries.BentIn(after) is { } bent)
                return bent;
        }
        return null;
    }

    // On the line of its address a name is a business's: "Lantern Bay Perfumes, 3 Wharf Sq."
    private static bool StandsApart(string text, string name) =>
        text.LastIndexOf(name, StringComparison.OrdinalIgnoreCase) is var at
            && (at < 0 || text[(at + name.Length)..].TrimStart(' ', '.', '*', '"') is "" or ['\n', ..]);

    [GeneratedRegex(@"(?:made|manufactured|produced)\s+in\s+(?:the\s+)?(?<country>\p{Lu}[\p{L}.]+(?:\s\p{Lu}[\p{L}.]+)?)|product\s+of\s+(?:the\s+)?(?<country>\p{Lu}[\p{L}.]+(?:\s\p{Lu}[\p{L}.]+)?)", RegexOptions.IgnoreCase)]
    private static partial Regex MadeIn();
}
