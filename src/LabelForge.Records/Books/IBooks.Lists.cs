namespace LabelForge.Records.Books;

/// <content>Lists in pages, what is looked for by a few letters, and whole lists read one page after the other.</content>
public partial interface IBooks
{
    /// <summary>A page of the batches that stand: the last begun before a number, the last one first; without what they froze.</summary>
    /// <param name="before">The number that the page ends before; null for the last ones.</param>
    /// <param name="most">How many at most.</param>
    /// <param name="recipe">Of this recipe alone; null for all.</param>
    IReadOnlyList<LotInHand> Lots(int? before, int most, string? recipe = null);

    /// <summary>Whether a batch of a product that stands was begun, and whether one was finished.</summary>
    (bool Begun, bool Finished) WasMade(string recipe, string? variant);

    /// <summary>The different names in a list's entries that stand: what batches are of, who supplied, who bought.</summary>
    IReadOnlyList<string> Names(NameList list);

    /// <summary>The last batches in whose lot or product's name all words are: those of a name
    /// that is near first; without what they froze.</summary>
    /// <param name="near">The products' names that stand before the others.</param>
    /// <param name="most">How many at most.</param>
    IReadOnlyList<Batch> LotsWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most);

    /// <summary>The last bottles in whose number, supplier's lot, material or supplier all words
    /// are: those of a material that is near first.</summary>
    /// <param name="words">The words; their names are materials' ids and suppliers.</param>
    /// <param name="near">The materials that stand before the others.</param>
    /// <param name="most">How many at most.</param>
    IReadOnlyList<Receipt> BottlesWith(IReadOnlyList<SoughtWord> words, IReadOnlyCollection<string> near, int most);

    /// <summary>What people bought and were given: pieces, and the day of the last; by the name that their sales have.</summary>
    IReadOnlyDictionary<string, (int Pieces, DateOnly Last)> BoughtBy(IReadOnlyCollection<string> buyers);

    /// <summary>Every entry of a kind that stands, the first one first, read in pages: what is
    /// held at once does not grow with the list.</summary>
    IEnumerable<T> Each<T>() where T : BookEntry;

    /// <summary>The entries of a list that were struck, and what stands instead of each; null where nothing does.</summary>
    IReadOnlyDictionary<int, int?> Moved(string list);

    /// <summary>The numbers of entries as they were first written, for those that were not written first themselves.</summary>
    IReadOnlyDictionary<int, int> Firsts(string list, IReadOnlyCollection<int> entries);

    /// <summary>What is left of receipts that stand, by their numbers.</summary>
    IReadOnlyDictionary<int, decimal> LeftOf(IReadOnlyCollection<int> receipts);

    /// <summary>Every recipe that a batch froze, once, with its digest, in the order of the digests; read one after the other.</summary>
    IEnumerable<(string Digest, string Json)> FrozenTexts();
}

/// <summary>Which names are asked for.</summary>
public enum NameList
{
    /// <summary>What batches are of.</summary>
    Products,

    /// <summary>Who supplied.</summary>
    Suppliers,

    /// <summary>Who bought or was given pieces.</summary>
    Buyers,
}

/// <summary>A word that is looked for: it is in an entry where the entry's code holds it, or
/// where one of these names is the entry's.</summary>
/// <param name="Plain">The word in small letters, without accents.</param>
/// <param name="Names">The names that it is in, however they are spelt.</param>
public sealed record SoughtWord(string Plain, IReadOnlyCollection<string> Names)
{
    /// <summary>The word as our own codes have it, in capitals.</summary>
    public string Code => Plain.ToUpperInvariant();
}
