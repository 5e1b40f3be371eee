using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>A batch as the composition room wants it: suppliers' lists under the dictionary's names.</summary>
public static class ProductParts
{
    /// <summary>The dictionary's name for a fragrance, one ingredient whatever is in it (21 CFR 701.3(a)).</summary>
    public const string Fragrance = "Fragrance";

    /// <summary>The dictionary's name for a flavour, as the fragrance of a lip product may be called (21 CFR 701.3(a)).</summary>
    public const string Flavor = "Flavor";

    /// <summary>The materials with their constituents under one name each.</summary>
    /// <exception cref="InputException">Two lines of a declaration mean the same ingredient.</exception>
    public static ImmutableArray<MaterialPart> Of(ImmutableArray<ExplodedShare> formula, IngredientDictionary dictionary) =>
        Of(formula, new NameIdentity(dictionary));

    /// <summary>The same with names that other parts of the batch have too.</summary>
    /// <exception cref="InputException">Two lines of a declaration mean the same ingredient.</exception>
    public static ImmutableArray<MaterialPart> Of(ImmutableArray<ExplodedShare> formula, NameIdentity identity) =>
        [
            .. formula.Select(f => new MaterialPart(f.Material.Name, f.Share.Fraction, f.Material.Listed,
                Constituents(f.Material, identity)) { ExactShare = f.Exact })];

    /// <summary>What a fragrance oil is called as one ingredient, where its list names it so:
    /// what carries it is part of it then. Null for anything else.</summary>
    public static string? Scent(Material material, IngredientDictionary dictionary) => material.Kind == MaterialKind.Fragrance
        ? material.Contains.Select(c => dictionary.Find(c.Name)?.Key).FirstOrDefault(k => k is Fragrance or Flavor)
        : null;

    private static ImmutableArray<Constituent> Constituents(Material material, NameIdentity identity)
    {
        if (Scent(material, identity.Dictionary) is { } scent)
            return [new Constituent(scent, ShareRange.Unknown, false)];
        var named = material.Contains.Select(c => (Line: c, Key: identity.KeyOf(c.Name))).ToArray();
        var twice = named.GroupBy(n => n.Key, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
        {
            throw new InputException(material.File, twice.Last().Line.Line, "finished.same-ingredient", ("line", twice.First().Line.Name),
                ("line-2", twice.Last().Line.Name), ("name", twice.Key));
        }
        return [
            .. named.Select(n => new Constituent(n.Key, n.Line.Share,
                identity.Dictionary.Find(NanoName.Bare(n.Line.Name))?.IsColourant ?? false))];
    }
}
