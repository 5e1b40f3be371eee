using System.Runtime.InteropServices;
using System.Text;

namespace LabelForge.Records.Writer;

/// <summary>A process split in two, and a word said without any lock: the child of a fork has one
/// thread and must not wait for others.</summary>
internal static partial class Fork
{
    /// <summary>Splits the process; runs the child's work in the new one, and waits for its end in the old one.</summary>
    /// <param name="child">What the new process does.</param>
    /// <param name="born">Given the new process's number, in the old one.</param>
    /// <returns>Only in the old one: whether the child was killed, and not ended by itself.</returns>
    public static bool Run(Action child, Action<int> born)
    {
        GC.TryStartNoGCRegion(32_000_000);
        var id = fork();
        if (id == 0)
        {
            try
            {
                child();
            }
            catch (Exception e)
            {
                Say("failed " + e.Message.ReplaceLineEndings(" "));
            }
            _exit(3);
        }
        born(id);
        GC.EndNoGCRegion();
        _ = waitpid(id, out var status, 0);
        return (status & 0x7F) == 9;
    }

    /// <summary>Writes a line to standard output at once.</summary>
    public static void Say(string line)
    {
        var bytes = Encoding.UTF8.GetBytes(line + "\n");
        _ = write(1, bytes, bytes.Length);
    }

    [LibraryImport("libc")]
    private static partial int fork();

    [LibraryImport("libc")]
    private static partial int waitpid(int id, out int status, int options);

    [LibraryImport("libc")]
    private static partial nint write(int file, byte[] bytes, nint count);

    [LibraryImport("libc")]
    private static partial void _exit(int code);
}
