using LabelForge.Print.Designs;
using LabelForge.Print.Scans;

namespace LabelForge.Cli.Verbs;

/// <summary>What a scan of a print shows, in lines of text.</summary>
internal static class ScanReport
{
    private const int LongestText = 34;

    // What a laser scanner of the usual kind needs; common practice.
    private const double MostGrowth = 0.1;

    /// <summary>Says it: as data where JSON is wanted, else in lines.</summary>
    public static void Say(string product, LabelReading found, bool json)
    {
        if (json)
        {
            JsonOut.Write(new JsonObject
            {
                ["product"] = product,
                ["widePercent"] = Math.Round(found.WidePercent, 2),
                ["highPercent"] = Math.Round(found.HighPercent, 2),
                ["texts"] = found.Texts
                    .ToJson(t => new JsonObject
                    {
                        ["role"] = Roles.NameOf(t.Role),
                        ["text"] = t.Text,
                        ["drawnMm"] = Math.Round(t.DrawnMm, 3),
                        ["printedMm"] = Math.Round(t.PrintedMm, 3),
                        ["leastMm"] = Math.Round(t.FloorMm, 3),
                        ["contrast"] = Math.Round(t.Contrast, 2),
                        ["highEnough"] = t.IsHighEnough,
                        ["source"] = t.Source
                    }),
                ["barcode"] = found.Symbol is { } symbol
                    ? new JsonObject
                    {
                        ["reads"] = symbol.Says,
                        ["drawnModuleMm"] = Math.Round(symbol.ModuleMm, 4),
                        ["printedModuleMm"] = Math.Round(symbol.PrintedModuleMm, 4),
                        ["growthMm"] = Math.Round(symbol.GrowthMm, 3)
                    }
                    : null,
            });
            return;
        }
        foreach (var line in Lines(product, found))
            Console.WriteLine(line);
    }

    private static IEnumerable<string> Lines(string product, LabelReading found)
    {
        yield return Said($"{product} on the scan: {found.WidePercent:0.0} % as wide and {found.HighPercent:0.0} % as high as drawn.");
        yield return Said($"{"",-22}{"drawn",9}{"printed",9}{"least",9}  contrast");
        foreach (var text in found.Texts)
        {
            var says = text.Text.Length > LongestText ? text.Text[..LongestText] + "..." : text.Text;
            yield return Said(
                $"{Roles.NameOf(text.Role),-22}{text.DrawnMm,6:0.00} mm{text.PrintedMm,6:0.00} mm{text.FloorMm,6:0.00} mm  {text.Contrast,4:0.0} to 1  {(text.IsHighEnough ? "" : "TOO LOW ")}{says}");
        }
        foreach (var text in found.Texts.Where(t => !t.IsHighEnough))
            yield return Said(
                $"The {Roles.NameOf(text.Role)} is printed {text.PrintedMm:0.00} mm high; {text.Source} asks for {text.FloorMm:0.00} mm. Print at actual size, or choose a larger label.");
        if (found.Symbol is { } symbol)
        {
            yield return Said(
                $"Barcode: {(symbol.Says is { } says ? $"reads \"{says.Replace('\u001D', ' ')}\"" : "cannot be read on this scan")}; modules {symbol.ModuleMm:0.000} mm drawn, {symbol.PrintedModuleMm:0.000} mm printed, ink {symbol.GrowthMm:+0.00;-0.00;0.00} mm at each edge{(Math.Abs(symbol.GrowthMm) > MostGrowth ? ": too much to rely on" : "")}.");
        }
        yield return Said($"Heights may err by {100 * LabelScan.HeightError:0} %; contrast is as the scanner sees it.");
    }

    private static string Said(FormattableString line) => line.ToString(CultureInfo.InvariantCulture).TrimEnd();
}
