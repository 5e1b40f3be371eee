namespace LabelForge.Checks;

/// <summary>A part of a finding's sentence that tells of a claim: what it says of the product, or what to write instead.</summary>
/// <param name="Id">The claim's id; in another language than English the words are those of <c>claims-said-LANGUAGE.yaml</c>.</param>
/// <param name="Key">Which part: <c>says</c> or <c>instead</c>.</param>
/// <param name="English">Its words in English.</param>
public sealed record ClaimSaid(string Id, string Key, string English)
{
    /// <summary>The words in a language; in English where it has none.</summary>
    internal string In(string language) => LawWords.Of($"claims-said-{language}", Id, Key) ?? English;

    /// <inheritdoc/>
    public override string ToString() => English;
}
