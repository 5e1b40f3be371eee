using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Filters;
using UglyToad.PdfPig.Geometry;
using UglyToad.PdfPig.Graphics.Operations;
using UglyToad.PdfPig.Outline.Destinations;
using UglyToad.PdfPig.Parser;
using UglyToad.PdfPig.Tokenization.Scanner;
using UglyToad.PdfPig.Tokens;

namespace LabelForge.Print.Reading;

/// <summary>Why letters on a page are not seen.</summary>
internal enum Unseen
{
    /// <summary>They are seen.</summary>
    No,

    /// <summary>They are neither filled nor stroked, or nearly transparent.</summary>
    NotDrawn,

    /// <summary>Their colour is that of what is under them, or nearly.</summary>
    NoContrast,

    /// <summary>Something is drawn over them.</summary>
    Covered,

    /// <summary>They stand outside the page, or outside what their drawing is cut to.</summary>
    Outside,

    /// <summary>They belong to a layer that does not print.</summary>
    Layer,
}

/// <summary>Which letters of a page are seen, by the order in which things are painted on it.</summary>
/// <param name="Hidden">The letters that are not, by where they begin.</param>
internal sealed record SeenLetters(IReadOnlyDictionary<(double X, double Y), Unseen> Hidden)
{
    /// <summary>Whether a letter is seen, or why not.</summary>
    public Unseen Of(Letter letter) => Hidden.GetValueOrDefault(Key(letter.StartBaseLine));

    /// <summary>Where a letter begins, to a hundredth of a point.</summary>
    public static (double X, double Y) Key(PdfPoint start) => (Math.Round(start.X, 2), Math.Round(start.Y, 2));
}

/// <summary>The letters of a page as they are painted; which of them are seen depends on the layers that print.</summary>
/// <param name="Where">The letters that are seen where these layers print.</param>
internal sealed record PaintedLetters(Func<PdfLayers, SeenLetters> Where);

/// <summary>Makes <see cref="PaintedLetters"/> of a page.</summary>
internal sealed class SeenLettersFactory(IPdfTokenScanner scanner, IResourceStore resources, ILookupFilterProvider filters,
    IPageContentParser content, ParsingOptions options)
    : BasePageFactory<PaintedLetters>(scanner, resources, filters, content, options)
{
    protected override PaintedLetters ProcessPage(int pageNumber, DictionaryToken dictionary, NamedDestinations namedDestinations,
        MediaBox mediaBox, CropBox cropBox, UserSpaceUnit userSpaceUnit, PageRotationDegrees rotation, TransformationMatrix initialMatrix,
        IReadOnlyList<IGraphicsStateOperation> operations) =>
        new PaintedPage(pageNumber, ResourceStore, PdfScanner, PageContentParser, FilterProvider, cropBox, userSpaceUnit, rotation,
            initialMatrix, ParsingOptions).Process(pageNumber, operations);
}
