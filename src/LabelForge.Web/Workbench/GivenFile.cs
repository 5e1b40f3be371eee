using LabelForge.Checks.Reading;
using LabelForge.Print.Reading;

namespace LabelForge.Web.Workbench;

/// <summary>A file that was given to be checked.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Bytes">What is in it; empty where it was not taken.</param>
/// <param name="Refused">Why it was not taken; null where it was.</param>
internal sealed record GivenFile(string Name, byte[] Bytes, Problem? Refused = null)
{
    /// <summary>The most files that are taken at once.</summary>
    public const int Most = 20;

    /// <summary>The most bytes of all that are taken at once, which this program keeps while the page is open.</summary>
    public const long MostBytes = 3L * PdfLabelReader.MostBytes;

    /// <summary>Its words, with the heights of its letters where it is a PDF.</summary>
    /// <exception cref="InputException">It was not taken, or is no label that can be read.</exception>
    public LabelText Read() => Refused is { } why ? throw new InputException(why)
        : Upload.IsPdf(Bytes) ? PdfLabelReader.Read(Bytes, Name)
        : LabelText.Of(Upload.Text(Bytes, LabelText.MostCharacters), Name);
}
