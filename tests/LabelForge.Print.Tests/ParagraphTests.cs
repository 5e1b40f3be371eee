using CsCheck;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Tests;

public class ParagraphTests
{
    private static readonly Gen<string[]> Names = Gen.OneOf(new[] { "Glycerin", "Water", "Sodium Stearate", "Mica", "Butyrospermum Parkii (Shea) Butter", "Tin Oxide", "Sorbitol" }.Select(n => (IGen<string>)Gen.Const(n)).ToArray()).Array[1, 12];

    [Fact]
    public void No_name_is_broken_and_no_comma_leaves_its_name() => Names.Sample(names =>
    {
        var items = Paragraph.OfNames(names, BundledFaces.Regular, 20).ToList();
        Assert.Equal(names.Length, items.Count);
        Assert.All(items.SkipLast(1), i => Assert.EndsWith(",", i.Text));
        Assert.False(items[^1].Text.EndsWith(','));
    });

    [Fact]
    public void A_name_alone_wider_than_the_panel_breaks_between_its_words() =>
        Assert.Equal(["Water,", "Butyrospermum", "Parkii", "(Shea)", "Butter"],
            Paragraph.OfNames(["Water", "Butyrospermum Parkii (Shea) Butter"], BundledFaces.Regular, 8).Select(i => i.Text));

    // An independent judge: every way to break, tried one by one.
    [Fact]
    public void No_other_breaking_has_fewer_lines_or_is_less_ragged() =>
        Gen.Select(Names, Gen.Double[14, 40]).Sample((names, width) =>
        {
            var items = Paragraph.OfNames(names, BundledFaces.Regular, width).ToList();
            var found = Paragraph.Break(items, width);
            var best = Enumerable.Range(0, 1 << (items.Count - 1))
                .Select(breaks => Lines(items.Count, breaks)).Select(lines => Cost(items, lines, width)).Min();
            var cost = Cost(items, [.. found.Lines.Select(r => (r.Start.Value, r.End.Value))], width);
            Assert.Equal(best.Lines, cost.Lines);
            Assert.Equal(best.Ragged, cost.Ragged, 1e-6);
        }, iter: 200);

    [Fact]
    public void A_word_wider_than_the_line_is_named() =>
        Assert.Equal("Pentaerythrityl", Paragraph.Break([.. Paragraph.OfWords("a Pentaerythrityl b", BundledFaces.Regular)], 3).TooWide?.Text);

    [Fact]
    public void Nothing_to_say_takes_no_lines() => Assert.Empty(Paragraph.Break([], 10).Lines);

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
