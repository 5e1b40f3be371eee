using LabelForge.Checks;
using LabelForge.Cli.Handover;
using LabelForge.Records.Books;

namespace LabelForge.Cli;

/// <summary>Something that a rule requires is open, so that nothing was written.</summary>
internal sealed class StoppedException(string message, IEnumerable<Finding> findings) : Exception(message)
{
    /// <summary>What is open.</summary>
    public ImmutableArray<Finding> Findings { get; } = [.. findings];
}

/// <summary>Exit codes, and the one place where a wrong input becomes one clear message.</summary>
internal static class Exit
{
    public const int Done = 0;
    public const int FindingStands = 1;
    public const int WrongInput = 2;

    /// <summary>What each says, as help, the page of commands and the manual page tell it.</summary>
    public static readonly ImmutableArray<(int Code, string Says)> Meanings =
    [
        (Done, "done"),
        (FindingStands, "done, and something that a rule requires is missing or wrong"),
        (WrongInput, "the input or the call is wrong"),
    ];

    /// <summary>What becomes of a wrong input.</summary>
    public const string NothingWritten = "one message says what to write instead, and nothing is written";

    /// <summary>All of them in a line.</summary>
    public static string InALine => string.Join("; ", Meanings.Select(m => $"{m.Code} {m.Says}"));

    /// <summary>Runs a verb; input that cannot be used is told on standard error, and nothing is written.</summary>
    public static int Run(Func<int> verb)
    {
        try
        {
            return verb();
        }
        catch (NeedsWholeProgramException)
        {
            return Run(WholeCommand.Call);
        }
        catch (InputException e)
        {
            Console.Error.WriteLine(e.Message);
            return WrongInput;
        }
        catch (StoppedException e)
        {
            Console.Error.WriteLine(e.Message);
            foreach (var finding in e.Findings)
                Console.Error.WriteLine($"  {finding.Rule} [{finding.Source}] {finding.Message} {finding.Fix}");
            return FindingStands;
        }
        catch (RegexMatchTimeoutException)
        {
            Console.Error.WriteLine("This text takes too long to read. Give the words of one label, front and back.");
            return WrongInput;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Console.Error.WriteLine($"{e.Message} Choose a folder that you may write to, and close the file if a program has it open.");
            return WrongInput;
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            // Nobody at a bench is helped by the places in a program where it went wrong; whoever mends it asks for them.
            Console.Error.WriteLine(Environment.GetEnvironmentVariable("LABELFORGE_TRACE") is null
                ? $"This is a fault of labelforge itself, not of your files ({e.GetType().Name}: {e.Message}) Nothing more was done. With "
                    + $"LABELFORGE_TRACE=1 it says where."
                : e.ToString());
            return WrongInput;
        }
    }
}
