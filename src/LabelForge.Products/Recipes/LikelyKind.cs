using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;

namespace LabelForge.Recipes;

/// <summary>What a material is probably bought as, told from the names on its supplier's paper: a
/// proposal, for the maker to confirm.</summary>
public static class LikelyKind
{
    // Flakes and fillers of pearl pigments stand in this file of the dictionary although they are no colours by themselves.
    private const string Colourants = "colourants";

    private static readonly ImmutableArray<string> Scents = ["fragrance-constituents", "essential-oils"];
    private static readonly ImmutableArray<string> Fats = ["oils-and-butters", "waxes"];

    // What pearl pigments are coated or set with, though they are sold by themselves for other uses.
    private static readonly ImmutableArray<string> Fillers = ["Silica", "Alumina"];

    /// <summary>The kind, or null where the names do not tell.</summary>
    /// <param name="names">The names of the paper, matched.</param>
    public static MaterialKind? Of(IEnumerable<NameMatch> names)
    {
        var all = names.ToArray();
        // A misspelt name still tells the kind where but one name is near; what it is stays for the maker to settle.
        var found = all.Select(m => m.Found ?? (m.Nearest is [var near] ? near : null)).OfType<Ingredient>().ToArray();
        if (all.Length == 0 || found.Length < all.Length)
            return null;
        return found switch
        {
            [{ Us: "Water" }] => MaterialKind.Water,
            _ when found.All(i => i.Us is "Sodium Hydroxide" or "Potassium Hydroxide") => MaterialKind.Lye,
            _ when found.Any(i => i.IsColourant) && found.All(i => i.Group == Colourants || Fillers.Contains(i.Us)) =>
                MaterialKind.Colourant,
            _ when Scents.Contains(found[0].Group) => MaterialKind.Fragrance,
            _ when found.All(i => Fats.Contains(i.Group) || i.Roles.Contains(IngredientRole.Antioxidant))
                && found.Any(i => Fats.Contains(i.Group)) => MaterialKind.Oil,
            [_] => MaterialKind.Additive,
            _ => MaterialKind.Base,
        };
    }
}
