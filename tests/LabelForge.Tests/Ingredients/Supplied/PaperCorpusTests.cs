using LabelForge.Ingredients.Supplied;

namespace LabelForge.Tests.Ingredients.Supplied;

/// <summary>The corpus of invented papers; the figures stand in docs/suppliers.md.</summary>
public class PaperCorpusTests(ITestOutputHelper output)
{
    [Fact]
    public void Lists_come_out_name_by_name_with_what_is_said_of_them() => Hold("lists.txt", 200, PaperScore.List, 0.98);

    [Fact]
    public void Safety_data_sheets_come_out_row_by_row() => Hold("sheets.txt", 40, PaperScore.Sheet, 0.98);

    [Fact]
    public void The_published_figures_are_those_of_this_reader()
    {
        var page = Repository.Page("suppliers.md");
        var table = PaperScore.Table();
        if (Environment.GetEnvironmentVariable("LABELFORGE_APPROVE") == "1")
        {
            var (from, to) = (page.IndexOf("<!-- begin papers -->\n", StringComparison.Ordinal) + 22,
                page.IndexOf("<!-- end papers -->", StringComparison.Ordinal));
            File.WriteAllText(Path.Combine(Repository.Folder, "docs", "suppliers.md"), page[..from] + table + page[to..]);
            return;
        }
        Assert.Contains(table, page, StringComparison.Ordinal);
    }

    private void Hold(string file, int least, Func<string, SuppliedList> read, double good)
    {
        var papers = CorpusPaper.Read(file);
        var wrong = new List<string>();
        var score = PaperScore.Of(papers, read, wrong);
        wrong.ForEach(output.WriteLine);
        Assert.True(papers.Length >= least);
        Assert.True(score.Recall >= good && score.Precision >= good, $"{score}\n{string.Join('\n', wrong.Take(40))}");
    }
}
