using System.Globalization;
using System.Runtime.InteropServices;

namespace LabelForge.Benchmarks;

/// <summary>What a measurement was made on, in the words that stand above it.</summary>
internal static class Machine
{
    /// <summary>The day, the machine and how busy it was; taken before the measurement begins.</summary>
    public static string Line() => string.Create(CultureInfo.InvariantCulture,
        $"Measured on {DateTime.Now:yyyy-MM-dd HH:mm}, {Environment.ProcessorCount} cores ({Processor()}), {RuntimeInformation.OSDescription.Trim()}, {RuntimeInformation.FrameworkDescription}; load before it began {Load()}.");

    /// <summary>How many programs wanted a core in the last minute, five and fifteen.</summary>
    public static string Load() =>
        File.Exists("/proc/loadavg") ? string.Join(", ", File.ReadAllText("/proc/loadavg").Split(' ').Take(3)) : "unknown";

    private static string Processor() => File.Exists("/proc/cpuinfo")
        ? File.ReadLines("/proc/cpuinfo")
            .FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal))?.Split(':', 2)[1].Trim()
            ?? RuntimeInformation.ProcessArchitecture.ToString()
        : RuntimeInformation.ProcessArchitecture.ToString();
}
