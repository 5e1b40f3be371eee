using System.Text;

namespace LabelForge.Fuzz;

/// <summary>Makes a new input of old ones: signs turned, pieces doubled, cut, put in from another, words of the trade thrown in.</summary>
public sealed class Mutation(int seed, IReadOnlyList<string> words)
{
    /// <summary>The longest input that is made, in bytes.</summary>
    public const int Longest = 4096;

    private static readonly string[] Everywhere =
        ["79228162514264337593543950335", "0", "-1", "1e9", "99999999999", "0.0000000001", "%", "\"", "'", "\n", "\r", "\t", "\u00A0",
            "\u202E", "\u0301", "\uFEFF", "\uD83E\uDDFC", ";", ",", "(", ")", "[", "]", "{", "}", "\u0663"];

    private readonly Random _random = new(seed);

    /// <summary>A new input.</summary>
    public byte[] Next(IReadOnlyList<byte[]> corpus)
    {
        var bytes = corpus[_random.Next(corpus.Count)].ToList();
        for (var i = 1 << _random.Next(4); i > 0; i--)
            Once(bytes, corpus);
        return [.. bytes.Take(Longest)];
    }

    private void Once(List<byte> bytes, IReadOnlyList<byte[]> corpus)
    {
        var at = _random.Next(bytes.Count + 1);
        var some = Math.Min(bytes.Count - at, 1 + _random.Next(_random.Next(8) == 0 ? 200 : 8));
        switch (_random.Next(9))
        {
            case 0 when at < bytes.Count:
                bytes[at] ^= (byte)(1 << _random.Next(8));
                break;
            case 1 when at < bytes.Count:
                bytes[at] = (byte)_random.Next(256);
                break;
            case 2:
                bytes.RemoveRange(at, some);
                break;
            case 3:
                bytes.InsertRange(at, bytes.GetRange(at, some));
                break;
            case 4:
                var other = corpus[_random.Next(corpus.Count)];
                var from = _random.Next(other.Length + 1);
                bytes.InsertRange(at, other.AsSpan(from, Math.Min(other.Length - from, 1 + _random.Next(64))).ToArray());
                break;
            case 5:
                bytes.InsertRange(at, Encoding.UTF8.GetBytes(Everywhere[_random.Next(Everywhere.Length)]));
                break;
            case 6 when at < bytes.Count:
                var many = bytes.GetRange(at, Math.Min(some, 6));
                for (var i = 1 << _random.Next(8); i > 0 && bytes.Count < Longest; i--)
                    bytes.InsertRange(at, many);
                break;
            default:
                bytes.InsertRange(at, Encoding.UTF8.GetBytes(words[_random.Next(words.Count)]));
                break;
        }
    }
}
