using LabelForge.Print.Drawing;
using ZXing.Common;

namespace LabelForge.Print.Barcodes;

/// <summary>Draws modules as ink on the printer's grid of dots.</summary>
internal static class SymbolDrawing
{
    public static InkBlock Draw(BitMatrix modules, SymbolRules rules, BarcodeOptions options, string? caption)
    {
        var module = WholeDots(options.LeastModuleWidth ?? rules.ModuleWidth, options.Dpi);
        // A linear symbol is one row of modules, as high as asked; a square one has rows of one module.
        var row = rules.Height is { } height ? WholeDots(options.Height ?? height, options.Dpi) : module;

        // Exact arithmetic, once for each column and row and not for each rectangle: labels with numbers of their own have thousands.
        var (across, down) = (Places(modules.Width, module, rules.QuietLeft * module, options.Dpi),
            Places(modules.Height, row, rules.QuietAround * module, options.Dpi));
        var (wide, high) = (Places(modules.Width, module, 0, options.Dpi), Places(modules.Height, row, 0, options.Dpi));
        var bars = ImmutableArray.CreateBuilder<InkRectangle>();
        foreach (var run in Runs(modules))
            bars.Add(new InkRectangle(across[run.X], down[run.Y], wide[run.Width], high[run.Height]));

        return new InkBlock(
            Length.FromMillimetres(Millimetres((modules.Width + rules.QuietLeft + rules.QuietRight) * module, options.Dpi)),
            Length.FromMillimetres(Millimetres(modules.Height * row + 2 * rules.QuietAround * module, options.Dpi)),
            bars.ToImmutable(),
            caption);
    }

    private static int WholeDots(Length least, int dpi) => (int)Math.Ceiling(least.Millimetres * dpi / Length.MillimetresPerInch);

    private static decimal[] Places(int count, int step, int from, int dpi)
    {
        var places = new decimal[count + 1];
        for (var i = 0; i <= count; i++)
            places[i] = Millimetres(from + i * step, dpi);
        return places;
    }

    private static decimal Millimetres(int dots, int dpi) => dots * Length.MillimetresPerInch / dpi;

    // Neighbouring modules of a row are one rectangle, and equal runs in rows below lengthen it: fewer edges, and no
    // hairline between rectangles that touch.
    private static IEnumerable<(int X, int Y, int Width, int Height)> Runs(BitMatrix modules)
    {
        var open = new Dictionary<(int X, int Width), int>();
        for (var y = 0; y <= modules.Height; y++)
        {
            var here = y < modules.Height ? RowRuns(modules, y) : [];
            foreach (var (run, top) in open.Where(o => !here.Contains(o.Key)).ToList())
            {
                open.Remove(run);
                yield return (run.X, top, run.Width, y - top);
            }

            foreach (var run in here)
                open.TryAdd(run, y);
        }
    }

    private static HashSet<(int X, int Width)> RowRuns(BitMatrix modules, int y)
    {
        var runs = new HashSet<(int, int)>();
        var x = 0;
        while (x < modules.Width)
        {
            var start = x;
            while (x < modules.Width && modules[x, y])
                x++;
            if (x > start)
                runs.Add((start, x - start));
            else
                x++;
        }

        return runs;
    }
}
