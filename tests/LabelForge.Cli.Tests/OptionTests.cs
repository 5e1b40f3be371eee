using System.CommandLine;
using System.Text.RegularExpressions;
using LabelForge.Cli.Help;

namespace LabelForge.Cli.Tests;

/// <summary>Every verb answers as data, and takes no option that it does not use.</summary>
public sealed partial class OptionTests
{
    // What these answer is read by a person, a shell or a browser.
    private static readonly string[] InWordsAlone = ["completion bash", "completion zsh", "completion fish", "completion powershell",
        "completion", "help", "serve"];

    [Fact]
    public void Every_verb_answers_in_JSON_or_is_one_that_no_program_reads() =>
        Assert.Equal(InWordsAlone.Order(StringComparer.Ordinal),
            Verbs().Where(v => v.Options.All(o => o.Name != "--format")).Select(VerbExamples.PathOf)
                .Concat(InWordsAlone.Where(w => !Known(w))).Distinct().Order(StringComparer.Ordinal));

    [Fact]
    public void What_answers_in_words_alone_says_so()
    {
        var run = CommandRun.Of("serve", "--format", "json");
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains("serve takes no --format: it answers in words alone.", run.Messages, StringComparison.Ordinal);
    }

    [Fact]
    public void No_verb_takes_an_option_of_another()
    {
        string[] all = [.. Verbs().SelectMany(v => v.Options).Select(o => o.Name).Where(o => o is not ("--help" or "--version"))
            .Distinct()];
        Assert.True(all.Length > 80, $"{all.Length} options");
        var root = CommandTree.Root();
        foreach (var verb in Verbs())
        {
            var path = VerbExamples.PathOf(verb);
            foreach (var option in all.Except(verb.Options.Select(o => o.Name)))
            {
                foreach (var call in new[] { root.Parse([.. path.Split(' '), option, "1"], CommandTree.Reading),
                    root.Parse([.. path.Split(' '), option], CommandTree.Reading) })
                {
                    Assert.True(CallMessages.IsWrong(call), $"{path} took {option}");
                    Assert.StartsWith($"{path} takes no {option}", CallMessages.Of(call), StringComparison.Ordinal);
                }
            }
        }
    }

    // An option that is only declared would be taken in silence: each is asked for where its verb is done.
    [Fact]
    public void Every_option_that_a_verb_declares_is_asked_for()
    {
        var unread = new List<string>();
        var declared = 0;
        foreach (var file in Directory.EnumerateFiles(Path.Combine(Repository.Folder, "src", "LabelForge.Cli"),
            "*.cs", SearchOption.AllDirectories)
            .Where(f => !f.Contains("/obj/", StringComparison.Ordinal) && Path.GetFileName(f) != "Shared.cs"))
        {
            var text = File.ReadAllText(file);
            foreach (var name in Declared(text))
            {
                declared++;
                if (!Regex.IsMatch(text, $@"(GetValue|IsJson|Say|GetResult|OfSet|ReadScan)\([^;]*\b{name}\b"))
                    unread.Add($"{Path.GetFileName(file)}: {name}");
            }
            // Those that the verbs on the books share: each method that adds them reads them.
            foreach (var method in text.Split("public static Command ").Skip(1))
            {
                foreach (var (adds, reads) in new[] { (@"\.Add(Asking)?To\(", "Note"), (@"\.Add(Asking|File)?To\(", "By"),
                    (@"\.Add(Asking|File)?To\(|dated: true", "On"), (@"\.Add(Asking|Sure)To\(", "Ask") })
                {
                    if (Regex.IsMatch(method, @"BookOptions\(\)[^;]*" + adds)
                        && !method.Contains($"options.{reads}(r", StringComparison.Ordinal))
                        unread.Add(
                            $"{Path.GetFileName(file)}: {method[..method.IndexOf('(', StringComparison.Ordinal)]} takes and does "
                                + $"not ask for {reads}");
                }
            }
        }
        Assert.True(declared > 100, $"{declared} options were found");
        Assert.Empty(unread);
    }

    private static IEnumerable<string> Declared(string text) => SingleOption().Matches(text).Select(m => m.Groups[1].Value)
        .Concat(SharedOptions().Matches(text).Select(m => m.Groups[1].Value).Where(n => !n.Contains('(', StringComparison.Ordinal)));

    private static bool Known(string path) => Verbs().Any(v => VerbExamples.PathOf(v) == path);

    private static IEnumerable<Command> Verbs() => All(CommandTree.Root()).Where(v => v.Action is not null && !v.Hidden);

    private static IEnumerable<Command> All(Command root) => root.Subcommands.SelectMany(v => All(v).Prepend(v));

    [GeneratedRegex(@"var (\w+) = verb\.Option<")]
    private static partial Regex SingleOption();

    [GeneratedRegex(@"(?:private (?:static )?readonly Option<[^>]+(?:>|\[\]>)|var) (\w+) = "
        + @"(?:new\(""--|verb\.(?:Workshop|Market|Format|Lot|Design|Names|On|Variant|Since)\()")]
    private static partial Regex SharedOptions();
}
