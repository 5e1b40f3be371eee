using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Filters;
using UglyToad.PdfPig.Geometry;
using UglyToad.PdfPig.Graphics;
using UglyToad.PdfPig.Graphics.Colors;
using UglyToad.PdfPig.Graphics.Core;
using UglyToad.PdfPig.Graphics.Operations;
using UglyToad.PdfPig.Parser;
using UglyToad.PdfPig.PdfFonts;
using UglyToad.PdfPig.Tokenization.Scanner;
using UglyToad.PdfPig.Tokens;

namespace LabelForge.Print.Reading;

/// <summary>Walks through what paints a page, in its order: letters, areas, pictures, and what they are cut to.</summary>
/// <remarks>
/// ISO 32000-1: 8.5.3 painting of paths, 8.5.4 clipping, 9.3.6 text rendering modes, 11.3.7 constant alpha. A shading or a
/// pattern has no one colour: what lies on it is taken as seen.
/// </remarks>
internal sealed class PaintedPage(int number, IResourceStore resources, IPdfTokenScanner scanner, IPageContentParser content,
    ILookupFilterProvider filters, CropBox crop, UserSpaceUnit unit, PageRotationDegrees rotation, in TransformationMatrix initial,
    ParsingOptions options)
    : BaseStreamProcessor<PaintedLetters>(number, resources, scanner, content, filters, crop, unit, rotation, initial, options)
{
    // Below these letters are not seen, and above this an area hides what is under it. Common practice.
    private const double LeastAlpha = 0.15;
    private const double Opaque = 0.9;

    // More than a label has; beyond them no area is kept, and so nothing is called hidden that may be seen.
    private const int MostAreas = 20_000;

    private readonly PdfRectangle page = crop.GetVisibleBounds(rotation);
    private readonly List<(PaintedArea Area, Shade? Shade, ImmutableArray<DictionaryToken> Layers)> areas = [];
    private readonly List<(PdfPoint Start, PdfPoint Middle, int Areas, Shade? Shade, Unseen Why,
        ImmutableArray<DictionaryToken> Layers)> glyphs = [];

    // What is painted belongs to every layer that is open (ISO 32000-1, 8.11.3.2); other marked content is kept as null.
    private readonly List<DictionaryToken?> marked = [];
    private readonly Stack<List<PaintedArea>> clips = new([[]]);
    private PaintedArea path = new();
    private double group = 1;
    public override PaintedLetters Process(int pageNumberCurrent, IReadOnlyList<IGraphicsStateOperation> operations)
    {
        CloneAllStates();
        ProcessOperations(operations);
        return new PaintedLetters(Seen);
    }

    private SeenLetters Seen(PdfLayers layers)
    {
        var printed = areas.Select(a => a.Layers.All(layers.Prints)).ToArray();
        var hidden = new Dictionary<(double, double), Unseen>();
        var seen = new HashSet<(double, double)>();
        foreach (var glyph in glyphs)
        {
            var key = SeenLetters.Key(glyph.Start);
            var why = !glyph.Layers.All(layers.Prints)
                ? Unseen.Layer
                : glyph.Why == Unseen.No
                ? Why(glyph.Middle, glyph.Areas, glyph.Shade, printed)
                : glyph.Why;
            if (why == Unseen.No)
                seen.Add(key);
            else
                hidden.TryAdd(key, why);
        }
        // A letter drawn twice, as for a shadow, is seen where one of the two is.
        foreach (var key in seen)
            hidden.Remove(key);
        return new SeenLetters(hidden);
    }

    private Unseen Why(PdfPoint at, int before, Shade? shade, bool[] printed)
    {
        for (var i = areas.Count - 1; i >= before; i--)
        {
            if (printed[i] && areas[i].Area.Holds(at))
                return Unseen.Covered;
        }
        if (shade is not { } ink)
            return Unseen.No;
        for (var i = before - 1; i >= 0; i--)
        {
            if (printed[i] && areas[i].Area.Holds(at))
                return areas[i].Shade is { } ground && ink.Contrast(ground) < Shade.LeastContrast ? Unseen.NoContrast : Unseen.No;
        }
        return ink.Contrast(Shade.Paper) < Shade.LeastContrast ? Unseen.NoContrast : Unseen.No;
    }
    public override void RenderGlyph(IFont font, CurrentGraphicsState currentState, double fontSize, double pointSize, int code,
        string unicode, long currentOffset, in TransformationMatrix renderingMatrix, in TransformationMatrix textMatrix,
        in TransformationMatrix transformationMatrix, CharacterBoundingBox characterBoundingBox)
    {
        var start = transformationMatrix.Transform(textMatrix.Transform(renderingMatrix.Transform(new PdfPoint(0, 0))));
        var box = characterBoundingBox.GlyphBounds;
        var (x, y) = box.Width > 0 && box.Height > 0
            ? ((box.Left + box.Right) / 2, (box.Bottom + box.Top) / 2)
            : (characterBoundingBox.Width / 2, 0.25);
        var middle = transformationMatrix.Transform(textMatrix.Transform(renderingMatrix.Transform(new PdfPoint(x, y))));
        var mode = currentState.FontState.TextRenderingMode;
        var stroked = mode is TextRenderingMode.Stroke or TextRenderingMode.StrokeClip;
        var alpha = group * (stroked ? currentState.AlphaConstantStroking : currentState.AlphaConstantNonStroking);
        var why = mode == TextRenderingMode.Neither || alpha < LeastAlpha ? Unseen.NotDrawn
            : !Holds(page, middle) || clips.Peek().Any(c => !c.Lets(middle)) ? Unseen.Outside
            : Unseen.No;
        // What is filled and stroked is seen by either.
        var shade = mode is TextRenderingMode.FillThenStroke or TextRenderingMode.FillThenStrokeClip or TextRenderingMode.NeitherClip
            ? null
            : Shade.Of(stroked ? currentState.CurrentStrokingColor : currentState.CurrentNonStrokingColor, alpha);
        glyphs.Add((start, middle, areas.Count, shade, why, Layers()));
    }

    private static bool Holds(PdfRectangle box, PdfPoint at) =>
        at.X >= box.Left && at.X <= box.Right && at.Y >= box.Bottom && at.Y <= box.Top;
    public override void PushState()
    {
        base.PushState();
        clips.Push([.. clips.Peek()]);
    }
    public override void PopState()
    {
        base.PopState();
        if (clips.Count > 1)
            clips.Pop();
    }

    private void Paint(PaintedArea area, Shade? shade, double alpha)
    {
        var mode = GetCurrentState().BlendMode;
        if (alpha * group < Opaque || mode != BlendMode.Normal || GetCurrentState().SoftMask is not null || areas.Count >= MostAreas)
            return;
        area.CutTo(clips.Peek());
        areas.Add((area, shade, Layers()));
    }
    protected override void RenderXObjectImage(XObjectContentRecord xObjectContentRecord)
    {
        // A picture with a mask lets through what is under it; one of a layer that may not print is taken for one that does not.
        var about = xObjectContentRecord.Stream.StreamDictionary;
        if (about.ContainsKey(NameToken.Create("OC")))
            return;
        if (about.ContainsKey(NameToken.Smask)
            || about.ContainsKey(NameToken.Mask)
            || (about.TryGet(NameToken.ImageMask, out BooleanToken mask) && mask.Data))
            return;
        Picture(xObjectContentRecord.AppliedTransformation);
    }
    protected override void RenderInlineImage(InlineImage inlineImage)
    {
        if (!inlineImage.IsImageMask)
            Picture(CurrentTransformationMatrix);
    }

    // A picture fills the unit square (ISO 32000-1, 8.9.5.1).
    private void Picture(TransformationMatrix to)
    {
        var square = new PaintedArea();
        square.Move(to.Transform(new PdfPoint(0, 0)));
        foreach (var (x, y) in new[] { (1, 0), (1, 1), (0, 1) })
            square.Line(to.Transform(new PdfPoint(x, y)));
        Paint(square, null, GetCurrentState().AlphaConstantNonStroking);
    }
    public override void BeginSubpath()
    {
    }
    public override PdfPoint? CloseSubpath() => path.Start;
    public override void StrokePath(bool close) => path = new();
    public override void FillPath(FillingRule fillingRule, bool close)
    {
        path.EvenOdd = fillingRule == FillingRule.EvenOdd;
        var state = GetCurrentState();
        Paint(path, Shade.Of(state.CurrentNonStrokingColor, 1), state.AlphaConstantNonStroking);
        path = new();
    }
    public override void FillStrokePath(FillingRule fillingRule, bool close) => FillPath(fillingRule, close);
    public override void MoveTo(double x, double y)
    {
        CurrentPosition = CurrentTransformationMatrix.Transform(new PdfPoint(x, y));
        path.Move(CurrentPosition);
    }
    public override void LineTo(double x, double y)
    {
        CurrentPosition = CurrentTransformationMatrix.Transform(new PdfPoint(x, y));
        path.Line(CurrentPosition);
    }
    public override void BezierCurveTo(double x2, double y2, double x3, double y3)
    {
        var (control, end) = (CurrentTransformationMatrix.Transform(new PdfPoint(x2, y2)),
            CurrentTransformationMatrix.Transform(new PdfPoint(x3, y3)));
        path.Curve(CurrentPosition, CurrentPosition, control, end);
        CurrentPosition = end;
    }
    public override void BezierCurveTo(double x1, double y1, double x2, double y2, double x3, double y3)
    {
        var matrix = CurrentTransformationMatrix;
        var end = matrix.Transform(new PdfPoint(x3, y3));
        path.Curve(CurrentPosition, matrix.Transform(new PdfPoint(x1, y1)), matrix.Transform(new PdfPoint(x2, y2)), end);
        CurrentPosition = end;
    }
    public override void Rectangle(double x, double y, double width, double height)
    {
        Outline(path, new PdfRectangle(x, y, x + width, y + height));
    }
    public override void EndPath() => path = new();
    public override void ClosePath()
    {
    }
    public override void ModifyClippingIntersect(FillingRule clippingRule)
    {
        // The same path may be painted after it has become a clip.
        path.EvenOdd = clippingRule == FillingRule.EvenOdd;
        clips.Peek().Add(path.Copy());
    }
    protected override void ClipToRectangle(PdfRectangle rectangle, FillingRule clippingRule)
    {
        var box = new PaintedArea();
        Outline(box, rectangle);
        clips.Peek().Add(box);
    }
    // Rectangles, and a form's bounds too (8.10.1), are given in their own space, which lies on the page by now.
    private void Outline(PaintedArea area, PdfRectangle rectangle)
    {
        var matrix = CurrentTransformationMatrix;
        area.Move(matrix.Transform(rectangle.BottomLeft));
        area.Line(matrix.Transform(rectangle.BottomRight));
        area.Line(matrix.Transform(rectangle.TopRight));
        area.Line(matrix.Transform(rectangle.TopLeft));
    }
    public override void PaintShading(NameToken shadingName)
    {
        // A shading fills what everything is cut to.
        if (clips.Peek() is [.., var last])
            Paint(last.Copy(), null, GetCurrentState().AlphaConstantNonStroking);
    }
    public override void BeginMarkedContent(NameToken name, NameToken? propertyDictionaryName, DictionaryToken? properties) =>
        marked.Add(name.Data != "OC"
            ? null
            : properties
                ?? (propertyDictionaryName is null ? null : ResourceStore.GetMarkedContentPropertiesDictionary(propertyDictionaryName)));
    public override void EndMarkedContent()
    {
        if (marked.Count > 0)
            marked.RemoveAt(marked.Count - 1);
    }
    protected override void ProcessFormXObject(StreamToken formStream, NameToken xObjectName)
    {
        // A form may belong to a layer as a whole (8.11.3.3).
        var open = marked.Count;
        if (formStream.StreamDictionary.TryGet(NameToken.Create("OC"), PdfScanner, out DictionaryToken? layer) && layer is not null)
            marked.Add(layer);
        // A group is laid on the page with the alpha of its place; within it alpha begins anew (11.4.5, 11.6.6).
        var around = group;
        if (formStream.StreamDictionary.ContainsKey(NameToken.Create("Group")))
            group *= GetCurrentState().AlphaConstantNonStroking;
        base.ProcessFormXObject(formStream, xObjectName);
        group = around;
        if (marked.Count > open)
            marked.RemoveRange(open, marked.Count - open);
    }

    private ImmutableArray<DictionaryToken> Layers() => marked.Count == 0 ? [] : [.. marked.OfType<DictionaryToken>()];
}
