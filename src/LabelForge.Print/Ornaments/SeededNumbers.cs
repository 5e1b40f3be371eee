namespace LabelForge.Print.Ornaments;

/// <summary>
/// Numbers by chance that are the same for the same seed, on every machine and in every version: SplitMix64 (Steele, Lea,
/// Flood, "Fast splittable pseudorandom number generators", OOPSLA 2014). The runtime's own generator promises no such thing.
/// </summary>
public sealed class SeededNumbers
{
    private ulong _state;

    /// <summary>Starts at a seed.</summary>
    public SeededNumbers(ulong seed) => _state = seed;

    /// <summary>Starts at a text, by its FNV-1a hash of 64 bits (Fowler, Noll, Vo; RFC 9923).</summary>
    public SeededNumbers(string text) =>
        _state = text.Aggregate(14695981039346656037UL, (hash, c) => unchecked((hash ^ c) * 1099511628211UL));

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15UL;
            var z = (_state ^ (_state >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>A number from 0 up to, but not, 1.</summary>
    public double Unit() => (Next() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A number between two.</summary>
    public double Between(double low, double high) => low + (high - low) * Unit();

    /// <summary>A whole number from 0 up to, but not, this.</summary>
    public int Below(int count) => (int)(Unit() * count);

    /// <summary>Whether something of this likelihood happens.</summary>
    public bool Happens(double likelihood) => Unit() < likelihood;
}
