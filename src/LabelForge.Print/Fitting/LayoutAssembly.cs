using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Fitting;

/// <summary>Turns arranged panels into what is drawn and what is reported.</summary>
internal sealed class LayoutAssembly(LabelDesign design)
{
    // Far above what a verifier asks for, so that a coloured ink is dark in a scanner's red light too; common practice.
    private const double SymbolContrast = 10;

    private readonly ImmutableArray<PlacedLine>.Builder lines = ImmutableArray.CreateBuilder<PlacedLine>();
    private readonly HashSet<Role> said = [];
    private readonly ImmutableArray<PlacedBar>.Builder bars = ImmutableArray.CreateBuilder<PlacedBar>();
    private readonly ImmutableArray<PlacedText>.Builder texts = ImmutableArray.CreateBuilder<PlacedText>();
    private readonly ImmutableArray<PlacedShape>.Builder shapes = ImmutableArray.CreateBuilder<PlacedShape>();
    private readonly ImmutableArray<PlacedImage>.Builder images = ImmutableArray.CreateBuilder<PlacedImage>();
    private readonly ImmutableArray<PlacedDrawing>.Builder drawings = ImmutableArray.CreateBuilder<PlacedDrawing>();
    private readonly ImmutableArray<string>.Builder leftOut = ImmutableArray.CreateBuilder<string>();

    private ImmutableDictionary<Role, (double X, double Y)> moved = ImmutableDictionary<Role, (double X, double Y)>.Empty;

    public bool Has(Role role) => said.Contains(role);

    public void LeaveOut(string what) => leftOut.Add(what);

    public void Add(DesignPanel panel, Arrangement arrangement)
    {
        var (left, top) = (Points.Of(panel.X) + Points.Of(panel.Padding), Points.Of(panel.Y) + Points.Of(panel.Padding));
        var (firstLine, firstBar, firstText, firstShape, firstImage) = (lines.Count, bars.Count, texts.Count, shapes.Count, images.Count);
        foreach (var arranged in arrangement.Items)
        {
            var at = arranged with { X = arranged.X + left, Top = arranged.Top + top };
            said.Add(at.Item.Element.Role);
            if (at.Set is { } set)
                AddText(at, set, arrangement.On);
            else if (at.Item.Art is { } art)
                AddArt(at, art);
            else if (at.Item.Block is not null)
                AddBlock(at, RangedLeft(arranged, panel));
            else
                bars.Add(new PlacedBar(at.X, at.Top, at.Width, at.Height));
        }
        if (!panel.Turned)
            return;
        // Half a turn about the middle of the panel.
        var (twiceX, twiceY) = (2 * Points.Of(panel.X) + Points.Of(panel.Width), 2 * Points.Of(panel.Y) + Points.Of(panel.Height));
        for (var i = firstLine; i < lines.Count; i++)
            lines[i] = lines[i] with { X = twiceX - lines[i].X, Y = twiceY - lines[i].Y, Turned = true };
        for (var i = firstBar; i < bars.Count; i++)
            bars[i] = bars[i] with { X = twiceX - bars[i].X - bars[i].Width, Y = twiceY - bars[i].Y - bars[i].Height };
        for (var i = firstShape; i < shapes.Count; i++)
            shapes[i] = shapes[i] with { X = twiceX - shapes[i].X, Y = twiceY - shapes[i].Y, Turned = true };
        for (var i = firstImage; i < images.Count; i++)
            images[i] = images[i] with
            {
                X = twiceX - images[i].X - images[i].Width,
                Y = twiceY - images[i].Y - images[i].Height,
                Turned = true,
            };
        for (var i = firstText; i < texts.Count; i++)
            texts[i] = texts[i] with
            {
                X = Points.ToLength(twiceX - Points.Of(texts[i].X) - Points.Of(texts[i].Width)),
                Y = Points.ToLength(twiceY - Points.Of(texts[i].Y) - Points.Of(texts[i].Height)),
            };
    }

    /// <summary>Takes an arranged front over.</summary>
    public void Add(ArrangedFront front)
    {
        drawings.AddRange(front.Drawings);
        bars.AddRange(front.Bars);
        lines.AddRange(front.Texts.SelectMany(t => t.Lines));
        texts.AddRange(front.Texts.Select(t => t.Report));
        moved = moved.SetItems(front.Moved);
        said.UnionWith(front.Texts.Select(t => t.Report.Role));
        foreach (var picture in front.Pictures)
            AddPicture(picture.Art, picture.X, picture.Y, picture.Width, picture.Ink, picture.Clip);
    }

    /// <summary>Adds a drawing; of a turned panel, turned with it.</summary>
    public void Add(PlacedDrawing drawing, DesignPanel panel)
    {
        if (!panel.Turned)
        {
            drawings.Add(drawing);
            return;
        }
        var (twiceX, twiceY) = (2 * Points.Of(panel.X) + Points.Of(panel.Width), 2 * Points.Of(panel.Y) + Points.Of(panel.Height));
        var (left, top, width, height) = drawing.Box;
        drawings.Add(drawing with
        {
            X = twiceX - drawing.X,
            Y = twiceY - drawing.Y,
            Turned = true,
            Box = (twiceX - left - width, twiceY - top - height, width, height),
        });
    }

    public LabelLayout Finish() => new()
    {
        Design = design,
        Lines = lines.ToImmutable(),
        Bars = bars.ToImmutable(),
        Drawings = drawings.ToImmutable(),
        Shapes = shapes.ToImmutable(),
        Images = images.ToImmutable(),
        Texts = texts.ToImmutable(),
        LeftOut = leftOut.ToImmutable(),
        Said = [.. said],
        Moved = moved,
    };

    private void AddText(ArrangedItem at, SetText set, (Colour Ink, Colour Ground)? on)
    {
        var baseline = at.Top + set.Top;
        foreach (var line in set.Lines)
        {
            var x = set.Of.Element.Align == Align.Centre ? at.X + (at.Width - SetText.WidthOf(line)) / 2 : at.X;
            foreach (var part in line)
            {
                lines.Add(new PlacedLine(part, x, baseline, set.Of.Element.Role) { Ink = on?.Ink, Ground = on?.Ground });
                x += part.Width;
            }
            baseline += set.Of.Element.Leading * set.Size;
        }
        var text = set.Said;
        texts.Add(Report(at, text, set.LetterHeight, set.Of.Required.Height, set.Of.Required.Source));
    }

    // A code that is ranged left has its first bar under the letters: its quiet zone reaches into the panel's padding as far as that goes.
    private static double RangedLeft(ArrangedItem item, DesignPanel panel) =>
        item is { X: < 0.01, Item: { Caption: null, Block: { Bars.IsEmpty: false } block, Element.Align: Align.Left } }
            ? Math.Min(Points.OfMillimetres(block.Bars.Min(b => b.XMm)), Points.Of(panel.Padding))
            : 0;

    private void AddBlock(ArrangedItem at, double leftwards)
    {
        var block = at.Item.Block!;
        var x = at.X - leftwards + (at.Width - Points.Of(block.Width)) / 2;
        // Scanners need dark on light: where the label's own ink stands so on its own ground, the symbol matches the words; else it is
        // black on a white plate as large as its quiet zones.
        var (ink, ground) = (design.Seen(design.Ink), design.Seen(design.Ground));
        var matched = ink.Luminance < ground.Luminance && Colour.Contrast(ink, ground) >= SymbolContrast;
        // On stock of its own colour white is to be had where the printer lays it; the plate of it says where.
        var hasWhite = design.HasGround || design is { Look.Palette.Covers: true, Stock: var stock } && stock != Colour.White;
        if (hasWhite && !matched)
            bars.Add(new PlacedBar(x, at.Top, Points.Of(block.Width), Points.Of(block.Height), Colour.White));
        foreach (var bar in block.Bars)
            bars.Add(new PlacedBar(x + Points.OfMillimetres(bar.XMm), at.Top + Points.OfMillimetres(bar.YMm),
                Points.OfMillimetres(bar.WidthMm), Points.OfMillimetres(bar.HeightMm), matched ? design.Ink : Colour.Black));
        if (at.Item.Caption is not { } caption)
            return;
        var top = at.Top + Points.Of(block.Height) + PanelItem.CaptionGap;
        lines.Add(new PlacedLine(caption, at.X + (at.Width - caption.Width) / 2, top + caption.Shape.Top * caption.Size, Role.Barcode));
        texts.Add(Report(at with { Top = top, Height = (caption.Shape.Top + caption.Shape.Bottom) * caption.Size }, caption.Text,
            caption.LetterHeight, at.Item.Element.Least, $"the design {design.Id} (common practice)"));
    }

    private void AddArt(ArrangedItem at, ArtBlock art)
    {
        AddPicture(art, at.X, at.Top, at.Width);
        if (art.Inside is not { } inside)
            return;
        var word = MeasuredText.WithLetterHeight(at.Item.Element.Face, inside, at.Item.Element.Least);
        // The jar's body is the lower half of the symbol.
        var baseline = at.Top + at.Height * 0.72 + word.Shape.Top * word.Size / 2;
        lines.Add(new PlacedLine(word, at.X + (at.Width - word.Width) / 2, baseline, at.Item.Element.Role));
        texts.Add(Report(at with
        {
            X = at.X + (at.Width - word.Width) / 2,
            Width = word.Width,
            Top = baseline - word.Shape.Top * word.Size,
            Height = (word.Shape.Top + word.Shape.Bottom) * word.Size,
        },
            inside, word.LetterHeight, at.Item.Element.Least, $"the design {design.Id} (common practice)"));
    }

    private void AddPicture(ArtBlock art, double x, double y, double width, Colour? ink = null, PictureClip? clip = null)
    {
        var scale = width / art.UnitsWide;
        foreach (var path in art.Paths)
            shapes.Add(new PlacedShape(path.Data, x, y, scale, path.Ink && path.Fill is not null ? ink ?? design.Ink : path.Fill,
                path.Ink && path.Stroke is not null ? ink ?? design.Ink : path.Stroke, path.StrokeWidth, false));
        if (!art.Image.IsEmpty)
            images.Add(new PlacedImage(art.Image, x, y, width, width * art.UnitsHigh / art.UnitsWide, false) { Clip = clip });
    }

    private static PlacedText Report(ArrangedItem at, string text, Measures.Length height, Measures.Length floor, string source) =>
        new(at.Item.Element.Role, text, Points.ToLength(at.X), Points.ToLength(at.Top), Points.ToLength(at.Width),
            Points.ToLength(at.Height), height, floor, source);
}
