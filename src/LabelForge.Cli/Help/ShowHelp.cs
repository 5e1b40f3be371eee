using System.CommandLine.Invocation;

namespace LabelForge.Cli.Help;

/// <summary>Shows the help of the verb that was asked for.</summary>
internal sealed class ShowHelp : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    public override int Invoke(ParseResult parseResult)
    {
        Console.Write(HelpText.Of(parseResult.CommandResult.Command));
        return Exit.Done;
    }
}
