using System.Collections.Immutable;
using System.Globalization;
using LabelForge.Checks.Reading;
using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Lookup;

/// <summary>What was found.</summary>
public enum FoundKind
{
    /// <summary>A product.</summary>
    Product,

    /// <summary>Something bought.</summary>
    Material,

    /// <summary>A bottle: one supplier's lot that came in.</summary>
    Bottle,

    /// <summary>A batch, by its lot.</summary>
    Lot,

    /// <summary>Somebody who bought or was given pieces.</summary>
    Buyer,

    /// <summary>A complaint.</summary>
    Complaint,
}

/// <summary>One thing found.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Key">What it is asked for by: a product's name, a material's id, a bottle's number, a lot, a buyer.</param>
/// <param name="Title">What people call it.</param>
/// <param name="Detail">What tells it from others.</param>
/// <param name="On">The day it is of; null for what has none.</param>
public sealed record Found(FoundKind Kind, string Key, string Title, string Detail, DateOnly? On = null);

/// <summary>Finds anything in a workshop by a few letters of it: products, supplies, bottles, lots, buyers, complaints.</summary>
public static class FindAnything
{
    /// <summary>How many of a kind are given.</summary>
    public const int MostOfKind = 12;

    /// <summary>Everything that can be found, read once for many words.</summary>
    /// <param name="workshop">The workshop.</param>
    /// <param name="snapshot">Its books; null where there are none.</param>
    public static ImmutableArray<Found> Of(Workshop workshop, BooksSnapshot? snapshot) => [.. All(workshop, snapshot)];

    /// <summary>What has every word of a text, whatever their order, capitals and accents; the nearest first, and the latest.</summary>
    /// <param name="all">Everything that can be found.</param>
    /// <param name="text">A few letters or words.</param>
    public static ImmutableArray<Found> In(ImmutableArray<Found> all, string text)
    {
        // A code that a scanner reads holds the lot, and the lot is what is looked for.
        if (PieceCode.LotOf(text) is { IsValue: true } code)
            text = code.Value.ToString();
        var words = Plain(text).Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
            return [];
        return [.. all.Select(f => (Found: f, Rank: Rank(f, words))).Where(f => f.Rank is not null)
            .OrderBy(f => f.Rank).ThenByDescending(f => f.Found.On).ThenBy(f => f.Found.Title, StringComparer.OrdinalIgnoreCase).Select(f => f.Found)
            .GroupBy(f => f.Kind).OrderBy(g => g.Key).SelectMany(g => g.Take(MostOfKind))];
    }

    private static IEnumerable<Found> All(Workshop workshop, BooksSnapshot? snapshot)
    {
        foreach (var recipe in workshop.RecipeIds.Select(id => Read(workshop, id)).OfType<Recipe>())
        {
            foreach (var name in recipe.Variants.IsEmpty ? [recipe.Name] : recipe.Variants.Select(v => v.Name).ToArray())
                yield return new(FoundKind.Product, recipe.Variants.IsEmpty ? recipe.Id : $"{recipe.Id}/{name}", name, string.Join(", ", new[] { recipe.Identity, recipe.Variants.IsEmpty || name == recipe.Name ? null : recipe.Name }.OfType<string>()));
        }
        foreach (var material in workshop.Materials.Values)
            yield return new(FoundKind.Material, material.Id, material.Name, material.Supplier ?? material.Kind.ToString().ToLowerInvariant());
        if (snapshot is null)
            yield break;
        foreach (var receipt in snapshot.Receipts)
        {
            var name = workshop.Materials.GetValueOrDefault(receipt.Material)?.Name ?? receipt.Material;
            yield return new(FoundKind.Bottle, snapshot.Bottle(receipt.Id), $"{snapshot.Bottle(receipt.Id)} {name}", string.Join(", ", new[] { receipt.Supplier, receipt.SupplierLot is { } lot ? $"lot {lot}" : null }.OfType<string>()), receipt.On);
        }
        foreach (var batch in snapshot.Batches)
            yield return new(FoundKind.Lot, batch.Lot, $"{batch.Lot} {batch.Product}", "", batch.On);
        foreach (var buyer in snapshot.Sales.GroupBy(s => s.To, StringComparer.OrdinalIgnoreCase))
            yield return new(FoundKind.Buyer, buyer.Key, buyer.Key, $"{buyer.Sum(s => s.Pieces)}", buyer.Max(s => s.On));
        foreach (var complaint in snapshot.Complaints)
            yield return new(FoundKind.Complaint, complaint.Id.ToString(CultureInfo.InvariantCulture), complaint.From, complaint.What, complaint.On);
    }

    // 0 where a name begins so, 1 where a word of it does, 2 where it is inside; null where a word is nowhere.
    private static int? Rank(Found found, string[] words)
    {
        var (title, all) = (Plain(found.Title), Plain($"{found.Title} {found.Key} {found.Detail}"));
        if (!words.All(w => all.Contains(w, StringComparison.Ordinal)))
            return null;
        return title.StartsWith(words[0], StringComparison.Ordinal) ? 0 : words.All(w => $" {title}".Contains($" {w}", StringComparison.Ordinal)) ? 1 : 2;
    }

    // Small letters without accents, with a space for every other sign: what two spellings of one name share.
    private static string Plain(string text) => string.Concat(FoldedText.Of(text).Select(c => char.IsLetterOrDigit(c) || c is '-' ? c : ' '));

    private static Recipe? Read(Workshop workshop, string id)
    {
        try
        {
            return workshop.Recipe(id);
        }
        catch (InputException)
        {
            return null;
        }
    }
}
