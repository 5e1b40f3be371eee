using System.Collections.Immutable;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Measures;
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
    public static ImmutableArray<MaterialPart> Of(ImmutableArray<FlatShare> formula, IngredientDictionary dictionary) =>
        [.. formula.Select(f => new MaterialPart(f.Material.Name, f.Share, f.Material.Listed, Constituents(f.Material, dictionary)))];

    private static ImmutableArray<Constituent> Constituents(Material material, IngredientDictionary dictionary)
    {
        var named = material.Contains.Select(c => (Line: c, Entry: dictionary.Find(NanoName.Bare(c.Name)), Key: KeyOf(c.Name, dictionary))).ToArray();
        // A fragrance oil is one ingredient: what carries it is part of it.
        if (material.Kind == MaterialKind.Fragrance && named.FirstOrDefault(n => n.Key is Fragrance or Flavor) is { Key: not null } scent)
            return [new Constituent(scent.Key, ShareRange.Unknown, false)];
        var twice = named.GroupBy(n => n.Key, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1);
        if (twice is not null)
        {
            throw new InputException(new Problem(material.File, twice.Last().Line.Line,
                $"\"{twice.First().Line.Name}\" and \"{twice.Last().Line.Name}\" are the same ingredient, {twice.Key}.", "Name it once."));
        }
        return [.. named.Select(n => new Constituent(n.Key, n.Line.Share, n.Entry?.IsColourant ?? false))];
    }

    // A nanomaterial is an ingredient beside the same substance in larger grains, since some labels must tell them apart.
    private static string KeyOf(string written, IngredientDictionary dictionary)
    {
        var bare = NanoName.Bare(written);
        var key = dictionary.Find(bare)?.Key ?? bare;
        return NanoName.IsMarked(written) ? key + NanoName.Mark : key;
    }
}
