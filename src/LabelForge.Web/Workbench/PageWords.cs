using LabelForge.Measures;

namespace LabelForge.Web.Workbench;

/// <summary>Problems in the page's words, where the command's name a command: from the one catalogue of both.</summary>
internal static class PageWords
{
    /// <summary>The problem in the page's words.</summary>
    public static Problem Of(Problem problem) => problem.In(ProblemWords.Page("en"));

    /// <summary>What is wrong and what to do, in the page's words.</summary>
    public static string Told(Problem problem) => Of(problem) is var told ? $"{told.Wrong} {told.Write}".TrimEnd() : "";
}
