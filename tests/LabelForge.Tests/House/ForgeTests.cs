using System.Text.RegularExpressions;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.House;

/// <summary>What the forge reads: that the workflow calls what is there, and that a form asks what can be answered.</summary>
public sealed partial class ForgeTests
{
    private static string In(params string[] path) => Path.Combine([Repository.Folder, .. path]);

    private static MapNode Read(string file) => YamlFile.ReadText(File.ReadAllText(file), Path.GetFileName(file));

    private static string Text(MapNode map, string key) => Assert.IsType<TextNode>(map[key]).Text;

    [Fact]
    public void The_workflow_runs_what_is_there_and_every_step_either_runs_or_uses_something()
    {
        var workflow = Read(In(".github", "workflows", "ci.yml"));
        Assert.NotNull(workflow["on"]);
        var jobs = Assert.IsType<MapNode>(workflow["jobs"]).Entries.Select(e => Assert.IsType<MapNode>(e.Value)).ToArray();
        var runs = new List<string>();
        foreach (var job in jobs)
        {
            Assert.NotEmpty(Text(job, "runs-on"));
            Assert.InRange(int.Parse(Text(job, "timeout-minutes"), System.Globalization.CultureInfo.InvariantCulture), 1, 60);
            foreach (var step in job.Items("steps").Cast<MapNode>())
            {
                Assert.True(step["run"] is null != step["uses"] is null);
                if (step["uses"] is TextNode uses)
                    Assert.Matches("^[a-z-]+/[a-z-]+@v[0-9]+$", uses.Text);
                else
                    runs.Add(Text(step, "run"));
            }
        }
        Assert.Contains(runs, r => r.EndsWith(".ci/run", StringComparison.Ordinal));
        Assert.All(runs.SelectMany(r => Paths().Matches(r)).Select(m => m.Value),
            path => Assert.True(Path.Exists(In(path.Split('/'))), path));
        Assert.True(File.Exists(In("global.json")));
    }

    public static TheoryData<string> Forms =>
        [.. Directory.EnumerateFiles(In(".github", "ISSUE_TEMPLATE")).Select(f => Path.GetFileName(f)).Where(f => f != "config.yml").Order()];

    [Theory]
    [MemberData(nameof(Forms))]
    public void A_form_has_a_name_and_asks_each_thing_once_in_a_way_that_the_forge_knows(string file)
    {
        var form = Read(In(".github", "ISSUE_TEMPLATE", file));
        Assert.NotEmpty(Text(form, "name"));
        Assert.NotEmpty(Text(form, "description"));
        var fields = form.Items("body").Cast<MapNode>().ToArray();
        Assert.All(fields, f => Assert.Contains(Text(f, "type"), new[] { "dropdown", "input", "textarea", "checkboxes", "markdown" }));
        Assert.All(fields, f => Assert.NotEmpty(Text(Assert.IsType<MapNode>(f["attributes"]), "label")));
        Assert.Distinct(fields.Select(f => Text(f, "id")));
        Assert.Contains(fields, f => f["validations"] is MapNode { } asked && Text(asked, "required") == "true");
    }

    // What a step names of ours: a script, the solution, a project, a folder that it makes is not there yet.
    [GeneratedRegex(@"(?<![\w$./])(?:\.ci/run|build/\w+|LabelForge\.sln|(?:src|tests)/LabelForge\.[\w.]+)")]
    private static partial Regex Paths();
}
