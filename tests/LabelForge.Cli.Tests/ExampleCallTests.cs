using System.Diagnostics;
using System.Text.Json;
using LabelForge.Cli.Help;

namespace LabelForge.Cli.Tests;

/// <summary>What help shows can be typed as it stands.</summary>
[Collection(nameof(OneFolder))]
public sealed class ExampleCallTests
{
    // serve waits for a browser; the tests of the page start it. agree-server is for books on another machine; the example's
    // are in its folder.
    private static readonly string[] NeverData = ["completion", "help", "serve"];

    private static readonly string[] Waiting = ["serve", "agree-server"];

    [Fact]
    public void Every_verb_shows_an_example()
    {
        var without = Verbs(CommandTree.Root()).Where(v => v.Action is not null && !v.Hidden && !VerbExamples.Of(v).Any())
            .Select(VerbExamples.PathOf);
        Assert.Empty(without);
    }

    [Fact]
    public void Every_example_belongs_to_a_verb()
    {
        var known = Verbs(CommandTree.Root()).Select(VerbExamples.PathOf).ToHashSet();
        Assert.All(VerbExamples.All, e => Assert.Contains(e.Verb, known));
    }

    // The last example of each verb is asked for as data, so that each verb answers so; the others as they stand.
    [Fact]
    public void Every_example_runs_in_the_example_workshop_and_every_verb_answers_as_data_where_asked()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-calls-").FullName;
        var answers = new List<string>();
        try
        {
            Assert.Equal(0, Run(folder, "labelforge demo --out shown").Code);
            var workshop = Path.Combine(folder, "shown", "workshop");
            File.WriteAllText(Path.Combine(workshop, "pieces.csv"),
                string.Join('\n', "113.2 113.5 114.1 113.0 113.8 114.0 113.3 113.9 113.6 113.1 114.2 113.7".Split(' ')));
            File.WriteAllText(Path.Combine(workshop, "drying.csv"), "0,125.0\n7,121.0\n14,118.4\n21,116.6\n28,115.4\n35,114.6\n");
            File.WriteAllText(Path.Combine(workshop, "delivery.csv"), "material,amount,price\nolive-oil,1 kg,12.00\n");
            foreach (var example in VerbExamples.All.Where(e => !Waiting.Contains(e.Verb)))
            {
                var asData = VerbExamples.All.Last(e => e.Verb == example.Verb) == example
                    && !NeverData.Contains(example.Verb)
                    && !IsOfTheShell(example.Call);
                var (code, said) = Run(workshop,
                    asData && !example.Call.Contains("--format", StringComparison.Ordinal)
                        ? $"{example.Call} --format json"
                        : example.Call, asData);
                // What is for people to read says so.
                if (asData && code == 2 && said.Contains("--format json", StringComparison.Ordinal))
                    continue;
                Assert.True(code == 0, $"{example.Call}\nended with {code}:\n{said}");
                if (asData)
                    answers.Add($"{example.Verb}: {string.Join(' ', Names(said, example.Call))}");
            }
            Assert.Equal(Approved(answers), answers);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void Every_task_of_the_cookbook_is_done_by_its_calls()
    {
        var lines = File.ReadAllLines(Path.Combine(Repository.Folder, "docs", "cookbook.md"));
        Assert.Equal(20, lines.Count(l => l.StartsWith("## ", StringComparison.Ordinal)));
        var folder = Directory.CreateTempSubdirectory("labelforge-tasks-").FullName;
        try
        {
            Assert.Equal(0, Run(folder, "labelforge demo").Code);
            foreach (var call in lines.Where(l => l.StartsWith("    labelforge ", StringComparison.Ordinal)).Select(l => l.Trim()))
            {
                var (code, said) = Run(Path.Combine(folder, "demo-out", "workshop"), call);
                Assert.True(code == 0, $"{call}\nended with {code}:\n{said}");
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // A stranger's ten minutes: nothing but README, from top to bottom, in an empty folder; what is of the example's workshop, there.
    [Fact]
    public void Every_call_of_README_runs_as_it_stands_from_an_empty_folder_to_a_printed_sheet()
    {
        var readme = File.ReadAllText(Path.Combine(Repository.Folder, "README.md"));
        string[] calls =
            [.. readme.Split('\n').Where(l => l.StartsWith("    labelforge ", StringComparison.Ordinal)).Select(l => l.Trim())];
        Assert.Equal("labelforge init my-workshop", calls[0]);
        var folder = Directory.CreateTempSubdirectory("labelforge-readme-").FullName;
        try
        {
            Assert.Equal(0, Run(folder, "labelforge demo").Code);
            foreach (var call in calls.Where(c => !c.StartsWith("labelforge serve ", StringComparison.Ordinal)))
            {
                // A label of before, made elsewhere: here one of the new workshop's own stands for it.
                if (call.Contains("old-label", StringComparison.Ordinal) && !File.Exists(Path.Combine(folder, "old-label.pdf")))
                {
                    var own = "labelforge label my-workshop/recipes/first-bar.yaml --lot 26R25-01E --out old-label.pdf";
                    Assert.Equal(0, Run(folder, own).Code);
                    File.WriteAllText(Path.Combine(folder, "old-label.txt"), "Harbour soap\nNet Wt 4 oz (113 g)\n");
                }
                var isOfTheExample = call.Contains("bramble-bar", StringComparison.Ordinal)
                    || call.Contains("--today", StringComparison.Ordinal);
                var (code, said) = Run(isOfTheExample ? Path.Combine(folder, "demo-out", "workshop") : folder, call);
                var isAnotherLabel = call.Contains("old-label", StringComparison.Ordinal);
                Assert.True(code == 0 || (isAnotherLabel && code == 1), $"{call}\nended with {code}:\n{said}");
            }
            Assert.All(new[] { "bars.pdf", "bench.pdf", "findings.html" }, f => Assert.True(File.Exists(Path.Combine(folder, f)), f));
            // What README quotes of the answer is what is answered.
            var declared = Run(folder, "labelforge declare my-workshop/recipes/first-bar.yaml").Said;
            const string quoted = "above 1.59 % it stands before Fragrance, below it after.";
            Assert.Contains($"Propylene Glycol: {quoted}", declared, StringComparison.Ordinal);
            Assert.Contains(quoted, readme, StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static bool IsOfTheShell(string call) => call.IndexOfAny(['|', '>', '<', ';', '&', '$', '*']) >= 0;

    // The names at the top of an answer, or of each thing that it lists: other programs go by them. They are there whether or not they
    // have a value, so no day changes them.
    private static IEnumerable<string> Names(string said, string call)
    {
        try
        {
            using var json = JsonDocument.Parse(said);
            var top = json.RootElement.ValueKind == JsonValueKind.Array ? json.RootElement[0] : json.RootElement;
            return [.. top.EnumerateObject().Select(p => p.Name)];
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            throw new Xunit.Sdk.XunitException($"{call} --format json says:\n{said}");
        }
    }

    private static string[] Approved(IReadOnlyList<string> answers) =>
        Repository.Approved("answers.txt", string.Concat(answers.Select(a => a + "\n"))).Split('\n')[..^1];

    private static IEnumerable<System.CommandLine.Command> Verbs(System.CommandLine.Command root) =>
        root.Subcommands.SelectMany(v => Verbs(v).Prepend(v));

    // Typed into a shell, quotes and all, as a maker types it: the shell makes words of the call, or runs it where it is more
    // than one program's words.
    private static (int Code, string Said) Run(string folder, string call, bool outputAlone = false)
    {
        var words = call["labelforge".Length..];
        if (IsOfTheShell(call))
        {
            var program = $"dotnet '{Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll")}'";
            return Shell(folder, $"{program}{words} 2>&1 </dev/null");
        }
        var split = Shell(folder, $"printf '%s\\0'{words}").Said.Split('\0')[..^1];
        Directory.SetCurrentDirectory(folder);
        try
        {
            var run = CommandRun.Of(split);
            return (run.ExitCode, outputAlone && run.ExitCode == 0 ? run.Output : run.Output + run.Messages);
        }
        finally
        {
            Directory.SetCurrentDirectory(AppContext.BaseDirectory);
        }
    }

    private static (int Code, string Said) Shell(string folder, string line)
    {
        using var process = Process.Start(new ProcessStartInfo("bash", ["-c", line])
        {
            RedirectStandardOutput = true,
            WorkingDirectory = folder,
        })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said);
    }
}

/// <summary>Tests that stand in a folder of their own: the process has but one, so they run alone.</summary>
[CollectionDefinition(nameof(OneFolder), DisableParallelization = true)]
public sealed class OneFolder;
