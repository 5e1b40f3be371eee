using UglyToad.PdfPig;
using UglyToad.PdfPig.Annotations;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Tokens;

namespace LabelForge.Print.Reading;

/// <summary>Words that lie over a page: text boxes, stamps and form fields. They are on the label where they print.</summary>
/// <remarks>
/// ISO 32000-1, 12.5.3: an annotation prints where its flag Print is set and Hidden is not; 12.5.6.6 a text box shows its
/// contents, 12.7.4.3 a text field its value, 12.5.6.12 a stamp a drawing, of which its contents say what it shows. Their
/// letters are not measured.
/// </remarks>
internal static class PdfNotes
{
    /// <summary>The words of each, in the order of the page, and whether they print.</summary>
    public static IEnumerable<(string Words, bool Prints)> Of(PdfDocument document, Page page)
    {
        foreach (var note in page.GetAnnotations())
        {
            var words = note.Type switch
            {
                AnnotationType.FreeText => note.Content,
                AnnotationType.Stamp => note.Content,
                AnnotationType.Widget => Value(document, note.AnnotationDictionary),
                _ => null,
            };
            if (!string.IsNullOrWhiteSpace(words))
                yield return (words.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n'),
                    note.Flags.HasFlag(AnnotationFlags.Print) && !note.Flags.HasFlag(AnnotationFlags.Hidden));
        }
    }

    // A field's value may stand at the field that it is a part of; a button's is the name of a state.
    private static string? Value(PdfDocument document, DictionaryToken field)
    {
        for (var depth = 0; depth < MostParents; depth++)
        {
            if (Text(document, field, "V") is { } value)
                return value;
            if (!field.TryGet(NameToken.Create("Parent"), out IToken parent) || Resolve(document, parent) is not DictionaryToken above)
                return null;
            field = above;
        }
        return null;
    }

    private const int MostParents = 8;

    private static string? Text(PdfDocument document, DictionaryToken of, string key) =>
        !of.TryGet(NameToken.Create(key), out IToken found) ? null : Resolve(document, found) switch
        {
            StringToken text => text.Data,
            HexToken hex => hex.Data,
            _ => null,
        };

    private static IToken Resolve(PdfDocument document, IToken token) =>
        token is IndirectReferenceToken reference ? document.Structure.GetObject(reference.Data).Data : token;
}
