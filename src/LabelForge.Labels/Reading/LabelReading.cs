using System.Collections.Immutable;
using System.Text.RegularExpressions;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>What was read on a label, before anything is judged.</summary>
/// <param name="Text">The label's words.</param>
/// <param name="Identity">What it says the product is.</param>
/// <param name="NetQuantities">Its net quantity statements, the likeliest first.</param>
/// <param name="Ingredients">Its ingredient list.</param>
/// <param name="Business">Who answers for it and where.</param>
/// <param name="Contact">How to reach them.</param>
/// <param name="Lot">Its lot code.</param>
/// <param name="Origin">The country that "Made in" names, or null.</param>
/// <param name="Rest">The text with ingredients, quantity, address, contacts and lot blanked: the words that may claim something.</param>
public sealed partial record LabelReading(
    LabelText Text, IdentityRead? Identity, ImmutableArray<NetQuantityRead> NetQuantities, IngredientListRead? Ingredients, BusinessRead Business,
    ContactRead Contact, LotRead? Lot, string? Origin, string Rest)
{
    /// <summary>The likeliest net quantity statement, or null.</summary>
    public NetQuantityRead? NetQuantity => NetQuantities.FirstOrDefault();

    /// <summary>The addresses on it, of any country.</summary>
    public ImmutableArray<AddressRead> Addresses { get; init; } = [];

    /// <summary>The names of the ingredient list; empty where there is none.</summary>
    public ImmutableArray<IngredientRead> Names => Ingredients?.Items ?? [];

    /// <summary>Reads a label.</summary>
    public static LabelReading Of(LabelText text, IngredientDictionary dictionary)
    {
        var ingredients = IngredientListReader.Read(text.Text, dictionary);
        var taken = new List<TextSpan>();
        if (ingredients is not null)
            taken.Add(ingredients.Span);
        var lot = LotReader.Read(text.Without(taken));
        if (lot is not null)
            taken.Add(lot.Span);
        var contact = ContactReader.Read(text.Without(taken));
        taken.AddRange(contact.Spans);
        var quantities = NetQuantityReader.Read(text.Without(taken));
        taken.AddRange(quantities.Select(q => q.Span));
        var addresses = AddressReader.Read(text.Without(taken));
        var business = BusinessReader.Read(text.Without(taken));
        taken.AddRange(business.Spans);
        var rest = text.Without(taken);
        var identity = IdentityReader.Read(rest, business.Name);
        // "Shea Butter Soap" over the address is what it is where nothing else says so.
        if (identity is null && business is { Name: { } taking, LeadIn: null } && !BusinessReader.IsCorporate(taking) && IdentityReader.Read(taking, null) is not null)
            (identity, business) = (IdentityReader.Read(text.Without(taken.Except(business.Spans)), null), business with { Name = null });
        if (business.Name is null && contact.NameIn(text.Text, identity?.Span) is { } own)
            business = business with { Name = own };
        var origin = MadeIn().Match(text.Text) is { Success: true } made ? made.Groups["country"].Value : null;
        return new(text, identity, quantities, ingredients, business, contact, lot, origin, business.Name is { Length: > 2 } name ? Blank(rest, name) : rest) { Addresses = addresses };
    }

    private static string Blank(string text, string name) => text.Replace(name, new string(' ', name.Length), StringComparison.OrdinalIgnoreCase);

    [GeneratedRegex(@"(?:made|manufactured|produced)\s+in\s+(?:the\s+)?(?<country>\p{Lu}[\p{L}.]+(?:\s\p{Lu}[\p{L}.]+)?)|product\s+of\s+(?:the\s+)?(?<country>\p{Lu}[\p{L}.]+(?:\s\p{Lu}[\p{L}.]+)?)", RegexOptions.IgnoreCase)]
    private static partial Regex MadeIn();
}
