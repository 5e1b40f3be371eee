using System.Security.Cryptography;

namespace LabelForge.Records.Books;

/// <summary>A recipe that batches froze, kept once however many did.</summary>
public sealed class FrozenText
{
    /// <summary>Its SHA-256, in small hexadecimal figures.</summary>
    public required string Digest { get; init; }

    /// <summary>The recipe and materials as JSON; see <see cref="FrozenRecipe"/>.</summary>
    public required string Json { get; init; }

    /// <summary>The digest of a text: of its bytes in UTF-8.</summary>
    public static string DigestOf(string json) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(json)));
}
