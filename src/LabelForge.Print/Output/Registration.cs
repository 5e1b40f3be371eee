namespace LabelForge.Print.Output;

/// <summary>How a print is moved and stretched so that it lands where the labels are. The default value changes nothing.</summary>
/// <remarks>Stretched from the sheet's top left corner first, then moved: right and down are more than zero.</remarks>
/// <param name="NudgeXMm">To the right, in millimetres; less than zero to the left.</param>
/// <param name="NudgeYMm">Down, in millimetres; less than zero up.</param>
/// <param name="StretchXPercent">Wider by so many percent; less than zero narrower.</param>
/// <param name="StretchYPercent">Higher by so many percent; less than zero lower.</param>
public readonly record struct Registration(decimal NudgeXMm, decimal NudgeYMm, decimal StretchXPercent, decimal StretchYPercent)
{
    /// <summary>The farthest a print is moved, in millimetres; more is a wrong stock or a wrong unit.</summary>
    public const decimal MostNudgeMm = 20m;

    /// <summary>The most a print is stretched, in percent; more is "fit to page" in the print dialogue, to be turned off there.</summary>
    public const decimal MostStretchPercent = 5m;

    /// <summary>How much wider, as a factor.</summary>
    public double FactorX => (double)(1m + StretchXPercent / 100m);

    /// <summary>How much higher, as a factor.</summary>
    public double FactorY => (double)(1m + StretchYPercent / 100m);

    /// <summary>Where a point of the sheet is drawn; points of 1/72 in from the top left corner, down.</summary>
    public (double X, double Y) Apply(double x, double y) =>
        (x * FactorX + Lettering.Points.OfMillimetres(NudgeXMm), y * FactorY + Lettering.Points.OfMillimetres(NudgeYMm));

    /// <summary>Reads a nudge: <c>0.5,-0.3</c>, in millimetres to the right and down.</summary>
    public static Parsed<(decimal X, decimal Y)> ParseNudge(string text) => Parse(text, MostNudgeMm, "printer.nudge");

    /// <summary>Reads a stretch: <c>0.4,-0.2</c>, in percent wider and higher.</summary>
    public static Parsed<(decimal X, decimal Y)> ParseStretch(string text) => Parse(text, MostStretchPercent, "printer.stretch");

    /// <inheritdoc/>
    public override string ToString() => FormattableString.Invariant(
        $"moved {NudgeXMm:0.###} mm right and {NudgeYMm:0.###} mm down, {StretchXPercent:0.####} % wider and {StretchYPercent:0.####} % higher");

    private static Parsed<(decimal X, decimal Y)> Parse(string text, decimal most, string code)
    {
        var parts = text.Split(',')
            .Select(p => decimal.TryParse(p.Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign,
                CultureInfo.InvariantCulture, out var v) ? v : (decimal?)null).ToArray();
        if (parts is not [{ } x, { } y])
            return Parsed<(decimal, decimal)>.Refused(code, ("text", text));
        return Math.Abs(x) <= most && Math.Abs(y) <= most
            ? Parsed<(decimal, decimal)>.Of((x, y))
            : Parsed<(decimal, decimal)>.Refused(code + "-too-large", ("text", text), ("most", most));
    }
}
