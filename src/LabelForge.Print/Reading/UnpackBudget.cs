namespace LabelForge.Print.Reading;

/// <summary>How much a file may still unpack to. Once it is used up, or its reader is told to stop, nothing more is unpacked.</summary>
/// <param name="mostOfOne">The most bytes of one stream.</param>
/// <param name="mostOfAll">The most bytes of all streams together, each counted as often as it is unpacked.</param>
internal sealed class UnpackBudget(long mostOfOne, long mostOfAll)
{
    private long _left = mostOfAll;
    private volatile bool _stopped;

    /// <summary>The most bytes of one stream.</summary>
    public long MostOfOne => mostOfOne;

    /// <summary>Whether more was asked for than there is. A reader that is lenient may have gone on without it.</summary>
    public bool IsExceeded { get; private set; }

    /// <summary>Ends the reading at the next stream.</summary>
    public void Stop() => _stopped = true;

    /// <summary>Takes so many bytes.</summary>
    /// <exception cref="UnpackedTooLargeException">There are not so many left.</exception>
    public void Take(long bytes)
    {
        if (bytes > mostOfOne || Interlocked.Add(ref _left, -bytes) < 0)
            IsExceeded = true;
        if (IsExceeded || _stopped)
            throw new UnpackedTooLargeException();
    }
}

/// <summary>A file unpacks to more than is taken.</summary>
internal sealed class UnpackedTooLargeException() : Exception("The file unpacks to more than is taken.");
