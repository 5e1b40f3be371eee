using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output.Pdf;
using SkiaSharp;

namespace LabelForge.Print.Output;

/// <summary>
/// A PDF in which each label is drawn once, by Skia, and placed any number of times as a form (ISO 32000-1, 8.10):
/// a thousand sheets are small and quick, and the letters are the same ones everywhere. A page goes to the stream when
/// it is closed, so that a document of any length takes no more memory than a short one.
/// </summary>
internal sealed class FormDocument
{
    // What pages name: forms and fonts.
    private static readonly string[] Kinds = ["XObject", "Font"];

    private readonly PdfWriter _writer;
    private readonly DocumentInfo _info;
    private readonly Dictionary<object, PlacedForm> _forms = new(ReferenceEqualityComparer.Instance);
    private readonly List<int> _pages = [];
    private readonly int _tree;
    private byte[] _before = [];
    private int _contentBefore;

    public FormDocument(Stream stream, DocumentInfo info)
    {
        (_writer, _info) = (new PdfWriter(stream), info);
        _tree = _writer.Reserve();
    }

    /// <summary>A new page; it is written when it is disposed, and one page is open at a time.</summary>
    public FormPage AddPage(Length width, Length height) => new(this, Points.Of(width), Points.Of(height));

    /// <summary>The form of a label or a picture, drawn when it is first wanted.</summary>
    public PlacedForm FormOf(object drawn) => _forms.TryGetValue(drawn, out var known) ? known : _forms[drawn] = drawn switch
    {
        LabelLayout label =>
            Form(label.Design.Width, label.Design.Height, label.Lines.Select(l => l.Text),
                (canvas, faces) => LabelPainter.Paint(canvas, label, 0, 0, faces)),
        Picture picture =>
            Form(picture.Width, picture.Height, picture.Lines.Select(l => l.Text),
                (canvas, faces) => PicturePainter.Paint(canvas, picture, faces)),
        _ => throw new ArgumentException("Neither a label nor a picture.", nameof(drawn)),
    };

    /// <summary>Draws a form once, and beside it letters that pages write by themselves, in fonts that both share.</summary>
    /// <param name="width">The form's width in points.</param>
    /// <param name="height">Its height in points.</param>
    /// <param name="faces">The fonts, cut down to what is drawn and what is spelt.</param>
    /// <param name="paint">Paints the form.</param>
    /// <param name="spelt">All the letters that pages may write, by face.</param>
    public (PlacedForm Form,
        IReadOnlyDictionary<TypeFace, PdfFont> Fonts) Draw(double width, double height, DrawnFaces faces, Action<SKCanvas> paint,
            IReadOnlyCollection<MeasuredText> spelt)
    {
        using var ink = new SKPaint { Color = SKColors.Black };
        using var drawing = new MemoryStream();
        PdfFile.Write(drawing, _info, width, height,
            [paint, .. spelt.Select(text => (Action<SKCanvas>)(canvas => LabelPainter.Paint(canvas, text, 0, height, ink, faces)))]);
        var skia = new SkiaPdf(drawing.GetBuffer().AsMemory(0, (int)drawing.Length));
        var moved = new PdfObjectImporter(skia, _writer);
        var pages = skia.Pages;
        var form = Form(moved, pages[0], width, height);
        return (form, spelt.Zip(pages.Skip(1)).ToDictionary(p => p.First.Face, p => new PdfFont(moved.OnlyFont(p.Second))));
    }

    /// <summary>Writes what is left. The stream stays open.</summary>
    public void Finish()
    {
        var (catalog, info, metadata) = (_writer.Reserve(), _writer.Reserve(), _writer.Reserve());
        _writer.Write(_tree, $"<</Type/Pages/Count {_pages.Count}/Kids[{string.Join(' ', _pages.Select(p => $"{p} 0 R"))}]>>");
        _writer.Write(info, DocumentWords.Information(_info));
        _writer.WriteStream(metadata, "/Type/Metadata/Subtype/XML", DocumentWords.Metadata(_info));
        _writer.Write(catalog, $"<</Type/Catalog/Pages {_tree} 0 R/ViewerPreferences<</DisplayDocTitle true>>/Metadata {metadata} 0 R>>");
        _writer.Finish(catalog, info);
    }

    /// <summary>Writes a page. One that draws what the page before it drew shares its content.</summary>
    internal void Write(double width, double height, ReadOnlySpan<byte> operators,
        IReadOnlyCollection<(string Kind, string Name, int Object)> resources)
    {
        if (_contentBefore == 0 || !operators.SequenceEqual(_before))
        {
            _before = operators.ToArray();
            _contentBefore = _writer.Reserve();
            _writer.WriteContent(_contentBefore, operators);
        }
        var page = _writer.Reserve();
        _pages.Add(page);
        var named = string.Concat(Kinds.Select(kind => Named(kind, resources)));
        _writer.Write(page, Invariant($"<</Type/Page/Parent {_tree} 0 R/MediaBox[0 0 {width:0.####} {height:0.####}]/Contents {_contentBefore} 0 R/Resources<<{named}>>>>"));
    }

    private static string Named(string kind, IReadOnlyCollection<(string Kind, string Name, int Object)> resources)
    {
        var named = new System.Text.StringBuilder();
        foreach (var resource in resources)
        {
            if (resource.Kind == kind)
                named.Append(CultureInfo.InvariantCulture,
                    $"{(named.Length == 0 ? $"/{kind}<<" : "")}/{resource.Name} {resource.Object} 0 R");
        }
        return named.Length == 0 ? "" : named.Append(">>").ToString();
    }

    private PlacedForm Form(Length width, Length height, IEnumerable<MeasuredText> texts, Action<SKCanvas, DrawnFaces> paint)
    {
        using var faces = DrawnFaces.Of(texts);
        return Draw(Whole(Points.Of(width)), Whole(Points.Of(height)), faces, canvas => paint(canvas, faces), []).Form;
    }

    private PlacedForm Form(PdfObjectImporter moved, int page, double width, double height)
    {
        var entries = Invariant($"/Type/XObject/Subtype/Form/BBox[0 0 {width:0.####} {height:0.####}]/Filter/FlateDecode/Resources{System.Text.Encoding.Latin1.GetString(moved.Resources(page))}");
        var form = _writer.Reserve();
        _writer.WriteStream(form, entries, moved.Content(page));
        return new PlacedForm(form, height);
    }

    /// <summary>Skia rounds a page to its own dots, which would cut the form's edge; in steps of 6 points nothing is rounded.</summary>
    internal static double Whole(double side) => 6 * Math.Ceiling(side / 6);
}

/// <summary>A drawing in the document that pages place.</summary>
/// <param name="Object">Its number.</param>
/// <param name="Height">Its height in points.</param>
internal sealed record PlacedForm(int Object, double Height);

/// <summary>A font in the document that pages write with; its codes are the face's own glyph numbers.</summary>
/// <param name="Object">Its number.</param>
internal sealed record PdfFont(int Object);
