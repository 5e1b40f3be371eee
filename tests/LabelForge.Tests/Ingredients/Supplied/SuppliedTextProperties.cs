using CsCheck;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;

namespace LabelForge.Tests.Ingredients.Supplied;

public class SuppliedTextProperties
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);
    private static Gen<string> OneOf(string[] texts) => Gen.Int[0, texts.Length - 1].Select(i => texts[i]);

    private static readonly string[] Official = [.. IngredientDictionary.Shipped.Entries.Select(e => e.Key).Distinct()];

    [Fact]
    public void Random_text_is_read_or_refused_and_nothing_else()
    {
        string[] shreds =
        [
            "Glycerin", "Water", "Aqua", " and ", "&", "/", ",", ", ", ";", "*", "**", "(", ")", "[", "]", "+/-", "May contain", ":", ".",
            "\n", "\n- ", "<1%", "10-30%", " 5 %", "110 %", "30-10%", "CI 77891", "C.I.", "1,2-", "Hexanediol", "-\n", "Ingredients:",
            "organic", "†", "\t", "56-81-5", "q.s.", "(and)", "•", "\u00AD", "\u0000", "{", "}", "\\", "\"", "#", "é", "\uD83D", "0,5",
            "%", "~", "{0}",
        ];
        var text = Gen.Select(OneOf(shreds), Gen.String[0, 5], Gen.Int[0, 5])
            .Select((known, any, which) => which == 0 ? any : known).Array[0, 40].Select(string.Concat);
        text.Sample(
            t =>
            {
                try
                {
                    var list = SuppliedText.Read(t, Matcher.Knows);
                    Assert.All(list.Names, n => Assert.Contains(n.Text, char.IsLetterOrDigit));
                    Assert.Equal(Enumerable.Range(1, list.Names.Length), list.Names.Select(n => n.Position));
                }
                catch (InputException e)
                {
                    Assert.NotEmpty(e.Problem.Write);
                }
            },
            iter: 8_000);
    }

    [Fact]
    public void Any_list_of_known_names_reads_back_as_it_was_written()
    {
        var name = OneOf(Official);
        var share = Gen.Int[0, 100].Select(Gen.Int[0, 100], (a, b) => (Math.Min(a, b), Math.Max(a, b)));
        var separator = OneOf([", ", "; ", ",\n", "\n• "]);
        var shout = Gen.Bool;
        Gen.Select(Gen.Select(name, share).Array[1, 12], separator, shout).Sample(
            (lines, between, upper) =>
            {
                var written = lines.Select(l => $"{(upper ? l.Item1.ToUpperInvariant() : l.Item1)} {l.Item2.Item1}-{l.Item2.Item2}%")
                    .ToArray();
                var read = SuppliedText.Read((between.StartsWith('\n') ? "• " : "") + string.Join(between, written), Matcher.Knows);
                var found = Matcher.Match(read);
                Assert.Equal(lines.Select(l => l.Item1), found.Select(f => f.Found?.Key));
                Assert.Equal(lines.Select(l => ((decimal)l.Item2.Item1, (decimal)l.Item2.Item2)),
                    read.Names.Select(n => (n.Share.Low.Percent, n.Share.High.Percent)));
            },
            iter: 1_500);
    }

    [Fact]
    public void Every_name_of_the_dictionary_is_read_whole()
    {
        foreach (var name in IngredientDictionary.Shipped.Entries.SelectMany(e => e.Names))
            Assert.Equal([name.TrimEnd('.')],
                SuppliedText.Read($"Zzyzx, {name}, Zzyzx", Matcher.Knows).Names.Select(n => n.Text).Where(n => n != "Zzyzx"));
    }
}
