using System.Runtime.InteropServices;
using SharpFuzz.Common;

namespace LabelForge.Fuzz.Coverage;

/// <summary>Which branches a run took, and how often: a byte for each pair of places, as the instrumentation writes it.</summary>
public sealed unsafe class CoverageMap
{
    private const int Size = 1 << 16;
    private static byte* shared;

    private readonly byte[] _seen = new byte[Size];

    /// <summary>How many marks have been seen.</summary>
    public int Count => _seen.Count(s => s != 0);

    /// <summary>Gives the instrumentation a place to write.</summary>
    public static void Attach()
    {
        shared = (byte*)NativeMemory.AllocZeroed(Size);
        Trace.SharedMem = shared;
    }

    /// <summary>Forgets the last run.</summary>
    public static void Clear()
    {
        new Span<byte>(shared, Size).Clear();
        Trace.PrevLocation = 0;
    }

    /// <summary>Takes in what the last run marked, and says whether any of it is new.</summary>
    public bool TakeIn()
    {
        var marks = new ReadOnlySpan<byte>(shared, Size);
        var anew = false;
        for (var i = marks.IndexOfAnyExcept((byte)0); i >= 0;)
        {
            // Once, a few times, many: a loop that runs 40 times and one that runs 41 are the same to us.
            var often = marks[i] switch { 1 => 1, 2 => 2, 3 => 4, < 8 => 8, < 16 => 16, < 32 => 32, < 128 => 64, _ => 128 };
            anew |= (_seen[i] & often) == 0;
            _seen[i] |= (byte)often;
            var next = marks[(i + 1)..].IndexOfAnyExcept((byte)0);
            i = next < 0 ? -1 : i + 1 + next;
        }
        return anew;
    }
}
