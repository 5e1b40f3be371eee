namespace LabelForge.Cli.Explain;

/// <summary>The width of what a person reads on, and how text is set into it.</summary>
internal static class Page
{
    private const int Narrowest = 60;
    private const int Widest = 140;
    private const int Usual = 100;

    /// <summary>The columns there are: the terminal's; where the output goes to a file, what COLUMNS says, else 100.</summary>
    public static int Width
    {
        get
        {
            if (!Console.IsOutputRedirected)
                return Math.Clamp(Console.WindowWidth, Narrowest, Widest);
            return PlainFigure.Whole(Environment.GetEnvironmentVariable("COLUMNS")) is { } columns
                ? Math.Clamp(columns, Narrowest, Widest)
                : Usual;
        }
    }

    /// <summary>Text broken into lines no longer than the width; lines after the first are indented by <paramref name="hang"/>.</summary>
    public static IEnumerable<string> Wrap(string text, int width, int indent = 0, int? hang = null)
    {
        var line = new string(' ', indent);
        var start = indent;
        // A figure is not parted from its sign.
        foreach (var word in text.Replace(" %", "\u00A0%", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(w => w.Replace('\u00A0', ' ')))
        {
            if (line.Length > start && line.Length + 1 + word.Length > width)
            {
                yield return line;
                start = hang ?? indent;
                line = new string(' ', start);
            }
            line += line.Length > start ? " " + word : word;
        }
        if (line.Length > start)
            yield return line;
    }

    /// <summary>A percentage to about four figures that count: 63.21, 4.070, 0.8130.</summary>
    public static string Percent(decimal percent) =>
        percent.ToString(percent >= 10 ? "0.00" : percent >= 1 ? "0.000" : "0.0000", CultureInfo.InvariantCulture);

    /// <summary>A range of percentages, or one figure where both ends are the same.</summary>
    public static string Percents(decimal low, decimal high) =>
        Percent(low) == Percent(high) ? $"{Percent(low)} %" : $"{Percent(low)} to {Percent(high)} %";
}
