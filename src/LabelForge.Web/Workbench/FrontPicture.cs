using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Output;

namespace LabelForge.Web.Workbench;

/// <summary>The front of a label as a picture of its own: the same drawing, seen through a window.</summary>
/// <param name="Svg">The picture.</param>
/// <param name="Wide">How wide the front is, in millimetres.</param>
/// <param name="High">How high.</param>
public sealed partial record FrontPicture(byte[] Svg, decimal Wide, decimal High)
{
    /// <summary>The front of a label; the whole of a round one.</summary>
    public static FrontPicture Of(LabelLayout layout)
    {
        using var stream = new MemoryStream();
        LabelFile.WriteSvg(stream, layout.OnStock(), layout.Design.Id);
        var text = Encoding.UTF8.GetString(stream.ToArray());
        var front = Panel(layout.Design);
        if (front is null)
            return new(Encoding.UTF8.GetBytes(text), layout.Design.Width.Millimetres, layout.Design.Height.Millimetres);
        var (wide, high) = (front.Width.Millimetres, front.Height.Millimetres);
        text = Head().Replace(text, string.Create(CultureInfo.InvariantCulture,
            $"width=\"{wide:0.###}mm\" height=\"{high:0.###}mm\" viewBox=\"{Points(front.X)} {Points(front.Y)} {Points(front.Width)} {Points(front.Height)}\""), 1);
        return new(Encoding.UTF8.GetBytes(text), wide, high);
    }

    /// <summary>The panel that is the front; null where the whole label is.</summary>
    public static DesignPanel? Panel(LabelDesign design) => design.Round ? null : design.Panels.FirstOrDefault(p => p.Principal);

    private static string Points(Length length) => (length.Inches * 72).ToString("0.###", CultureInfo.InvariantCulture);

    [GeneratedRegex("width=\"[0-9.]+mm\" height=\"[0-9.]+mm\" viewBox=\"[^\"]*\"")]
    private static partial Regex Head();
}
