using System.Runtime.InteropServices;

namespace LabelForge.Print.Output;

/// <summary>The files being written now; when the program is stopped from outside, they are removed first.</summary>
internal static class UnfinishedFiles
{
    private static readonly Lock Guard = new();
    private static readonly HashSet<string> Open = [];

    // Held for the life of the process: a registration that is collected no longer listens.
    private static readonly PosixSignalRegistration[] Listening =
        [.. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP, PosixSignal.SIGQUIT }
            .Select(s => PosixSignalRegistration.Create(s, _ => RemoveAll()))];

    private static bool _stopping;

    /// <summary>Counts a file as unfinished until this is disposed, which removes what is left of it.</summary>
    public static Unfinished Add(string path)
    {
        lock (Guard)
        {
            RefuseWhenStopping();
            Open.Add(path);
        }
        GC.KeepAlive(Listening);
        return new Unfinished(path);
    }

    private static void RemoveAll()
    {
        lock (Guard)
        {
            _stopping = true;
            foreach (var path in Open)
                RemoveIfThere(path);
        }
    }

    private static void RefuseWhenStopping()
    {
        if (_stopping)
            throw new OperationCanceledException("The program is being stopped.");
    }

    // This may run while another error is on its way, which would be hidden by one thrown here.
    private static void RemoveIfThere(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
        }
    }

    /// <summary>One unfinished file.</summary>
    internal sealed class Unfinished(string path) : IDisposable
    {
        /// <summary>Gives the file its name; not while the program is being stopped.</summary>
        public void Finish(Action rename)
        {
            lock (Guard)
            {
                RefuseWhenStopping();
                rename();
            }
        }

        /// <summary>Removes the file if it still has its unfinished name.</summary>
        public void Dispose()
        {
            lock (Guard)
            {
                Open.Remove(path);
                RemoveIfThere(path);
            }
        }
    }
}
