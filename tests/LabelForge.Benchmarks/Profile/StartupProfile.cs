using System.Buffers.Binary;
using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;

namespace LabelForge.Benchmarks;

/// <summary>A method that the command compiled while it ran.</summary>
/// <param name="Type">Its type, as the runtime's events write it.</param>
/// <param name="Name">Its name.</param>
/// <param name="Signature">What it takes and gives.</param>
internal sealed record CompiledMethod(string Type, string Name, string Signature);

/// <summary>
/// Which methods the command still compiles at run time: generic code of the runtime that is only reached through virtual calls, as
/// sequences of pairs are, so that ahead-of-time compilation does not find it. They are counted by the runtime's own events.
/// </summary>
internal static partial class StartupProfile
{
    private const string Day = "2026-11-25";

    /// <summary>Writes the profile that the command is published with, over what a maker does without the books.</summary>
    /// <returns>How many methods it holds.</returns>
    public static int Write(string path)
    {
        var program = Published.Unprofiled;
        var shop = Scratch.Path("example");
        Of(program, [["demo", "--out", shop, "--on", Day]]);
        string[] here = ["--workshop", Path.Combine(shop, "workshop"), "--on", Day];
        string[] lot = ["--lot", "26R25-01E", .. here];
        var words = Scratch.Path("label.txt");
        File.WriteAllText(words, "Moss Bar\nNet Wt 4 oz (113 g)\nIngredients: Glycerin, Aqua, Parfum\n");
        var methods = Of(program,
        [
            ["declare", "bramble-bar", .. here], ["declare", "harbour-wall-bar", .. here, "--market", "eu", "--format", "json"],
            ["check", "bramble-bar", .. lot], ["check", "harbour-wall-bar", .. lot, "--market", "ca"], ["check", words, "--on", Day],
            ["label", "hayloft-bar", .. lot, "--out", Scratch.Path("label.pdf")],
            ["label", "hayloft-bar", .. lot, "--out", Scratch.Path("label.svg")], ["check", Scratch.Path("label.pdf"), "--on", Day],
            ["sheet", "hayloft-bar", .. lot, "--stock", "us-letter-10-2x4in", "--count", "12", "--out", Scratch.Path("sheet.pdf")],
            ["batch", "hayloft-bar", .. lot, "--out", Scratch.Path("bench.pdf")],
            ["gallery", "hayloft-bar", .. here, "--out", Scratch.Path("gallery.pdf")], ["soap", "harbour-wall-bar", .. here[..2]],
            ["fragrance", "bramble-bar", .. here], ["ask", .. here[..2]], ["quantity", "4 oz", "--panel", "2.5x3.5in"], ["lot", "new"],
            ["stock"], ["rules", "--market", "us"],
        ]);
        return new ProfileWriter(Path.GetDirectoryName(program)!).Write(methods, path);
    }

    // The tier of a method that was compiled when it was first called, in the flags of MethodLoadVerbose (bits 7 to 9); other
    // methods in the file were compiled ahead of time.
    private const int QuickJitted = 3;

    /// <summary>The methods that calls of a program compile.</summary>
    /// <param name="program">The published command.</param>
    /// <param name="calls">The calls, each its words.</param>
    private static IReadOnlyList<CompiledMethod> Of(string program, IEnumerable<string[]> calls) =>
        [.. calls.SelectMany(c => Run(program, c)).Distinct().OrderBy(m => m.Type, StringComparer.Ordinal)
            .ThenBy(m => m.Name, StringComparer.Ordinal).ThenBy(m => m.Signature, StringComparer.Ordinal)];

    private static IEnumerable<CompiledMethod> Run(string program, string[] call)
    {
        var trace = Scratch.Path("jit.nettrace");
        using var run = Process.Start(new ProcessStartInfo(program, call)
        {
            RedirectStandardOutput = true,
            Environment = { ["DOTNET_EnableEventPipe"] = "1", ["DOTNET_EventPipeConfig"] = "Microsoft-Windows-DotNETRuntime:0x10:5",
                ["DOTNET_EventPipeOutputPath"] = trace },
        })!;
        run.StandardOutput.ReadToEnd();
        run.WaitForExit();
        return In(File.ReadAllBytes(trace));
    }

    // MethodLoadVerbose: ids and addresses, size, token, flags, then namespace, name and signature, each ended by a null.
    private static IEnumerable<CompiledMethod> In(byte[] trace)
    {
        foreach (Match m in Strings().Matches(Encoding.Latin1.GetString(trace)))
        {
            if ((BinaryPrimitives.ReadUInt32LittleEndian(trace.AsSpan(m.Index - 4)) >> 7 & 7) == QuickJitted)
                yield return new(Text(m, 1), Text(m, 2), Text(m, 3));
        }
    }

    private static string Text(Match match, int group) => match.Groups[group].Value.Replace("\0", "", StringComparison.Ordinal);

    [GeneratedRegex(@"((?:[\x20-\x7e]\0){3,600})\0\0((?:[\x20-\x7e]\0){1,300})\0\0((?:[\x20-\x7e]\0){3,3000})\0\0")]
    private static partial Regex Strings();
}
