using LabelForge.Benchmarks;

namespace LabelForge.Tests;

/// <summary>The page that measurements are written into, section by section.</summary>
public class PerformancePageTests
{
    private const string Page = "# Speed\n<!-- begin a -->\nold\n<!-- end a -->\nbetween\n<!-- begin b -->\n<!-- end b -->\n";

    [Fact]
    public void A_section_is_written_anew_and_all_else_stays()
    {
        var once = PerformancePage.Put(Page, "b", "\nsecond\n");
        var twice = PerformancePage.Put(PerformancePage.Put(once, "a", "first"), "a", "first");
        Assert.Equal("# Speed\n<!-- begin a -->\nfirst\n<!-- end a -->\nbetween\n<!-- begin b -->\nsecond\n<!-- end b -->\n", twice);
    }

    [Fact]
    public void A_section_that_is_not_there_is_refused_and_named() =>
        Assert.Contains("<!-- begin c -->", Assert.Throws<ArgumentException>(() => PerformancePage.Put(Page, "c", "x")).Message);

    [Fact]
    public void Every_part_has_its_place_on_the_page()
    {
        var page = Repository.Page("performance.md");
        Assert.All(["declare", "sheets", "cold", "keystroke", "check", "ask", "records", "growth", "growth-books"],
            part => Assert.NotEmpty(PerformancePage.Put(page, part, "x")));
    }
}
