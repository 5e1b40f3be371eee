using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Print.Reading;
using LabelForge.UseCases;

namespace LabelForge.Web.Workbench;

/// <summary>A label made elsewhere, as it was given to the page, and how it is to be judged.</summary>
/// <param name="Words">Its words, where they were typed or pasted.</param>
/// <param name="Pdf">The PDF, which goes before the words; null where none was given.</param>
/// <param name="Name">The PDF's name.</param>
/// <param name="Question">How it is to be judged.</param>
/// <param name="Language">The language in which it is told what is wrong.</param>
internal sealed record GivenLabel(string Words, byte[]? Pdf, string? Name, LabelQuestion Question, string Language)
{
    /// <summary>The market that such a label is held to where none is chosen: the workshop's own, as its maker's labels are.</summary>
    /// <param name="workshop">The workshop; null where there is none yet.</param>
    public static Market OwnMarket(Workshop? workshop) => workshop?.Market ?? Shipped.Markets.Usual;

    /// <summary>The market that it is judged by.</summary>
    /// <param name="workshop">The workshop; null where there is none yet.</param>
    /// <param name="chosen">The id that was chosen; empty for none.</param>
    public static Market MarketOf(Workshop? workshop, string chosen) =>
        OwnMarket(workshop) is var own && chosen.Length == 0 ? own : own.Book.Find(chosen).OrRefuse();

    /// <summary>What was read and found, or why it cannot be judged; neither where nothing was given yet.</summary>
    public (string? Wrong, CheckReport? Report) Judged()
    {
        if (Pdf is null && Words.Trim().Length == 0)
            return default;
        try
        {
            var text = Pdf is { } pdf ? PdfLabelReader.Read(pdf, Name ?? "the PDF") : LabelText.Of(Words, "the text");
            return (null, CheckLabel.Run(text, Question, Shipped.Dictionary).Report);
        }
        catch (InputException e)
        {
            return (PageWords.Told(e.Problem, Language), null);
        }
        catch (RegexMatchTimeoutException)
        {
            return (PageWords.Told(new Problem("reading.too-slow"), Language), null);
        }
    }
}
