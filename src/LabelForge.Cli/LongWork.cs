using System.Diagnostics;

namespace LabelForge.Cli;

/// <summary>Tells on standard error how far long work has come; short work says nothing.</summary>
internal static class LongWork
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan OnScreen = TimeSpan.FromMilliseconds(200);
    private static readonly TimeSpan InALog = TimeSpan.FromSeconds(5);

    /// <summary>To be told how many of all are done.</summary>
    public static Action<int> Of(string what, int all)
    {
        var since = Stopwatch.StartNew();
        var next = Patience;
        var told = false;
        return done =>
        {
            if (done == all && told && !Console.IsErrorRedirected)
            {
                Console.Error.WriteLine($"\r{done} of {all} {what}");
            }
            else if (since.Elapsed >= next && done < all)
            {
                told = true;
                next = since.Elapsed + (Console.IsErrorRedirected ? InALog : OnScreen);
                if (Console.IsErrorRedirected)
                    Console.Error.WriteLine($"{done} of {all} {what}");
                else
                    Console.Error.Write($"\r{done} of {all} {what}");
            }
        };
    }
}
