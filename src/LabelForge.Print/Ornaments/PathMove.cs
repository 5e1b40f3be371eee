namespace LabelForge.Print.Ornaments;

/// <summary>Turns and moves path data of the commands that <see cref="Outlines"/> writes: M, L, C, A, H, V and Z, all absolute.</summary>
internal static class PathMove
{
    /// <summary>Turns a path about the origin, then moves it.</summary>
    /// <param name="data">The path.</param>
    /// <param name="degrees">By how much, clockwise as it is seen.</param>
    /// <param name="to">Where the origin goes.</param>
    public static string Of(string data, double degrees, Spot to)
    {
        var (cos, sin) = (Math.Cos(degrees * Math.PI / 180), Math.Sin(degrees * Math.PI / 180));
        Spot Moved(double x, double y) => new Spot(x * cos - y * sin, x * sin + y * cos) + to;
        var text = new StringBuilder(data.Length);
        var (at, command, pen) = (0, ' ', default(Spot));
        while (at < data.Length)
        {
            if (char.IsLetter(data[at]))
                command = data[at++];
            switch (command)
            {
                case 'Z':
                    text.Append('Z');
                    break;
                case 'A':
                    var (rx, ry, turn, large, sweep) = (Number(), Number(), Number(), Number(), Number());
                    pen = new Spot(Number(), Number());
                    text.Append(CultureInfo.InvariantCulture,
                        $"A{Outlines.Number(rx)} {Outlines.Number(ry)} {Outlines.Number(turn + degrees)} {large:0} {sweep:0} {Outlines.Of(Moved(pen.X, pen.Y))}");
                    break;
                case 'H' or 'V':
                    pen = command == 'H' ? pen with { X = Number() } : pen with { Y = Number() };
                    text.Append('L').Append(Outlines.Of(Moved(pen.X, pen.Y)));
                    break;
                default:
                    text.Append(command);
                    for (var i = 0; i < (command == 'C' ? 3 : 1); i++)
                    {
                        pen = new Spot(Number(), Number());
                        text.Append(i > 0 ? " " : "").Append(Outlines.Of(Moved(pen.X, pen.Y)));
                    }
                    break;
            }
            while (at < data.Length && data[at] is ' ' or ',')
                at++;
        }
        return text.ToString();

        double Number()
        {
            while (data[at] is ' ' or ',')
                at++;
            var from = at++;
            while (at < data.Length && (char.IsAsciiDigit(data[at]) || data[at] == '.'))
                at++;
            return double.Parse(data.AsSpan(from, at - from), NumberStyles.Float, CultureInfo.InvariantCulture);
        }
    }
}
