namespace LabelForge.Web.Workbench;

/// <summary>Problems in the page's words, where the command's name a command: from the one catalogue of both.</summary>
internal static class PageWords
{
    /// <summary>The problem in the page's words.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="language">The language that the page is in.</param>
    public static Problem Of(Problem problem, string language = "en") => problem.In(ProblemWords.Page(language));

    /// <summary>What is wrong and what to do, in the page's words.</summary>
    /// <param name="problem">The problem.</param>
    /// <param name="language">The language that the page is in.</param>
    public static string Told(Problem problem, string language = "en") =>
        problem.In(ProblemWords.Page(language)) is var told ? $"{told.Wrong} {told.Write}".TrimEnd() : "";
}
