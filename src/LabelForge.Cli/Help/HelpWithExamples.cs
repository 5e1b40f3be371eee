using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace LabelForge.Cli.Help;

/// <summary>What a verb does and takes, and then calls to start from.</summary>
internal sealed class HelpWithExamples : SynchronousCommandLineAction
{
    private readonly HelpAction _plain = new();

    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        var done = _plain.Invoke(parseResult);
        var verb = parseResult.CommandResult.Command;
        var examples = VerbExamples.Of(verb).ToList();
        if (examples.Count > 0)
            Console.WriteLine(examples.Count == 1 ? "Example:" : "Examples:");
        foreach (var example in examples)
        {
            if (example.Says.Length > 0)
                Console.WriteLine($"  {example.Says}");
            Console.WriteLine($"      {example.Call}");
        }
        if (examples.Count > 0)
            Console.WriteLine();
        else if (verb.Parents.Any())
            return done;
        Console.WriteLine("Exit code: 0 done; 1 done, and something that a rule requires is missing or wrong; 2 the input or the call is wrong.");
        return done;
    }
}
