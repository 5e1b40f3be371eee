using LabelForge.Checks.Reading;
using LabelForge.Lots;
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
/// <remarks>
/// What a person named is folded here, name by name, since no two stores fold accents alike; the books are then asked for the
/// last lots and bottles of those names, however many there are.
/// </remarks>
public sealed class FindAnything
{
    /// <summary>How many of a kind are given.</summary>
    public const int MostOfKind = 12;

    // Enough to be put in order by how near they are.
    private const int Candidates = 200;

    private readonly Workshop _workshop;
    private readonly ImmutableArray<Found> _told;
    private readonly ImmutableArray<(string Name, string Plain)> _products;
    private readonly ImmutableArray<(string Name, string Plain)> _bought;
    private readonly ImmutableArray<(string Name, string Plain)> _buyers;

    /// <summary>What is read once for many words: the workshop, and the names in its books.</summary>
    /// <param name="books">Its books; null where there are none.</param>
    public FindAnything(Workshop workshop, IBooks? books)
    {
        _workshop = workshop;
        _told = [.. OfWorkshop(workshop),
            .. (books?.ComplaintsSince(DateOnly.MinValue) ?? [])
                .Select(c => new Found(FoundKind.Complaint, c.Id.ToString(CultureInfo.InvariantCulture), c.From, c.What, c.On))];
        _products = [.. (books?.Names(NameList.Products) ?? []).Select(p => (p, Plain(p)))];
        _buyers = [.. (books?.Names(NameList.Buyers) ?? []).Select(p => (p, Plain(p)))];
        _bought = [.. (books?.Names(NameList.Suppliers) ?? []).Select(s => (s, Plain(s))),
            .. (books?.KeptMaterials() ?? []).Select(m => (m, Plain($"{m} {NameOf(m)}")))];
    }

    /// <summary>What has every word of a text, whatever their order, capitals and accents; the nearest first, and the latest.</summary>
    /// <param name="books">The books; null where there are none.</param>
    /// <param name="text">A few letters or words, or a code as a scanner reads it.</param>
    public ImmutableArray<Found> In(IBooks? books, string text) =>
        Words(text) is { Length: > 0 } words ? In([.. _told, .. books is null ? [] : OfBooks(books, words)], text) : [];

    /// <summary>What of these has every word of a text; the nearest first, and the latest.</summary>
    /// <param name="all">All that may be found.</param>
    /// <param name="text">A few letters or words.</param>
    public static ImmutableArray<Found> In(ImmutableArray<Found> all, string text) => Words(text) is not { Length: > 0 } words ? [] :
    [
        .. all.Select(f => (Found: f, Rank: Rank(f, words))).Where(f => f.Rank is not null)
            .OrderBy(f => f.Rank).ThenByDescending(f => f.Found.On).ThenBy(f => f.Found.Title, StringComparer.OrdinalIgnoreCase)
            .Select(f => f.Found)
            .GroupBy(f => f.Kind).OrderBy(g => g.Key).SelectMany(g => g.Take(MostOfKind)),
    ];

    private IEnumerable<Found> OfBooks(IBooks books, string[] words)
    {
        foreach (var receipt in books.BottlesWith(Sought(words, _bought), Near(words, _bought), Candidates))
        {
            var bottle = books.Bottle(receipt.Id);
            yield return new(FoundKind.Bottle, bottle, $"{bottle} {NameOf(receipt.Material)}",
                string.Join(", ", new[] { receipt.Supplier, receipt.SupplierLot is { } lot ? $"lot {lot}" : null }.OfType<string>()),
                receipt.On);
        }
        foreach (var batch in books.LotsWith(Sought(words, _products), Near(words, _products), Candidates))
            yield return new(FoundKind.Lot, batch.Lot, $"{batch.Lot} {batch.Product}", "", batch.On);
        string[] buyers = [.. _buyers.Where(b => words.All(b.Plain.Contains)).OrderByDescending(b => IsNear(b.Plain, words))
            .Take(Candidates).Select(b => b.Name)];
        foreach (var buyer in (buyers.Length == 0 ? [] : books.BoughtBy(buyers).AsEnumerable())
            .GroupBy(b => b.Key, StringComparer.OrdinalIgnoreCase))
            yield return new(FoundKind.Buyer, buyer.Key, buyer.Key, $"{buyer.Sum(b => b.Value.Pieces)}", buyer.Max(b => b.Value.Last));
    }

    private static IReadOnlyList<SoughtWord> Sought(string[] words, ImmutableArray<(string Name, string Plain)> names) =>
        [
            .. words.Select(w => new SoughtWord(w,
                [.. names.Where(n => n.Plain.Contains(w, StringComparison.Ordinal)).Select(n => n.Name)]))];

    private static string[] Near(string[] words, ImmutableArray<(string Name, string Plain)> names) =>
        [.. names.Where(n => words.Any(w => IsNear(n.Plain, [w]))).Select(n => n.Name)];

    private static bool IsNear(string plain, string[] words) => words.All(w => $" {plain}".Contains($" {w}", StringComparison.Ordinal));

    private string NameOf(string material) => _workshop.Materials.GetValueOrDefault(material)?.Name ?? material;

    private static IEnumerable<Found> OfWorkshop(Workshop workshop)
    {
        foreach (var recipe in workshop.RecipeIds.Select(workshop.RecipeOrNone).OfType<Recipe>())
        {
            foreach (var name in recipe.Each.Select(r => r.Name))
                yield return new(FoundKind.Product, recipe.Variants.IsEmpty ? recipe.Id : $"{recipe.Id}/{name}", name,
                    string.Join(", ",
                        new[] { recipe.Identity, recipe.Variants.IsEmpty || name == recipe.Name ? null : recipe.Name }.OfType<string>()));
        }
        foreach (var material in workshop.Materials.Values)
            yield return new(FoundKind.Material, material.Id, material.Name,
                material.Supplier ?? material.Kind.ToString().ToLowerInvariant());
    }

    // A code that a scanner reads holds the lot, and the lot is what is looked for.
    private static string[] Words(string text) =>
        Plain(PieceCode.LotOf(text) is { IsValue: true } code ? code.Value.ToString() : text)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);

    // 0 where a name begins so, 1 where a word of it does, 2 where it is inside; null where a word is nowhere.
    private static int? Rank(Found found, string[] words)
    {
        var (title, all) = (Plain(found.Title), Plain($"{found.Title} {found.Key} {found.Detail}"));
        if (!words.All(w => all.Contains(w, StringComparison.Ordinal)))
            return null;
        return title.StartsWith(words[0], StringComparison.Ordinal) ? 0 : IsNear(title, words) ? 1 : 2;
    }

    // Small letters without accents, with a space for every other character: what two spellings of one name share.
    private static string Plain(string text) =>
        string.Concat(FoldedText.Of(text).Select(c => char.IsLetterOrDigit(c) || c is '-' ? c : ' '));
}
