namespace LabelForge.Cli.Explain;

/// <summary>
/// A range as a bar of plain characters on a scale of decades from 0.01 % to 100 %, so that a preservative is seen as well
/// as a base; 1 % stands in the middle.
/// </summary>
internal sealed class RangeBar(int width)
{
    private const double Decades = 4;
    private const double Lowest = -2;

    /// <summary>The cells of a bar.</summary>
    public int Width { get; } = Math.Max(21, width);

    /// <summary>The line over the bars: 0.01, 0.1, 1, 10 and 100 over their places.</summary>
    public string Scale()
    {
        var line = new char[Width];
        Array.Fill(line, ' ');
        foreach (var mark in new[] { 0.01m, 0.1m, 1m, 10m, 100m })
        {
            var text = mark.ToString(CultureInfo.InvariantCulture);
            text.CopyTo(0, line, Math.Clamp(Cell(mark) - text.Length / 2, 0, Width - text.Length), text.Length);
        }
        return new string(line);
    }

    /// <summary>The bar: = where the share can be, o the estimate, | (or + inside the bar) the
    /// one-percent line, &lt; where it can be less than the scale shows.</summary>
    /// <param name="low">The least, percent.</param>
    /// <param name="high">The greatest, percent.</param>
    /// <param name="estimate">The estimate, percent.</param>
    public string Draw(decimal low, decimal high, decimal estimate)
    {
        var line = new char[Width];
        Array.Fill(line, ' ');
        var (from, to, line1) = (Cell(low), Cell(high), Cell(1));
        Array.Fill(line, '=', from, to - from + 1);
        line[line1] = line1 >= from && line1 <= to ? '+' : '|';
        if (low < 0.01m)
            line[0] = '<';
        line[Cell(estimate)] = 'o';
        return new string(line);
    }

    private int Cell(decimal percent) => percent <= 0
        ? 0
        : (int)Math.Round(Math.Clamp((Math.Log10((double)percent) - Lowest) / Decades, 0, 1) * (Width - 1), MidpointRounding.AwayFromZero);
}
