using LabelForge.Lots;
using LabelForge.Measures;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Print.Sheets;

namespace LabelForge.Web.Workbench;

/// <summary>Sheets being written: how far they are, and a way to stop.</summary>
public sealed class SheetJob
{
    private readonly CancellationTokenSource _stop = new();

    /// <summary>How many sheets are done.</summary>
    public int Done { get; private set; }

    /// <summary>How many there will be.</summary>
    public int All { get; private init; }

    /// <summary>Writes the sheets off the thread that draws.</summary>
    /// <param name="order">What stands on them.</param>
    /// <param name="job">The label's way.</param>
    /// <param name="lot">The lot.</param>
    /// <param name="told">Told now and then how far it is, on any thread.</param>
    /// <returns>The work, and the document; null once it was stopped.</returns>
    /// <exception cref="InputException">A number is out of range, or the label does not fit the stock.</exception>
    public static (SheetJob Job, Task<byte[]?> Document) Start(SheetOrder order, LabelJob job, LotCode lot, Action told)
    {
        var under = new SheetJob { All = order.Plan().Sheets };
        var info = new DocumentInfo($"{job.Content.ProductName}, lot {lot}", new DateTimeOffset(job.On.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero));
        return (under, Task.Run(() =>
        {
            try
            {
                return Temporary.Written(".pdf", path => SheetWriter.WritePdf(path, order, info, done =>
                {
                    under._stop.Token.ThrowIfCancellationRequested();
                    under.Done = done;
                    told();
                }));
            }
            catch (OperationCanceledException)
            {
                return null;
            }
        }));
    }

    /// <summary>Stops it; what was written is thrown away.</summary>
    public void Stop() => _stop.Cancel();
}
