namespace LabelForge.Ingredients;

/// <summary>One ingredient: what each market calls it, what identifies it, and what it is for.</summary>
/// <param name="Us">The name on a US label, such as <c>Ricinus Communis (Castor) Seed Oil</c>; the name shown to people here.</param>
/// <param name="Eu">The name on an EU or UK label, such as <c>Ricinus Communis Seed Oil</c>, <c>Aqua</c>, <c>CI 77491</c>.</param>
/// <param name="Inci">A further international name that suppliers write; null where it is one of the two.</param>
/// <param name="Canada">The name the Canadian schedule gives in place of the INCI name; null where there is none.</param>
/// <param name="Cas">CAS numbers; empty where none is known here.</param>
/// <param name="Ec">EC numbers; empty where none is known here.</param>
/// <param name="ColourIndex">Colour Index numbers; empty for what is no colour.</param>
/// <param name="Everyday">What people call it: castor oil, vitamin E.</param>
/// <param name="Roles">What it is for; at least one.</param>
/// <param name="Flags">What the law or the label needs to know.</param>
/// <param name="Saponification">mg KOH/g; null for what is not saponified, or where no figure is held.</param>
/// <param name="Group">The file of the dictionary it stands in, such as <c>waxes</c>.</param>
/// <param name="Source">Where the names and numbers come from.</param>
/// <param name="Basis">Whether its names stand in an official list that was read, numbers and saponification value aside.</param>
public sealed record Ingredient(
    string Us,
    string Eu,
    string? Inci,
    string? Canada,
    ImmutableArray<CasNumber> Cas,
    ImmutableArray<string> Ec,
    ImmutableArray<ColourIndexNumber> ColourIndex,
    ImmutableArray<string> Everyday,
    ImmutableArray<IngredientRole> Roles,
    IngredientFlags Flags,
    SaponificationValue? Saponification,
    string Group,
    string Source,
    Basis Basis)
{
    /// <summary>Whether it is listed as a colour additive.</summary>
    public bool IsColourant => Flags.HasFlag(IngredientFlags.Colourant);

    /// <summary>Whether it is a fragrance substance named one by one.</summary>
    public bool IsAllergen => Flags.HasFlag(IngredientFlags.Allergen);

    /// <summary>One name for one substance: colours that share a US name are told apart by their Colour Index numbers.</summary>
    public string Key => IsColourant && ColourIndex.Length == 1 ? $"{Us} ({ColourIndex[0]})" : Us;

    /// <summary>The name a label in this market carries.</summary>
    public string NameIn(Market market) => IngredientNaming.Of(market).NameOf(this);

    /// <summary>Every name it answers to in full; letter case and repeats aside.</summary>
    public IEnumerable<string> Names =>
        new[] { Us, Eu, Inci, Canada }.OfType<string>()
            .Concat(ColourIndex.Select(c => c.ToString()))
            .Concat(Everyday)
            .Distinct(StringComparer.OrdinalIgnoreCase);

    /// <inheritdoc/>
    public override string ToString() => Us;
}
