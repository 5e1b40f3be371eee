using System.Text;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using LabelForge.Records.Spreadsheets;
using LabelForge.Records.Weighing;
using static LabelForge.Fuzz.Targets.AllTargets;

namespace LabelForge.Fuzz.Targets;

/// <summary>
/// Tables that people wrote: weighings, drying, deliveries. Always holds: a table is read or refused; its cells written and
/// read again are the same, and none that is written would run as a formula.
/// </summary>
internal static class CsvTarget
{
    public static readonly string[] Words = ["name,mass\n", "mass oz\n", "113.2\n", "14,112.6\n", "2026-11-25", "material,amount,price\n",
        "castor-oil,1 kg,12.00\n", "\"", "\"\"", ";", "\t", "\r\n", "=1+1", "'=", "@", "#", "-", "+", "struck by", "best before"];

    private static readonly Lazy<(Workshop Workshop, string File)> Bench = new(() =>
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-fuzz-csv-").FullName;
        AppDomain.CurrentDomain.ProcessExit += (_, _) => Directory.Delete(folder, recursive: true);
        File.WriteAllText(Path.Combine(folder, "workshop.yaml"),
            "business: Test Bench\nplace: { street: 1 Example Lane, city: Fairport, region: ME, postcode: \"00000\", country: US "
                + "}\ncontact: { phone: \"555-0100\" }\n");
        Directory.CreateDirectory(Path.Combine(folder, "materials"));
        File.WriteAllText(Path.Combine(folder, "materials", "castor-oil.yaml"),
            "name: Castor oil\nkind: oil\ncontains: Ricinus Communis Seed Oil\ndensity: 0.96 g/mL\n");
        return (Workshop.Open(folder), Path.Combine(folder, "list.csv"));
    });

    public static void Run(byte[] input)
    {
        var text = Encoding.UTF8.GetString(input);
        Refusable(() =>
        {
            var rows = TextTable.Read(text, "list.csv");
            var written = SafeCsv.Write(["first"], rows.Select(r => (IReadOnlyList<object?>)[.. r.Cells.Prepend("x")]));
            var back = TextTable.Read(written, "list.csv").Skip(1).ToList();
            Holds(back.Count == rows.Count, "as many rows come back");
            for (var i = 0; i < rows.Count; i++)
                Holds(back[i].Cells.Skip(1).Select(SafeCsv.Plain).SequenceEqual(rows[i].Cells), "cells come back as they were");
            Holds(back.All(r => r.Cells.All(c => c.Length == 0 || !"=+-@\t\r".Contains(c[0], StringComparison.Ordinal))),
                "no cell is a formula");
        });
        Refusable(() => WeighingList.Of(TextTable.Read(text, "list.csv"), "list.csv"));
        var (workshop, file) = Bench.Value;
        File.WriteAllBytes(file, input);
        Refusable(() => DryingList.ReadFile(file));
        Refusable(() => ReceiptList.Read(file, workshop, new DateOnly(2026, 11, 25), "maker"));
    }

    private static void Refusable(Action read)
    {
        try
        {
            read();
        }
        catch (InputException)
        {
        }
    }
}
