using System.Collections.Concurrent;

namespace LabelForge.Print;

/// <summary>
/// What was found for a key, kept up to a number of keys. A range is fitted anew at each letter that is typed, and all of its labels
/// but one stand as they stood.
/// </summary>
/// <param name="most">The most that is kept; then it begins anew.</param>
internal sealed class FoundBefore<TKey, TFound>(int most) where TKey : notnull
{
    private readonly ConcurrentDictionary<TKey, TFound> found = new();

    /// <summary>What there is for a key, found now where it was not before. What is found must hang on the key alone.</summary>
    public TFound Of(TKey key, Func<TFound> find)
    {
        if (found.TryGetValue(key, out var known))
            return known;
        if (found.Count >= most)
            found.Clear();
        return found[key] = find();
    }
}
