namespace LabelForge.Print.Drawing;

/// <summary>The smallest box around ink, in points.</summary>
internal readonly record struct InkBox(double Left, double Top, double Right, double Bottom)
{
    /// <summary>The box around nothing.</summary>
    public static InkBox None { get; } = new(double.MaxValue, double.MaxValue, double.MinValue, double.MinValue);

    /// <summary>The box around a label's ink, from the label's top left corner.</summary>
    public static InkBox Of(LabelLayout label)
    {
        var box = None;
        foreach (var b in label.Bars)
            box = box.With(b.X, b.Y, b.X + b.Width, b.Y + b.Height);
        foreach (var d in label.Drawings)
            box = box.With(d.Box.Left, d.Box.Top, d.Box.Left + d.Box.Width, d.Box.Top + d.Box.Height);
        foreach (var l in label.Lines.Where(l => l.Upright))
            box = box.With(l.X - l.Text.Shape.Top * l.Text.Size, l.Y - l.Text.Width, l.X + l.Text.Shape.Bottom * l.Text.Size, l.Y);
        foreach (var l in label.Lines.Where(l => l is { Upright: false, Radius: 0 }))
            box = box.With(l.X, l.Y - l.Text.Shape.Top * l.Text.Size, l.X + l.Text.Width, l.Y + l.Text.Shape.Bottom * l.Text.Size);
        return box;
    }

    /// <summary>The box around this and another.</summary>
    public InkBox With(double left, double top, double right, double bottom) =>
        new(Math.Min(Left, left), Math.Min(Top, top), Math.Max(Right, right), Math.Max(Bottom, bottom));
}
