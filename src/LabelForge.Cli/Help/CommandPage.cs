using System.CommandLine.Help;
using Argument = System.CommandLine.Argument;

namespace LabelForge.Cli.Help;

/// <summary>Every verb on one page, made of the tree that reads the calls: docs/commands.md.</summary>
public static class CommandPage
{
    /// <summary>The page, in Markdown, with plain line ends.</summary>
    public static string Markdown(Command root)
    {
        var page = new StringBuilder();
        page.Append("# The command\n\nWritten by `labelforge help --all`. Every example is run by the tests, from a workshop's folder.\n\n");
        page.Append($"Exit codes: {Exit.InALine}: {Exit.NothingWritten}.\n");
        foreach (var verb in root.Subcommands.Where(v => !v.Hidden))
            Verb(page, verb);
        return page.ToString();
    }

    private static void Verb(StringBuilder page, Command verb)
    {
        var path = VerbExamples.PathOf(verb);
        page.Append($"\n## {path}\n\n{verb.Description}.\n");
        if (verb.Action is not null)
            page.Append($"\n    {Usage(verb, path)}\n");
        var rows = verb.Arguments.Select(a => (Name: Shown(a), What: ValueNames.Says(a)))
            .Concat(ValueNames.Shown(verb).Select(o => (Name: o.Required ? $"{o.Name} (required)" : o.Name, What: ValueNames.Says(o))))
            .ToList();
        if (rows.Count > 0)
            page.Append("\n| | |\n| --- | --- |\n");
        foreach (var (name, what) in rows)
            page.Append(
                $"| `{name.Replace("|", "\\|", StringComparison.Ordinal)}` | {what.Replace("|", "\\|", StringComparison.Ordinal)} |\n");
        foreach (var example in VerbExamples.Of(verb))
        {
            if (example.Says.Length > 0)
                page.Append($"\n{example.Says}\n\n");
            page.Append($"    {example.Call}\n");
        }
        foreach (var under in verb.Subcommands.Where(v => !v.Hidden))
            Verb(page, under);
    }

    private static string Usage(Command verb, string path)
    {
        var words = verb.Arguments.Select(a => a.Arity.MinimumNumberOfValues == 0 ? $"[{Shown(a)}]" : Shown(a));
        var required = verb.Options.Where(o => o.Required).Select(o => $"{o.Name} {o.Name.TrimStart('-').ToUpperInvariant()}");
        return string.Join(' ', new[] { "labelforge", path }.Concat(words).Concat(required).Append("[options]"));
    }

    private static string Shown(Argument argument) => argument.Arity.MaximumNumberOfValues > 1 ? $"{argument.Name}..." : argument.Name;
}
