using System.CommandLine.Help;

namespace LabelForge.Cli.Help;

/// <summary>The help of a verb, or of the whole command: what it does, calls to start from, what
/// it takes; 80 columns wide wherever it is shown.</summary>
/// <remarks>Made of the tree alone: it opens no workshop and no books.</remarks>
public static class HelpText
{
    /// <summary>The widest line, in characters; examples aside, which are copied whole.</summary>
    public const int Width = 80;

    /// <summary>The text, with plain line ends.</summary>
    public static string Of(Command command) => command.Parents.Any() ? OfVerb(command) : OfAll(command);

    private static string OfAll(Command root)
    {
        var text = new StringBuilder();
        Wrap(text, "", root.Description!);
        text.Append("\n    labelforge <verb> ...\n    labelforge help <verb>     what a verb takes, with examples\n");
        var verbs = root.Subcommands.Where(v => !v.Hidden).ToDictionary(v => v.Name, StringComparer.Ordinal);
        var grouped = VerbGroups.All.SelectMany(g => g.Verbs).ToHashSet(StringComparer.Ordinal);
        foreach (var (title, names) in VerbGroups.All.Append((VerbGroups.Rest, [.. verbs.Keys.Where(n => !grouped.Contains(n))])))
        {
            var there = names.Where(verbs.ContainsKey).Select(n => verbs[n]).ToArray();
            if (there.Length == 0)
                continue;
            text.Append($"\n{title}\n");
            foreach (var verb in there)
                Row(text, verb.Name, verb.Description ?? "", 16);
        }
        text.Append('\n');
        Wrap(text, "", $"Exit code: {Exit.InALine}.");
        return text.ToString();
    }

    private static string OfVerb(Command verb)
    {
        var (text, path) = (new StringBuilder(), VerbExamples.PathOf(verb));
        Wrap(text, "", $"{verb.Description}.");
        if (verb.Action is not null)
            text.Append($"\n    {Usage(verb, path)}\n");
        Examples(text, verb);
        if (verb.Subcommands.Any(v => !v.Hidden))
            text.Append('\n');
        foreach (var under in verb.Subcommands.Where(v => !v.Hidden))
            Row(text, $"{path} {under.Name}", under.Description ?? "", 22);
        if (verb.Arguments.Count > 0)
            text.Append('\n');
        foreach (var argument in verb.Arguments)
            Row(text, ValueNames.Of(argument), ValueNames.Says(argument), 24);
        var options = ValueNames.Shown(verb).ToArray();
        foreach (var (title, some) in new[] { ("Needed", options.Where(o => o.Required)), ("Optional", options.Where(o => !o.Required)) })
        {
            if (some.Any())
                text.Append($"\n{title}\n");
            foreach (var option in some)
                Row(text, ValueNames.Of(option), ValueNames.Says(option), 24);
        }
        return text.ToString();
    }

    private static string Usage(Command verb, string path)
    {
        var words = verb.Arguments.Select(a => a.Arity.MinimumNumberOfValues == 0 ? $"[{ValueNames.Of(a)}]" : ValueNames.Of(a));
        var needed = verb.Options.Where(o => o.Required).Select(ValueNames.Of);
        return string.Join(' ',
            new[] { "labelforge", path }.Concat(words).Concat(needed)
                .Append(verb.Options.Any(o => !o.Required && o is not HelpOption) ? "[options]" : "")).TrimEnd();
    }

    private static void Examples(StringBuilder text, Command verb)
    {
        foreach (var example in VerbExamples.Of(verb))
        {
            if (example.Says.Length > 0)
            {
                text.Append('\n');
                Wrap(text, "", example.Says);
            }
            text.Append($"    {example.Call}\n");
        }
    }

    private static void Row(StringBuilder text, string name, string says, int column)
    {
        // A long name stands on a line of its own.
        var indent = new string(' ', column + 2);
        if (name.Length >= column)
        {
            text.Append($"  {name}\n");
            Wrap(text, indent, says);
            return;
        }
        Wrap(text, indent, says, $"  {name.PadRight(column)}");
    }

    // Fills lines up to the width; what has no space in it is never cut.
    private static void Wrap(StringBuilder text, string indent, string says, string? first = null)
    {
        var line = new StringBuilder(first ?? indent);
        var empty = true;
        foreach (var word in says.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            if (!empty && line.Length + 1 + word.Length > Width)
            {
                text.Append(line).Append('\n');
                line.Clear().Append(indent);
                empty = true;
            }
            line.Append(empty ? "" : " ").Append(word);
            empty = false;
        }
        text.Append(line.ToString().TrimEnd()).Append('\n');
    }
}
