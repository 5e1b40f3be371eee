namespace LabelForge.Records.Books;

/// <summary>A batch begun: the recipe as it stood then, frozen.</summary>
public sealed class Batch : BookEntry
{
    private string? _frozen;

    /// <summary>The lot code on the labels.</summary>
    public required string Lot { get; init; }

    /// <summary>The recipe's id.</summary>
    public required string Recipe { get; init; }

    /// <summary>The product's name then.</summary>
    public required string Product { get; init; }

    /// <summary>The recipe and materials as JSON, as they stood; see <see cref="FrozenRecipe"/>.</summary>
    /// <remarks>Kept once for all batches that froze the same; a list of batches is read without it.</remarks>
    /// <exception cref="InvalidOperationException">It was not read with the batch.</exception>
    public required string Frozen
    {
        get => _frozen ?? throw new InvalidOperationException($"What batch {Id} froze was not read with it.");
        init => (_frozen, FrozenDigest, Variant) = (value, FrozenText.DigestOf(value), FrozenRecipe.FromJson(value).Variant);
    }

    /// <summary>The SHA-256 of what was frozen, in small hexadecimal figures.</summary>
    public string FrozenDigest { get; private init; } = "";

    /// <summary>The recipe's variant; null where it has none.</summary>
    public string? Variant { get; private init; }

    /// <summary>The pieces planned.</summary>
    public required int PiecesPlanned { get; init; }

    /// <summary>The number of the pot that its base was melted in together with that of other
    /// batches; null where it had its own.</summary>
    public string? Pot { get; init; }

    /// <summary>The batch with what it froze, read for it.</summary>
    internal Batch With(string frozen)
    {
        _frozen = frozen;
        return this;
    }
}
