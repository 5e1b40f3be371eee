namespace LabelForge.Cli;

/// <summary>Standard error, which may be closed, full, or a pipe that nobody reads any more: what
/// is said there is lost, the work is not.</summary>
internal sealed class Messages : TextWriter
{
    // Where standard error is closed, the next file that is opened takes its number, and words meant for people would
    // land in it. This one takes it first.
    private static FileStream? _inItsPlace;
    private static TextWriter? _set;

    private readonly TextWriter? _to;

    private Messages(TextWriter? to) => _to = to;

    public override Encoding Encoding => Encoding.UTF8;

    /// <summary>Makes standard error one that fails nobody.</summary>
    public static void CannotFail()
    {
        TextWriter? to = null;
        try
        {
            to = Console.Error;
            if (ReferenceEquals(to, _set))
                return;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            if (!OperatingSystem.IsWindows())
                _inItsPlace = new FileStream("/dev/null", FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        }
        Console.SetError(_set = Synchronized(new Messages(to)));
    }

    public override void Write(char value) => Try(t => t.Write(value));

    public override void Write(string? value) => Try(t => t.Write(value));

    public override void Write(char[] buffer, int index, int count) => Try(t => t.Write(buffer, index, count));

    public override void WriteLine(string? value) => Try(t => t.WriteLine(value));

    public override void Flush() => Try(t => t.Flush());

    private void Try(Action<TextWriter> write)
    {
        try
        {
            if (_to is not null)
                write(_to);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ObjectDisposedException)
        {
        }
    }
}
