namespace LabelForge.Ingredients;

/// <summary>The two lists of fragrance allergens that have held one after the other, the second holding the first.</summary>
public enum AllergenList
{
    /// <summary>No fragrance allergen has to be named.</summary>
    None,

    /// <summary>The 26 names of Annex III to Regulation (EC) No 1223/2009 before Regulation (EU) 2023/1545.</summary>
    Short,

    /// <summary>Those and the ones that Regulation (EU) 2023/1545 added.</summary>
    Extended,
}

/// <summary>A fragrance substance, or a group under one name, that is named on a label above a threshold.</summary>
/// <param name="Name">The name that stands on the label, such as <c>Linalool</c> or <c>Lavandula Oil/Extract</c>.</param>
/// <param name="Members">Further names that count towards it: <c>Geranial</c> and <c>Neral</c> for Citral.</param>
/// <param name="Cas">CAS numbers; empty where Annex III gives none.</param>
/// <param name="List">The first list that holds it: short or extended.</param>
/// <param name="Reference">Its reference number in Annex III.</param>
/// <param name="Source">Where the row comes from.</param>
/// <param name="Basis">Whether the entry was read.</param>
public sealed record FragranceAllergen(
    string Name, ImmutableArray<string> Members, ImmutableArray<CasNumber> Cas, AllergenList List, string Reference, string Source,
    Basis Basis)
{
    /// <summary>The label name and the members.</summary>
    public IEnumerable<string> Names => Members.Prepend(Name);
}
