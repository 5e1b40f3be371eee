using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Web.Workbench;

/// <summary>Sheets being written: how far they are, and a way to stop.</summary>
/// <param name="order">What stands on them.</param>
/// <param name="told">Told now and then how far it is, on any thread.</param>
public sealed class SheetJob(SheetOrder order, Action told)
{
    private readonly CancellationTokenSource _stop = new();

    /// <summary>How many sheets are done.</summary>
    public int Done { get; private set; }

    /// <summary>How many there will be.</summary>
    public int All { get; } = order.Plan().Sheets;

    /// <summary>Writes the sheets; to be called off the thread that draws.</summary>
    /// <param name="title">What the document is called.</param>
    /// <param name="on">The day it is dated.</param>
    /// <returns>The document.</returns>
    /// <exception cref="InputException">A number is out of range, or the label does not fit the stock.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public byte[] Write(string title, DateOnly on)
    {
        var info = new DocumentInfo(title, on);
        return Temporary.Written(".pdf", path => SheetWriter.WritePdf(path, order, info, done =>
        {
            _stop.Token.ThrowIfCancellationRequested();
            Done = done;
            told();
        }));
    }

    /// <summary>Stops it; what was written is thrown away.</summary>
    public void Stop() => _stop.Cancel();
}
