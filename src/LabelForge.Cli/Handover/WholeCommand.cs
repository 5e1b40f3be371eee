using System.Diagnostics;
using System.Runtime.InteropServices;

namespace LabelForge.Cli.Handover;

/// <summary>
/// The whole command, which lies beside the part of it that is compiled natively, and is handed the calls that need it: the same
/// words, input, output, terminal and exit code.
/// </summary>
internal static partial class WholeCommand
{
    /// <summary>The program's name, without what Windows adds.</summary>
    public const string Name = "labelforge-books";

    /// <summary>Hands the call of this process over. Where the system can put one program in another's
    /// place, it does not return.</summary>
    /// <returns>The exit code.</returns>
    /// <exception cref="InputException">The program is not there.</exception>
    public static int Call()
    {
        var program = Path.Combine(AppContext.BaseDirectory, OperatingSystem.IsWindows() ? $"{Name}.exe" : Name);
        if (!File.Exists(program))
            throw new InputException("call.no-whole-program", ("name", Path.GetFileName(program)),
                ("folder", AppContext.BaseDirectory));
        var words = Environment.GetCommandLineArgs()[1..];
        if (OperatingSystem.IsWindows())
            return Started(program, words);
        _ = Execv(program, [program, .. words, null]);
        throw new IOException($"{program}: {Marshal.GetLastPInvokeErrorMessage()}.");
    }

    // Windows has no way to put one program in another's place. Both hear Ctrl-C; the one that works decides what it means.
    private static int Started(string program, string[] words)
    {
        Console.CancelKeyPress += (_, press) => press.Cancel = true;
        using var whole = Process.Start(new ProcessStartInfo(program, words) { UseShellExecute = false })!;
        whole.WaitForExit();
        return whole.ExitCode;
    }

    // POSIX.1-2017, exec: the list of words ends with a null.
    [LibraryImport("libc", EntryPoint = "execv", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Execv(string program, string?[] words);
}
