using System.Globalization;
using LabelForge.Benchmarks;
using LabelForge.Benchmarks.Page;

// How long the page holds out is no measure of speed: it is asked for by its name, with the minutes.
if (args is ["soak", .. var minutes])
{
    Console.WriteLine(
        await Soak.Table(TimeSpan.FromMinutes(minutes is [var some] ? double.Parse(some, CultureInfo.InvariantCulture) : 30)));
    return 0;
}

// The program's own part of a keystroke, without a browser.
if (args is ["keystroke-parts", var workshop])
{
    Console.WriteLine(KeystrokeParts.Table(workshop, ["harbour-wall-bar", "bramble-bar", "sugar-scrub", "bath-salt", "meadow-bar"]));
    return 0;
}

// Levels are learned from formulas, and how good the estimate is stands where the order is explained.
if (args is ["estimate"])
{
    EstimatePart.Learn();
    return 0;
}

// What the command compiled when it ran, for the compiler that works ahead of time.
if (args is ["profile"])
{
    Console.WriteLine($"{StartupProfile.Write(Repository.File("src/LabelForge.Cli/startup.mibc"))} methods");
    return 0;
}

// Each part measures one thing and writes its own section of docs/performance.md; growth draws docs/growth too.
(string Name, Func<string> Measure)[] parts =
[
    ("declare", DeclarationPart.Measure),
    ("sheets", SheetsPart.Measure),
    ("cold", ColdPart.Measure),
    ("keystroke", () => $"{Machine.Line()}\n\n{KeystrokeMeasure.Table().GetAwaiter().GetResult()}"),
    ("first-screen", () => $"{Machine.Line()}\n\n{FirstScreenMeasure.Table().GetAwaiter().GetResult()}"),
    ("check", CheckPart.Measure),
    ("ask", AskPart.Measure),
    ("records", RecordsPart.Measure),
    ("growth", GrowthPart.Measure),
    ("growth-books", GrowthPart.MeasureBooks),
];
var asked = args is [] or ["all"] ? [.. parts.Select(p => p.Name)] : args;
if (asked.FirstOrDefault(a => parts.All(p => p.Name != a)) is { } unknown)
{
    Console.Error
        .WriteLine(
            $"There is no part \"{unknown}\". Name some of: {string.Join(' ', parts.Select(p => p.Name))}; or all, or none for all; or "
                + $"soak and minutes.");
    return 2;
}
foreach (var (name, measure) in parts.Where(p => asked.Contains(p.Name)))
{
    Console.Error.WriteLine($"{name} ...");
    var text = measure();
    Console.WriteLine(text);
    // Read again for each part: another run may have written its own section meanwhile.
    var page = Repository.File("docs/performance.md");
    File.WriteAllText(page, PerformancePage.Put(File.ReadAllText(page), name, text));
}
return 0;
