using LabelForge.Checks;
using LabelForge.Markets;

namespace LabelForge.Tests.Checks.FreshLabels;

/// <summary>
/// Labels that were written before anything was tried on them: sets.txt says how each set came out at first sight. Now all are
/// read to the end of their list, no right one gets a must, and every slip is found.
/// </summary>
public sealed class FreshLabelTests(ITestOutputHelper output)
{
    [Fact]
    public void No_right_label_gets_a_must()
    {
        var alarms = FreshLabel.All
            .SelectMany(l => l.Found.Where(f => f.Severity == Severity.Must).Select(f => $"{l.Id}: {f.Rule}: {f.Message}")).ToArray();
        foreach (var set in FreshLabel.All.GroupBy(l => l.Set))
        {
            output.WriteLine(
                $"{set.Key}: {set.Count(l => !l.Found.Any(f => f.Severity == Severity.Must))} of {set.Count()} right labels clean");
        }

        Assert.True(alarms.Length == 0, $"{alarms.Length}\n{string.Join("\n", alarms)}");
    }

    [Fact]
    public void Every_list_is_read_to_its_last_name()
    {
        var wrong = FreshLabel.All.Where(l => !string.Equals(Last(l), l.LastName, StringComparison.OrdinalIgnoreCase))
            .Select(l => $"{l.Id}: {Last(l)}, not {l.LastName}, of: {string.Join(" | ", l.Reading.Names.Select(n => n.Name))}").ToArray();
        Assert.True(wrong.Length == 0, $"{wrong.Length} of {FreshLabel.All.Count}\n{string.Join("\n", wrong)}");
    }

    [Fact]
    public void Every_slip_is_found()
    {
        var slips = FreshLabel.All.SelectMany(l => l.Slips.Select(s => (Label: l, Slip: s, Found: l.Judged(s).Report.Findings))).ToArray();
        var missed = slips.Where(s => !s.Found.Any(f => f.Rule == s.Slip.Rule && f.Severity != Severity.Note))
            .Select(s => $"{s.Label.Id}: {s.Slip.Rule} not in {string.Join(", ", s.Found.Select(f => f.Rule))}").ToArray();
        foreach (var set in slips.GroupBy(s => s.Label.Set))
        {
            output.WriteLine(
                $"{set.Key}: {set.Count(s => s.Found.Any(f => f.Rule == s.Slip.Rule && f.Severity != Severity.Note))} of {set.Count()} slips found");
        }

        Assert.True(missed.Length == 0, $"{missed.Length} of {slips.Length}\n{string.Join("\n", missed)}");
    }

    [Fact]
    public void What_a_slip_breaks_was_not_told_of_the_right_label()
    {
        var told = FreshLabel.All.SelectMany(l => l.Slips
            .Where(s => !Of(l.Judged(s).Report.Findings, s.Rule).Except(Of(l.Found, s.Rule)).Any())
            .Select(s => $"{l.Id}: {s.Rule}")).ToArray();
        Assert.True(told.Length == 0, $"{told.Length}\n{string.Join("\n", told)}");
    }

    private static IEnumerable<(Severity, string)> Of(IReadOnlyList<Finding> found, string rule) =>
        found.Where(f => f.Rule == rule && f.Severity != Severity.Note).Select(f => (f.Severity, f.Message));

    private static string Last(FreshLabel label) => label.Reading.Names.Length == 0 ? "-" : label.Reading.Names[^1].Name;
}
