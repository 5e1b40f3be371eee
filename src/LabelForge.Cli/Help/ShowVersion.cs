using System.CommandLine.Invocation;
using System.Reflection;

namespace LabelForge.Cli.Help;

/// <summary>Says which program this is, from which commit it was built, and of which day the law is that it knows.</summary>
internal sealed class ShowVersion : SynchronousCommandLineAction
{
    public override bool ClearsParseErrors => true;

    /// <summary>The version alone: the one that Directory.Build.props gives every assembly.</summary>
    public static string Number => Informational.Split('+')[0];

    /// <summary>The commit, or null where the sources were built outside a repository.</summary>
    public static string? Commit => Informational.Split('+') is [_, var commit, ..] ? commit : null;

    private static string Informational =>
        typeof(ShowVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0";

    /// <summary>The answer, with plain line ends.</summary>
    public static string Text()
    {
        var read = LawTexts.All.Select(t => t.ReadOn).Order().ToArray();
        var days = read[0] == read[^1] ? $"on {read[0].ToIso()}" : $"from {read[0].ToIso()} to {read[^1].ToIso()}";
        return $"labelforge {Number}\n{(Commit is { } commit ? $"commit {commit}\n" : "")}law as read {days}: {string.Join(", ", Shipped.Markets.Ids)}; "
            + $"{read.Length} texts, each with its state: labelforge rules --law\n";
    }

    public override int Invoke(ParseResult parseResult)
    {
        Console.Write(Text());
        return Exit.Done;
    }
}
