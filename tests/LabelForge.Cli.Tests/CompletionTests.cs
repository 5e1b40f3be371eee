using System.Diagnostics;

namespace LabelForge.Cli.Tests;

/// <summary>The Tab key, pressed in a bash that has read <c>labelforge completion bash</c>.</summary>
public sealed class CompletionTests : IDisposable
{
    private readonly ExampleWorkshop _example = new();
    private readonly string _nowhere = Directory.CreateTempSubdirectory("labelforge-nowhere-").FullName;

    [Fact]
    public void Verbs_are_finished() => Assert.Equal(["declare", "demo", "design"], Tab("labelforge de"));

    [Fact]
    public void Verbs_below_a_verb_are_finished() => Assert.Equal(["barcode", "new", "read"], Tab("labelforge lot "));

    [Fact]
    public void Options_are_finished_once_a_dash_is_typed() => Assert.Equal(["--variant"], Tab("labelforge declare bramble-bar --v"));

    [Fact]
    public void Recipes_of_the_workshop_in_the_current_folder_are_proposed() =>
        Assert.Equal(["bath-salt", "bramble-bar"], Tab("labelforge declare b"));

    [Fact]
    public void Recipes_of_the_workshop_named_are_proposed() =>
        Assert.Equal(["hayloft-bar"], Tab($"labelforge declare --workshop {_example.Opened.Folder} hay", Path.GetTempPath()));

    [Fact]
    public void Materials_of_the_workshop_are_proposed() => Assert.Equal(["castor-oil"], Tab("labelforge receive cas"));

    [Fact]
    public void Stock_names_are_proposed() =>
        Assert.Equal(["us-letter-10-2x4in"], Tab("labelforge sheet bramble-bar --stock us-letter-10-2"));

    [Fact]
    public void Designs_are_proposed() => Assert.Contains("bar-2x4", Tab("labelforge label bramble-bar --design bar-2"));

    [Fact]
    public void Markets_are_proposed() => Assert.Equal(["ca", "eu", "uk", "us"], Tab("labelforge declare bramble-bar --market "));

    [Fact]
    public void Kinds_of_product_are_proposed() => Assert.Contains("soap-bar", Tab("labelforge check label.txt --product so"));

    [Fact]
    public void Values_that_an_option_is_held_to_are_proposed() =>
        Assert.Equal(["json", "text"], Tab("labelforge declare bramble-bar --format "));

    [Fact]
    public void A_variant_with_a_space_in_its_name_is_written_so_that_the_shell_takes_it_for_one_word() =>
        Assert.Equal(["Hayloft\\ Soak"], Tab("labelforge declare bath-salt --variant H"));

    [Fact]
    public void What_stands_behind_the_cursor_is_left_out_of_the_question() =>
        Assert.Equal(["bramble-bar"], Tab("labelforge declare br --market us", cursor: "labelforge declare br".Length));

    [Fact]
    public void Lots_in_the_books_are_proposed()
    {
        Assert.Equal(0,
            CommandRun.Of("batch", "start", "bramble-bar", "--lot", "26R25-02C", "--workshop", _example.Opened.Folder).ExitCode);
        Assert.Equal(["26R25-02C"], Tab("labelforge batch show "));
        Assert.Equal(["26R25-02C"], Tab("labelforge label bramble-bar --lot 26"));
    }

    [Fact]
    public void A_press_of_the_key_makes_no_books()
    {
        Assert.Empty(Tab("labelforge batch show "));
        Assert.False(File.Exists(Path.Combine(_example.Opened.Folder, "records.db")));
    }

    [Fact]
    public void Where_there_is_no_workshop_nothing_is_proposed_and_nothing_is_said() => Assert.Empty(Tab("labelforge declare ", _nowhere));

    [Theory]
    [InlineData("zsh", "compdef _labelforge labelforge")]
    [InlineData("fish", "complete -c labelforge")]
    [InlineData("powershell", "Register-ArgumentCompleter")]
    public void Other_shells_have_their_lines_too(string shell, string line) =>
        Assert.Contains(line, CommandRun.Of("completion", shell).Output);

    [Fact]
    public void A_shell_without_lines_is_refused() => Assert.Equal(2, CommandRun.Of("completion", "tcsh").ExitCode);

    public void Dispose()
    {
        _example.Dispose();
        Directory.Delete(_nowhere, recursive: true);
    }

    // What bash would offer: it fills these variables before it calls the function, and reads COMPREPLY after.
    private List<string> Tab(string line, string? folder = null, int? cursor = null)
    {
        var typed = line[..(cursor ?? line.Length)];
        var script = $$"""
            labelforge() { dotnet '{{Path.Combine(AppContext.BaseDirectory, "LabelForge.Cli.dll")}}' "$@"; }
            eval "$(labelforge completion bash)"
            COMP_LINE='{{line}}'; COMP_POINT={{typed.Length}}
            COMP_WORDS=({{typed}}); COMP_CWORD=$(( ${#COMP_WORDS[@]} - 1 ))
            if [[ '{{typed}}' == *' ' ]]; then COMP_CWORD=${#COMP_WORDS[@]}; COMP_WORDS+=(''); fi
            _labelforge labelforge
            printf '%s\n' "${COMPREPLY[@]}"
            """;
        var start = new ProcessStartInfo("bash", ["--norc", "-c", script])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = folder ?? _example.Opened.Folder,
        };
        using var process = Process.Start(start)!;
        var errors = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal("", errors.GetAwaiter().GetResult());
        return [.. output.Split('\n', StringSplitOptions.RemoveEmptyEntries)];
    }
}
