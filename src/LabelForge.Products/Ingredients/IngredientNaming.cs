namespace LabelForge.Ingredients;

/// <summary>How a market names ingredients. A market.yaml names one; a way that is new is one more class here.</summary>
public abstract class IngredientNaming
{
    private static readonly Dictionary<string, IngredientNaming> Ways = new(StringComparer.Ordinal)
    {
        ["american"] = new American(),
        ["european"] = new European(),
        ["canadian"] = new Canadian(),
    };

    /// <summary>Whether scent has a name of its own, Parfum or Aroma, and no other.</summary>
    public virtual bool NamesScent => false;

    /// <summary>Whether colours stand by their Colour Index numbers.</summary>
    public virtual bool NumbersColours => false;

    /// <summary>The way of a market.</summary>
    /// <exception cref="Measures.InputException">Its market.yaml names none that is known here.</exception>
    public static IngredientNaming Of(Market market) =>
        Ways.GetValueOrDefault(market.Ways.IngredientNames) ?? throw new Measures.InputException(
            $"{market.Id}/market.yaml", 0, "market.naming", ("written", market.Ways.IngredientNames),
            ("known", string.Join(", ", Ways.Keys)));

    /// <summary>The name that an ingredient carries.</summary>
    public abstract string NameOf(Ingredient ingredient);

    /// <summary>Whether a name on a label is that of another market.</summary>
    /// <param name="name">The name as it stands.</param>
    /// <param name="isKitchenName">Whether it was guessed from what the kitchen calls it.</param>
    /// <param name="known">What it names.</param>
    public abstract bool IsForeign(string name, bool isKitchenName, Ingredient known);

    /// <summary>Whether a name is an everyday one where the market's names come first, and will do.</summary>
    /// <inheritdoc cref="IsForeign"/>
    public virtual bool IsEveryday(string name, bool isKitchenName, Ingredient known) => false;

    // A full stop at a name's end is the sentence's as often as the name's: "Alcohol Denat."
    private static bool Same(string a, string b) =>
        string.Equals(a.Trim().TrimEnd('.'), b.TrimEnd('.'), StringComparison.OrdinalIgnoreCase);

    private static bool Holds(string name, string part) => name.Contains(part, StringComparison.OrdinalIgnoreCase);

    // The botanical name may carry the common one in parentheses, and another language's name may stand beside it.
    private static bool IsNamed(string name, Ingredient known, string wanted) =>
        Same(name, wanted) || Holds(name, wanted) || Same(name, known.Inci ?? wanted) || (known.Us.Contains('(') && Same(name, known.Us))
        || (!known.Everyday.Any(e => Same(e, name)) && known.Us == known.Eu && Same(name, known.Us));

    // Aqua, Parfum, a Latin name alone: known, but not the name that a label there carries (21 CFR 701.3(c)).
    private sealed class American : IngredientNaming
    {
        public override string NameOf(Ingredient ingredient) => ingredient.Us;

        public override bool IsForeign(string name, bool isKitchenName, Ingredient known) =>
            Same(name, known.Eu) && !Same(name, known.Us) && !known.Everyday.Any(e => Same(e, name));

        public override bool IsEveryday(string name, bool isKitchenName, Ingredient known) =>
            (isKitchenName || known.Everyday.Any(e => Same(e, name))) && !Same(name, known.Us);
    }

    // The common names of the glossary (Regulation (EC) No 1223/2009, Articles 19(6) and 33).
    private sealed class European : IngredientNaming
    {
        public override bool NamesScent => true;

        public override bool NumbersColours => true;

        public override string NameOf(Ingredient ingredient) => ingredient.Eu;

        public override bool IsForeign(string name, bool isKitchenName, Ingredient known) =>
            known.Us != "Fragrance" && !IsNamed(name, known, known.Eu);
    }

    // Of the schedule's things the EU name will do, or English and French together: Aqua, or Water/Eau.
    private sealed class Canadian : IngredientNaming
    {
        public override string NameOf(Ingredient ingredient) => ingredient.Canada ?? ingredient.Eu;

        public override bool IsForeign(string name, bool isKitchenName, Ingredient known) =>
            (isKitchenName || known.Everyday.Any(e => Same(e, name)) || known.Canada is not null)
            && !IsNamed(name, known, NameOf(known)) && !Same(name, known.Eu) && !name.Contains('/');
    }
}
