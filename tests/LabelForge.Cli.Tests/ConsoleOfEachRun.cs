using System.Globalization;
using System.Text;

namespace LabelForge.Cli.Tests;

/// <summary>The one console of this process, shared out: what a run writes goes to that run's own
/// text, so that tests may run side by side.</summary>
internal sealed class ConsoleOfEachRun : TextWriter
{
    private static readonly ConsoleOfEachRun Output = new(Console.Out), Messages = new(Console.Error);

    private readonly AsyncLocal<TextWriter?> _own = new();
    private readonly TextWriter _otherwise;

    static ConsoleOfEachRun()
    {
        Console.SetOut(Output);
        Console.SetError(Messages);
        Console.SetIn(TextReader.Null);
    }

    private ConsoleOfEachRun(TextWriter otherwise) : base(CultureInfo.InvariantCulture) => _otherwise = otherwise;

    public override Encoding Encoding => Encoding.UTF8;

    private TextWriter To => _own.Value ?? _otherwise;

    /// <summary>Does this, and gives what it wrote on standard output and on standard error.</summary>
    public static (int Code, string Output, string Messages) Of(Func<int> run)
    {
        using var output = new StringWriter(CultureInfo.InvariantCulture);
        using var messages = new StringWriter(CultureInfo.InvariantCulture);
        (Output._own.Value, Messages._own.Value) = (Synchronized(output), Synchronized(messages));
        try
        {
            var code = run();
            return (code, output.ToString(), messages.ToString());
        }
        finally
        {
            (Output._own.Value, Messages._own.Value) = (null, null);
        }
    }

    public override void Write(char value) => To.Write(value);

    public override void Write(string? value) => To.Write(value);

    public override void Write(char[] buffer, int index, int count) => To.Write(buffer, index, count);

    public override void Write(ReadOnlySpan<char> buffer) => To.Write(buffer);

    public override void WriteLine() => To.WriteLine();

    public override void WriteLine(string? value) => To.WriteLine(value);

    public override void Flush() => To.Flush();
}
