using System.Globalization;
using System.Text;
using BenchmarkDotNet.Reports;

namespace LabelForge.Benchmarks;

/// <summary>Writes docs/performance.md from what was measured.</summary>
internal static class PerformancePage
{
    public static string Of(IEnumerable<BenchmarkReport> reports, DateOnly on)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # How fast the order is proved

            Written by `dotnet run -c Release --project tests/LabelForge.Benchmarks` on {on:yyyy-MM-dd}; BenchmarkDotNet, short job, 2 cores. Other work ran on the machine at the time, so read the least time, and read it as "no slower than".

            A product of so many ingredients from five suppliers' lists that overlap, every third figure a range, the rest without figures. *strict*: lists in descending order throughout. *label*: the same lists trusted as labels only, each a union over the places of the one-percent line. *general solver*: the bounds and pairs of the strict lists by linear programs (OR-Tools, GLOP), one for each bound and each pair; it finds no order and asks nothing. For label lists it would need such a set of programs for each combination of places of the line. The answers of the two are compared before the time is taken. At 200 ingredients it is left out: some 40,000 programs take minutes.

            | ingredients | what | least | mean |
            | ---: | --- | ---: | ---: |

            """);
        var rows = reports.Where(r => r.ResultStatistics is not null).Select(r => (
                Count: (int)r.BenchmarkCase.Parameters["Ingredients"],
                What: r.BenchmarkCase.Descriptor.WorkloadMethod.Name switch { "Glop" => "general solver, strict", "Label" => "LabelForge, label", _ => "LabelForge, strict" },
                r.ResultStatistics!.Min, r.ResultStatistics.Mean))
            .OrderBy(r => r.Count).ThenBy(r => r.Min);
        foreach (var row in rows)
            page.Append(CultureInfo.InvariantCulture, $"| {row.Count} | {row.What} | {Time(row.Min)} | {Time(row.Mean)} |\n");
        page.Append("\nThe aim is 60 ingredients from five listed materials in less than 100 ms, warm.\n");
        return page.ToString();
    }

    private static string Time(double nanoseconds)
    {
        var (value, unit) = nanoseconds switch
        {
            >= 1e9 => (nanoseconds / 1e9, "s"),
            >= 1e6 => (nanoseconds / 1e6, "ms"),
            _ => (nanoseconds / 1e3, "us"),
        };
        return value.ToString(value >= 100 ? "0" : value >= 10 ? "0.0" : "0.00", CultureInfo.InvariantCulture) + " " + unit;
    }
}
