using LabelForge.Measures;

namespace LabelForge.Web.Workbench;

/// <summary>Advice that names a command, in the words of the page where the same is done.</summary>
internal static class PageWords
{
    private static readonly (string Command, string Page)[] Known =
    [
        ("Say how many the lot has with --lot-size.", "Write above how many the lot has."),
        ("Write --lot-size with the number of pieces the whole lot has.", "Write how many pieces the whole lot has."),
        ("Leave --tare out, or take the column away.", "Leave the empty package’s weight out, or take the column away."),
        (" (labelforge dry)", " (see: Drying)"),
        ("See the lots in the house: labelforge stock-in-hand", "See what is in the house."),
        ("Check the lot and the count: labelforge stock-in-hand", "Check the lot and the count under In the house."),
        ("or what came in: labelforge receive", "or what came in, under Stock and lots."),
        ("Begin one with: labelforge batch start RECIPE", "Begin a batch first."),
        ("Write a smaller margin: --margin \"40 %\"", "Write a smaller margin: 40 %"),
        (": --paid 12.00", ": 12.00"),
        (": --pieces 18", ": 18"),
        ("labelforge receive castor-oil \"16 fl oz\" --price 9.50", "16 fl oz, 9.50"),
        ("Put the last backup in its place: labelforge restore BACKUP", "Put the last backup in its place."),
        (" --market ", " "),
    ];

    /// <summary>The sentence in the page's words.</summary>
    public static string Of(string sentence)
    {
        foreach (var (command, page) in Known)
            sentence = sentence.Replace(command, page, StringComparison.Ordinal);
        // Every correction is made in one place.
        var at = sentence.IndexOf("labelforge correct", StringComparison.Ordinal);
        if (at >= 0)
            sentence = sentence[..at] + "correct the entry under The books.";
        at = sentence.IndexOf("labelforge batch close", StringComparison.Ordinal);
        return at >= 0 ? sentence[..at] + "on the batch bench." : sentence;
    }

    /// <summary>The problem in the page's words.</summary>
    public static Problem Of(Problem problem) => problem with { Wrong = Of(problem.Wrong), Write = Of(problem.Write) };
}
