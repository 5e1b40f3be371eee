using System.Collections.Immutable;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Designs;

/// <summary>Turns arranged panels into what is drawn and what is reported.</summary>
internal sealed class LayoutAssembly(LabelDesign design)
{
    private readonly ImmutableArray<PlacedLine>.Builder lines = ImmutableArray.CreateBuilder<PlacedLine>();
    private readonly ImmutableArray<PlacedBar>.Builder bars = ImmutableArray.CreateBuilder<PlacedBar>();
    private readonly ImmutableArray<PlacedText>.Builder texts = ImmutableArray.CreateBuilder<PlacedText>();
    private readonly ImmutableArray<string>.Builder leftOut = ImmutableArray.CreateBuilder<string>();

    public void LeaveOut(string what) => leftOut.Add(what);

    public void Add(DesignPanel panel, Arrangement arrangement)
    {
        var (left, top) = (Points.Of(panel.X) + Points.Of(panel.Padding), Points.Of(panel.Y) + Points.Of(panel.Padding));
        foreach (var arranged in arrangement.Items)
        {
            var at = arranged with { X = arranged.X + left, Top = arranged.Top + top };
            if (at.Set is { } set)
                AddText(at, set);
            else if (at.Item.Block is not null)
                AddBlock(at);
            else
                bars.Add(new PlacedBar(at.X, at.Top, at.Width, at.Height));
        }
    }

    public LabelLayout Finish() => new()
    {
        Design = design,
        Lines = lines.ToImmutable(),
        Bars = bars.ToImmutable(),
        Texts = texts.ToImmutable(),
        LeftOut = leftOut.ToImmutable(),
    };

    private void AddText(ArrangedItem at, SetText set)
    {
        var baseline = at.Top + set.Top;
        foreach (var line in set.Lines)
        {
            var x = set.Of.Element.Align == Align.Centre ? at.X + (at.Width - SetText.WidthOf(line)) / 2 : at.X;
            foreach (var part in line)
            {
                lines.Add(new PlacedLine(part, x, baseline, set.Of.Element.Role));
                x += part.Width;
            }
            baseline += set.Of.Element.Leading * set.Size;
        }
        var text = string.Join(' ', set.Lines.Select(l => string.Concat(l.Select(p => p.Text))));
        texts.Add(Report(at, text, set.LetterHeight, set.Of.Required.Height, set.Of.Required.Source));
    }

    private void AddBlock(ArrangedItem at)
    {
        var block = at.Item.Block!;
        var x = at.X + (at.Width - Points.Of(block.Width)) / 2;
        foreach (var bar in block.Bars)
            bars.Add(new PlacedBar(x + Points.OfMillimetres(bar.XMm), at.Top + Points.OfMillimetres(bar.YMm),
                Points.OfMillimetres(bar.WidthMm), Points.OfMillimetres(bar.HeightMm)));
        if (at.Item.Caption is not { } caption)
            return;
        var top = at.Top + Points.Of(block.Height) + PanelItem.CaptionGap;
        lines.Add(new PlacedLine(caption, at.X + (at.Width - caption.Width) / 2, top + caption.Shape.Top * caption.Size, Role.Barcode));
        texts.Add(Report(at with { Top = top, Height = (caption.Shape.Top + caption.Shape.Bottom) * caption.Size }, caption.Text,
            caption.LetterHeight, at.Item.Element.Least, $"the design {design.Id} (common practice)"));
    }

    private static PlacedText Report(ArrangedItem at, string text, Measures.Length height, Measures.Length floor, string source) =>
        new(at.Item.Element.Role, text, Points.ToLength(at.X), Points.ToLength(at.Top), Points.ToLength(at.Width), Points.ToLength(at.Height), height, floor, source);
}
