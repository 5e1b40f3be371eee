namespace LabelForge.Ingredients;

/// <summary>
/// Which written names mean one ingredient in a batch: what the dictionary knows goes by its key, and what it does not know
/// by the spelling that was met first, whatever the letter case, spacing and footnote marks of the next.
/// </summary>
public sealed class NameIdentity(IngredientDictionary dictionary)
{
    private readonly Dictionary<string, string> _unknown = new(Same);

    /// <summary>The names known.</summary>
    public IngredientDictionary Dictionary => dictionary;

    /// <summary>Whether two names are spelled alike but for letter case, spacing, footnote marks and the kind of apostrophe.</summary>
    public static IEqualityComparer<string> Same { get; } = new AsCompared();

    /// <summary>The one name of an ingredient by any name that was written for it.</summary>
    /// <remarks>A nanomaterial is an ingredient beside the same substance in larger grains, since
    /// some labels must tell them apart.</remarks>
    public string KeyOf(string written)
    {
        var bare = NanoName.Bare(written);
        var key = dictionary.Find(bare)?.Key ?? First(bare);
        return NanoName.IsMarked(written) ? key + NanoName.Mark : key;
    }

    /// <summary>The spelling of a name that was met first.</summary>
    public string First(string name)
    {
        if (_unknown.TryGetValue(name, out var first))
            return first;
        _unknown.Add(name, name);
        return name;
    }

    private sealed class AsCompared : IEqualityComparer<string>
    {
        public bool Equals(string? one, string? other) =>
            one is null || other is null ? ReferenceEquals(one, other) : NameText.Plain(one) == NameText.Plain(other);

        public int GetHashCode(string name) => NameText.Plain(name).GetHashCode(StringComparison.Ordinal);
    }
}
