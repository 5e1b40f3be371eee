namespace LabelForge.Cli.Completion;

/// <summary><c>completion</c>: the few lines that teach a shell to finish words of labelforge.</summary>
internal static class CompletionVerb
{
    private const string Folder = "completion/";

    public static Command Build()
    {
        var shell = new Argument<string>("SHELL") { Description = "bash, zsh, fish or powershell" };
        shell.AcceptOnlyFromAmong("bash", "zsh", "fish", "powershell");
        var verb = new Command("completion",
            "Lines for your shell's start file, so that the Tab key finishes verbs, options, and names of your workshop") { shell };
        verb.SetAction(r =>
        {
            using var lines = new StreamReader(typeof(CompletionVerb).Assembly.GetManifestResourceStream(Folder + r.GetValue(shell))!);
            Console.Write(lines.ReadToEnd());
            return Exit.Done;
        });
        return verb;
    }
}
