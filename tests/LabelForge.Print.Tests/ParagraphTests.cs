using CsCheck;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Tests;

public class ParagraphTests
{
    private static readonly Gen<string[]> Names =
        Gen.OneOf(new[] { "Glycerin", "Water", "Sodium Stearate", "Mica", "Butyrospermum Parkii (Shea) Butter", "Tin Oxide", "Sorbitol" }
            .Select(n => (IGen<string>)Gen.Const(n)).ToArray()).Array[1, 12];

    [Fact]
    public void No_comma_leaves_its_name_and_words_of_one_name_hold_together() => Names.Sample(names =>
    {
        var items = Paragraph.OfNames(names, BundledFaces.Regular).ToList();
        Assert.Equal(string.Join(", ", names), string.Join(' ', items.Select(i => i.Text)));
        Assert.Equal(names.Length - 1, items.Count(i => i.Text.EndsWith(',')));
        Assert.All(items.SkipLast(1), i => Assert.Equal(!i.Text.EndsWith(','), i.GoesOn));
    });

    [Fact]
    public void A_name_alone_wider_than_the_panel_breaks_between_its_words() =>
        Assert.Equal(["Butyrospermum", "Parkii (Shea)", "Butter"], LinesOf(["Butyrospermum Parkii (Shea) Butter"], 6.2));

    [Fact]
    public void A_name_is_broken_where_its_line_would_else_stay_an_eighth_empty_and_nowhere_else() =>
        Gen.Select(Names, Gen.Double[14, 40]).Sample((names, width) =>
        {
            var items = Paragraph.OfNames(names, BundledFaces.Regular).ToList();
            foreach (var line in Paragraph.Break(items, width).Lines.SkipLast(1).Where(l => items[l.End.Value - 1].GoesOn))
            {
                // What the line would hold with no name broken at its end: its whole names, or the broken one too if that had room.
                var (from, end) = (line.Start.Value, line.End.Value);
                var name = end - 1;
                while (items[name].GoesOn)
                    name++;
                var whole = Used(items, from, name + 1);
                if (whole > width)
                {
                    var before = end - 1;
                    while (before >= from && items[before].GoesOn)
                        before--;
                    whole = before < from ? 0 : Used(items, from, before + 1);
                }
                Assert.True(whole < width * 0.875, $"{whole} of {width}");
            }
        });

    // An independent judge: every way to break, tried one by one.
    [Fact]
    public void No_other_breaking_has_fewer_lines_or_is_less_ragged() =>
        Gen.Select(Names, Gen.Double[14, 40]).Sample((names, width) =>
        {
            var items = Paragraph.OfChunks(names.Select((n, i) => i == names.Length - 1 ? n : n + ","), BundledFaces.Regular, width)
                .ToList();
            var found = Paragraph.Break(items, width);
            var best = Enumerable.Range(0, 1 << (items.Count - 1))
                .Select(breaks => Lines(items.Count, breaks)).Select(lines => Cost(items, lines, width)).Min();
            var cost = Cost(items, [.. found.Lines.Select(r => (r.Start.Value, r.End.Value))], width);
            Assert.Equal(best.Lines, cost.Lines);
            Assert.Equal(best.Ragged, cost.Ragged, 1e-6);
        }, iter: 200);

    [Fact]
    public void A_word_wider_than_the_line_is_named() =>
        Assert.Equal("Pentaerythrityl",
            Paragraph.Break([.. Paragraph.OfWords("a Pentaerythrityl b", BundledFaces.Regular)], 3).TooWide?.Text);

    [Fact]
    public void Nothing_to_say_takes_no_lines() => Assert.Empty(Paragraph.Break([], 10).Lines);

    private static string[] LinesOf(string[] names, double width)
    {
        var items = Paragraph.OfNames(names, BundledFaces.Regular).ToList();
        return [.. Paragraph.Break(items, width).Lines.Select(l => string.Join(' ', items.Take(l).Select(i => i.Text)))];
    }

    private static double Used(List<ParagraphItem> items, int from, int to) =>
        items[from..to].Sum(i => i.Width) + items[from..(to - 1)].Sum(i => i.Space);

    private static List<(int, int)> Lines(int count, int breaks)
    {
        var lines = new List<(int, int)>();
        var start = 0;
        for (var i = 1; i <= count; i++)
        {
            if (i < count && (breaks >> (i - 1) & 1) == 0)
                continue;
            lines.Add((start, i));
            start = i;
        }
        return lines;
    }

    private static (int Lines, double Ragged) Cost(List<ParagraphItem> items, List<(int From, int To)> lines, double width)
    {
        double ragged = 0;
        foreach (var (from, to) in lines)
        {
            var used = items[from..to].Sum(i => i.Width) + items[from..(to - 1)].Sum(i => i.Space);
            if (used > width)
                return (int.MaxValue, 0);
            if (to < items.Count)
                ragged += (width - used) * (width - used);
        }
        return (lines.Count, ragged);
    }
}
