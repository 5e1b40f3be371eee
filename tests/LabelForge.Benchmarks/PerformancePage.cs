namespace LabelForge.Benchmarks;

/// <summary>A page whose sections are written one at a time, each between two marks that readers do not see.</summary>
public static class PerformancePage
{
    /// <summary>The page with one section written anew; all else stays as it is.</summary>
    /// <param name="page">The page.</param>
    /// <param name="section">The section's name, as in its marks.</param>
    /// <param name="text">What stands between the marks.</param>
    /// <exception cref="ArgumentException">The page has no such section, or has it twice.</exception>
    public static string Put(string page, string section, string text)
    {
        var (begin, end) = ($"<!-- begin {section} -->\n", $"<!-- end {section} -->");
        var from = page.IndexOf(begin, StringComparison.Ordinal);
        var to = from < 0 ? -1 : page.IndexOf(end, from, StringComparison.Ordinal);
        if (to < 0)
            throw new ArgumentException(
                $"The page has no section {section}. Write the lines {begin.TrimEnd()} and {end} where it is to stand.", nameof(section));
        if (page.IndexOf(begin, to, StringComparison.Ordinal) >= 0)
            throw new ArgumentException($"The page has the section {section} twice. Keep one of the two.", nameof(section));
        return string.Concat(page.AsSpan(0, from + begin.Length), text.Trim('\n'), "\n", page.AsSpan(to));
    }
}
