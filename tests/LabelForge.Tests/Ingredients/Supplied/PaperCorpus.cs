using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients.Supplied;

/// <summary>A paper of the corpus, and what must come out of it.</summary>
/// <param name="Form">The form that it shows.</param>
/// <param name="Text">The paper.</param>
/// <param name="Must">What must come out, in order: a US name, or a colour's, with what is said of it.</param>
internal sealed record CorpusPaper(string Form, string Text, ImmutableArray<PaperName> Must)
{
    /// <summary>Reads a file of the corpus.</summary>
    public static ImmutableArray<CorpusPaper> Read(string file)
    {
        var text =
            File.ReadAllText(Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Ingredients", "Supplied", "Papers", file))
            .ReplaceLineEndings("\n");
        return [.. text.Split("\n=== ").Skip(1).Select(One)];
    }

    private static CorpusPaper One(string block)
    {
        var (head, must) = block.Split("\n---\n") is [var h, var m] ? (h, m) : throw new InvalidDataException(block);
        var line = head.IndexOf('\n', StringComparison.Ordinal);
        return new CorpusPaper(head[..line], head[(line + 1)..],
            [.. must.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(Name)]);
    }

    private static PaperName Name(string line)
    {
        string[] cells = [.. line.Split('|', StringSplitOptions.TrimEntries), "", "", ""];
        var name = IngredientDictionary.Shipped.Find(cells[0]) ?? throw new InvalidDataException(cells[0]);
        return new PaperName(name.Key, Figure(cells[1]) ?? 0, Figure(cells[2]) ?? 100, cells[3]);
    }

    private static decimal? Figure(string cell) => cell.Length == 0 ? null : decimal.Parse(cell, CultureInfo.InvariantCulture);
}

/// <summary>A name with what a paper says of it.</summary>
internal sealed record PaperName(string Key, decimal Low, decimal High, string Mark);

/// <summary>How much of what is on papers comes out, and how much of what comes out is on them.</summary>
/// <param name="Papers">How many papers.</param>
/// <param name="Names">How many names are on them.</param>
/// <param name="Right">How many of these come out under their name, with what is said of them.</param>
/// <param name="Read">How many come out at all.</param>
internal sealed record PaperScore(int Papers, int Names, int Right, int Read)
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    /// <summary>Of what is on the papers, what comes out right.</summary>
    public double Recall => (double)Right / Names;

    /// <summary>Of what comes out, what is right.</summary>
    public double Precision => Read == 0 ? 1 : (double)Right / Read;

    /// <summary>Reads papers and counts; what went wrong is told one by one.</summary>
    public static PaperScore Of(IEnumerable<CorpusPaper> papers, Func<string, SuppliedList> read, List<string>? wrong = null)
    {
        var score = new PaperScore(0, 0, 0, 0);
        foreach (var paper in papers)
        {
            var got = Got(paper.Text, read);
            var left = got.ToList();
            var right = paper.Must.Count(left.Remove);
            score = new PaperScore(score.Papers + 1, score.Names + paper.Must.Length, score.Right + right, score.Read + got.Length);
            if (right != paper.Must.Length || right != got.Length)
                wrong
                    ?.Add(
                        $"{paper.Form}: missing {string.Join("; ", paper.Must.Except(got))}; instead {string.Join("; ", got.Except(paper.Must))}\n  {paper.Text.ReplaceLineEndings(" / ")}");
        }
        return score;
    }

    /// <summary>Reads a list as the command does.</summary>
    public static SuppliedList List(string text) => SuppliedText.Read(text, Matcher.Knows);

    /// <summary>Reads a sheet as the command does.</summary>
    public static SuppliedList Sheet(string text) => SafetySheet.Read(text, Matcher.Knows);

    /// <summary>The table of docs/suppliers.md.</summary>
    public static string Table()
    {
        var text = new StringBuilder("| papers | form | names | recall | precision |\n| ---: | --- | ---: | ---: | ---: |\n");
        foreach (var (papers, read) in new[] { (CorpusPaper.Read("lists.txt"), (Func<string, SuppliedList>)List),
            (CorpusPaper.Read("sheets.txt"), Sheet) })
        {
            foreach (var form in papers.GroupBy(p => p.Form))
                Row(form.Key, Of(form, read));
            Row(read == List ? "**all lists**" : "**all safety data sheets**", Of(papers, read));
        }
        return text.ToString();

        void Row(string form, PaperScore score) =>
            text.Append(CultureInfo.InvariantCulture,
                $"| {score.Papers} | {form} | {score.Names} | {score.Recall:0.000} | {score.Precision:0.000} |\n");
    }

    private static ImmutableArray<PaperName> Got(string text, Func<string, SuppliedList> read)
    {
        try
        {
            return [.. Matcher.Match(read(text)).Select(m => new PaperName(
                m.Found?.Key ?? $"?{m.Written.Text}", m.Written.Share.Low.Percent, m.Written.Share.High.Percent,
                m.Written.MayContain ? "may" : m.Written.Organic ? "organic" : ""))];
        }
        catch (InputException)
        {
            return [];
        }
    }
}
