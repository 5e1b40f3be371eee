namespace LabelForge.Records.Books;

/// <summary>Strikes an entry, and names the one that stands instead, if any.</summary>
public sealed class Correction : BookEntry
{
    /// <summary>The list of the struck entry, such as <c>sale</c>.</summary>
    public required string List { get; init; }

    /// <summary>The struck entry's number.</summary>
    public required int EntryId { get; init; }

    /// <summary>The number of the entry that stands instead; null where none does.</summary>
    public int? InsteadId { get; set; }

    /// <summary>Why.</summary>
    public required string Reason { get; init; }
}

/// <summary>What corrections come to.</summary>
internal static class Corrections
{
    /// <summary>What stands instead of each entry that corrections of one list strike; null where nothing does.</summary>
    public static IReadOnlyDictionary<int, int?> Moved(IEnumerable<Correction> corrections)
    {
        var instead = corrections.ToDictionary(c => c.EntryId, c => c.InsteadId);
        int? Now(int? id)
        {
            while (id is { } at && instead.TryGetValue(at, out var next))
                id = next;
            return id;
        }
        return instead.ToDictionary(c => c.Key, c => Now(c.Value));
    }
}

/// <summary>The key of a form that was written into the books: a form is written once, however often it is sent.</summary>
public sealed class OnceKey
{
    /// <summary>The longest key that is taken.</summary>
    public const int MostCharacters = 64;

    /// <summary>The key.</summary>
    public required string Key { get; init; }
}
