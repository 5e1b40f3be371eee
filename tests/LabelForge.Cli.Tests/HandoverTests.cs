using System.CommandLine;
using System.Diagnostics;
using System.Text.Json.Nodes;
using LabelForge.Cli.Handover;
using LabelForge.Cli.Help;

namespace LabelForge.Cli.Tests;

/// <summary>The natively compiled part of the command hands over what needs the books or the page, and nothing else.</summary>
[Collection(nameof(OneFolder))]
public sealed class HandoverTests
{
    private const string Switch = "LabelForge.Whole";

    // No program lies beside the tests to be handed a call: the command says so, and has read and written nothing until then.
    [Fact]
    public void What_opens_the_books_is_handed_over_before_anything_is_said_or_written()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-handover-").FullName;
        try
        {
            Assert.Equal(0, CommandRun.Of("init", folder).ExitCode);
            File.WriteAllText(Path.Combine(folder, "records.db"), "");
            var before = Files(folder);
            var handed = AsTheNativePart(folder, () => Verbs()
                .Where(v => v.Action is WholeAction)
                .Select(v => (Verb: VerbExamples.PathOf(v), Run: CommandRun.Of(Words(Example(v)))))
                .ToArray());
            Assert.True(handed.Length > 30, $"{handed.Length} verbs");
            Assert.All(handed, h =>
            {
                Assert.Equal((2, ""), (h.Run.ExitCode, h.Run.Output));
                Assert.StartsWith($"This needs the program {WholeCommand.Name}", h.Run.Messages, StringComparison.Ordinal);
                Assert.Single(h.Run.Messages.Trim().Split('\n'));
            });
            Assert.Equal(before, Files(folder));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("declare", "first-bar")]
    [InlineData("label", "first-bar", "--lot", "26R25-01E", "--out", "label.pdf", "--despite", "lot.missing")]
    [InlineData("check", "first-bar", "--lot", "26R25-01E")]
    [InlineData("today")]
    [InlineData("cost", "first-bar")]
    [InlineData("papers", "line-sheet")]
    public void What_only_looks_into_books_that_are_kept_is_done_where_none_are(params string[] words)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-handover-").FullName;
        try
        {
            Assert.Equal(0, CommandRun.Of("init", folder).ExitCode);
            var whole = CommandRun.Of([.. words, "--workshop", folder, "--format", "json"]);
            var native = AsTheNativePart(folder, () => CommandRun.Of([.. words, "--format", "json"]));
            Assert.Equal((whole.ExitCode, whole.Messages), (native.ExitCode, native.Messages));
            Assert.DoesNotContain(WholeCommand.Name, native.Messages, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // As it is handed out: two programs in one folder. The other is a script here, which tells what it was handed.
    [Fact]
    public void The_other_program_takes_the_place_of_this_one_with_its_words_its_input_and_its_exit_code()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("The program beside is a script of a shell.");
            return;
        }
        var folder = Directory.CreateDirectory(Path.Combine(AppContext.BaseDirectory, $"handover-{Environment.ProcessId}")).FullName;
        try
        {
            foreach (var file in Directory.EnumerateFiles(AppContext.BaseDirectory)
                .Where(f => Path.GetExtension(f) is ".dll" or ".json"))
                File.CreateSymbolicLink(Path.Combine(folder, Path.GetFileName(file)), file);
            var program = Path.Combine(folder, "LabelForge.Cli.dll");
            File.Delete(program);
            File.Copy(Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll"), program);
            var config = JsonNode.Parse(File.ReadAllText(Path.Combine(folder, "LabelForge.Cli.runtimeconfig.json")))!;
            config["runtimeOptions"]!["configProperties"]![Switch] = false;
            File.WriteAllText(Path.Combine(folder, "native.runtimeconfig.json"), config.ToJsonString());
            var other = Path.Combine(folder, WholeCommand.Name);
            File.WriteAllText(other, "#!/bin/sh\nprintf '%s\\n' \"$$\" \"$#\" \"$@\" \"$(cat)\"\nexit 7\n");
            File.SetUnixFileMode(other, UnixFileMode.UserRead | UnixFileMode.UserExecute);
            using var process = Process.Start(new ProcessStartInfo("dotnet",
                ["exec", "--runtimeconfig", Path.Combine(folder, "native.runtimeconfig.json"), program,
                    "receive", "castor oil", "5 lb", "--note", "", "--price", "\"äß\""])
            { RedirectStandardInput = true, RedirectStandardOutput = true })!;
            process.StandardInput.Write("what comes in");
            process.StandardInput.Close();
            var said = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.Equal((7, $"{process.Id}\n7\nreceive\ncastor oil\n5 lb\n--note\n\n--price\n\"äß\"\nwhat comes in\n"),
                (process.ExitCode, said));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Does this by the rules of the native part: what is behind the switch is not there.</summary>
    internal static T AsTheNativePart<T>(string folder, Func<T> run)
    {
        AppContext.SetSwitch(Switch, false);
        Directory.SetCurrentDirectory(folder);
        try
        {
            return run();
        }
        finally
        {
            AppContext.SetSwitch(Switch, true);
            Directory.SetCurrentDirectory(AppContext.BaseDirectory);
        }
    }

    // A check looks into the books for the lot that it is of.
    private static string Example(Command verb) =>
        (VerbExamples.Of(verb).LastOrDefault(e => e.Call.Contains(" --lot ", StringComparison.Ordinal))
            ?? VerbExamples.Of(verb).Last()).Call;

    private static string[] Words(string call) => [.. System.CommandLine.Parsing.CommandLineParser.SplitCommandLine(call).Skip(1)];

    private static string[] Files(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal)];

    private static IEnumerable<Command> Verbs() => All(CommandTree.Root()).Where(v => v.Action is not null && !v.Hidden);

    private static IEnumerable<Command> All(Command root) => root.Subcommands.SelectMany(v => All(v).Prepend(v));
}
