using System.Text.RegularExpressions;
using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Ingredients.Supplied;

/// <summary>A wrapper's list and a safety data sheet of one material, one held against the other.</summary>
public class PaperMergeTests
{
    private static readonly NameMatcher Matcher = new(IngredientDictionary.Shipped);

    [Fact]
    public void What_both_papers_allow_is_taken()
    {
        var (matches, told) = Merge("Water, Glycerin 10-30 %, Sodium Laureth Sulfate",
            "Glycerin 56-81-5 15 - 40 %\nSodium laureth sulfate 9004-82-4 5 - 10 %");

        Assert.Equal((15m, 30m), Share(matches, "Glycerin"));
        Assert.Equal((5m, 10m), Share(matches, "Sodium Laureth Sulfate"));
        Assert.Equal((0m, 100m), Share(matches, "Water"));
        Assert.Empty(told);
    }

    [Fact]
    public void Where_they_clash_the_list_stays_and_it_is_told()
    {
        var (matches, told) = Merge("Water, Glycerin 10-30 %", "Glycerin 56-81-5 40 - 50 %");

        Assert.Equal((10m, 30m), Share(matches, "Glycerin"));
        Assert.Contains("Both cannot be", Assert.Single(told), StringComparison.Ordinal);
    }

    [Fact]
    public void What_only_the_sheet_names_is_told_and_not_added()
    {
        var (matches, told) = Merge("Water, Glycerin", "Phenoxyethanol 122-99-6 0.5 - 1 %");

        Assert.Equal(2, matches.Length);
        Assert.Contains("Phenoxyethanol (CAS 122-99-6) at 0.5-1 %", Assert.Single(told), StringComparison.Ordinal);
    }

    [Fact]
    public void A_row_is_the_lists_ingredient_by_its_number_where_the_names_differ()
    {
        var (matches, _) = Merge("Water, Glycerin", "1,2,3-Propanetriol 56-81-5 15 - 40 %");
        Assert.Equal((15m, 40m), Share(matches, "Glycerin"));
    }

    [Fact]
    public void A_sheet_without_a_CAS_number_is_refused() =>
        Assert.Throws<InputException>(() => SafetySheet.Read("SECTION 3: Composition\nNot hazardous.", Matcher.Knows));

    [Fact]
    public void What_follows_a_list_without_a_full_stop_is_none_of_its_names_and_is_kept_with_its_line()
    {
        var list = SuppliedText.Read("Clear base\nIngredients: Water, Glycerin,\nSodium Chloride\nStore cool and dry\nMade in Exampleton",
            Matcher.Knows);

        Assert.Equal(["Water", "Glycerin", "Sodium Chloride"], list.Names.Select(n => n.Text));
        Assert.Equal(["line 1: Clear base", "line 4: Store cool and dry, Made in Exampleton"], list.Said);
    }

    // What became a heading, a bound or a range of its own.
    private static readonly string[] Understood =
        ["ingredients", "inci", "ingrédients", "inhaltsstoffe", "ingredientes", "ingredienti", "ingrediënten", "składniki", "percent",
            "less", "than", "the", "following", "and"];

    [Fact]
    public void No_word_and_no_number_of_the_corpus_is_lost()
    {
        Assert.All(CorpusPaper.Read("lists.txt"), paper =>
        {
            var list = SuppliedText.Read(paper.Text, Matcher.Knows);
            var yaml = Plain(new MaterialDraft("base", "Base", MaterialKind.Base, ListedOrder.Label, Matcher.Match(list))
            {
                Said = list.Said,
            }.ToYaml(IngredientDictionary.Shipped));
            var lost = Regex.Matches(paper.Text.Replace("-\n", "", StringComparison.Ordinal), @"\p{L}{3,}|\d{2,7}-\d\d-\d\b")
                .Select(m => m.Value)
                .Where(w => !Understood.Contains(Plain(w)) && !yaml.Contains(Plain(w), StringComparison.Ordinal)).ToArray();
            Assert.True(lost.Length == 0, $"{paper.Form}: {string.Join(' ', lost)}\n{paper.Text}\n{yaml}");
        });

        static string Plain(string text) => text.ToLowerInvariant();
    }

    [Fact]
    public void Each_word_of_the_paper_is_in_the_file_as_something_or_as_a_comment()
    {
        var list =
            SuppliedText.Read(
                "Clear base no. 4\nIngredients: Water, Glycerin (CAS 56-81-5, humectant), Fragrance (Linalool, Citral). Keep dry.",
                Matcher.Knows);
        var yaml = new MaterialDraft("base", "Base", MaterialKind.Base, ListedOrder.Label, Matcher.Match(list)) { Said = list.Said }
            .ToYaml(IngredientDictionary.Shipped);

        Assert.All(new[] { "Clear base no. 4", "Water", "Glycerin", "humectant", "Fragrance", "Linalool: <= 100 %", "Citral: <= 100 %",
            "Keep dry" }, word => Assert.Contains(word, yaml, StringComparison.Ordinal));
        var read = MaterialFile.Read("base", YamlFile.ReadText(yaml, "materials/base.yaml"));
        Assert.Equal(["Linalool", "Citral"], read.Allergens.Select(a => a.Name));
        Assert.Equal(3, read.Contains.Length);
    }

    [Fact]
    public void A_blends_figure_bounds_each_of_its_names()
    {
        var names = SuppliedText.Read("Water, Glyceryl Stearate (and) PEG-100 Stearate 5 %, Glycerin", Matcher.Knows).Names;

        Assert.Equal([100m, 5m, 5m, 100m], names.Select(n => n.Share.High.Percent));
        Assert.All(names.Where(n => n.Share.High.Percent == 5), n => Assert.Equal(0, n.Share.Low.Percent));
        Assert.Contains(names[1].Remarks, r => r.Contains("together", StringComparison.Ordinal));
    }

    [Fact]
    public void Figures_of_more_than_the_whole_are_refused_with_file_and_line()
    {
        var refused = Assert.Throws<InputException>(() => MaterialFile.Read("base",
            YamlFile.ReadText("name: Base\nkind: base\ncontains:\n  - Glycerin: 60 %\n  - Water: 45-50 %\n", "materials/base.yaml")));

        Assert.Equal(("materials/base.yaml", 5), (refused.Problem.File, refused.Problem.Line));
        Assert.Contains("105 %", refused.Problem.Wrong, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Glycerln", "Glycerin", MatchKind.Misread)]
    [InlineData("Sodiurn Chloride", "Sodium Chloride", MatchKind.Misread)]
    [InlineData("E330", "Citric Acid", MatchKind.Other)]
    [InlineData("FD & C Blue #1", "Blue 1 (CI 42090)", MatchKind.Other)]
    [InlineData("D and C Red No. 33", "Red 33 (CI 17200)", MatchKind.Other)]
    [InlineData("Titanium Dioxide CI 77891", "Titanium Dioxide (CI 77891)", MatchKind.Other)]
    [InlineData("Rizinusöl", "Ricinus Communis (Castor) Seed Oil", MatchKind.Other)]
    [InlineData("Eau/Wasser/Agua", "Water", MatchKind.Other)]
    public void A_name_in_another_guise_is_known(string written, string key, MatchKind kind)
    {
        var match = Assert.Single(Matcher.Match(SuppliedText.Read(written, Matcher.Knows)));
        Assert.Equal((key, kind), (match.Found?.Key, match.Kind));
    }

    [Theory]
    [InlineData("Glycrin")]
    [InlineData("Sodium Laurrate")]
    [InlineData("Elixir of Nothing")]
    public void A_near_spelling_is_not_taken_for_the_name(string written) =>
        Assert.Equal(MatchKind.Unknown, Assert.Single(Matcher.Match(SuppliedText.Read(written, Matcher.Knows))).Kind);

    private static (System.Collections.Immutable.ImmutableArray<NameMatch> Matches,
        System.Collections.Immutable.ImmutableArray<string> Told) Merge(string list, string rows) =>
        PaperMerge.Of(Matcher.Match(SuppliedText.Read(list, Matcher.Knows)),
            Matcher.Match(SafetySheet.Read($"SECTION 3: Composition/information on ingredients\n{rows}\nSECTION 4: First aid measures",
                Matcher.Knows)));

    private static (decimal, decimal) Share(IEnumerable<NameMatch> matches, string name) =>
        matches.Single(m => m.Found?.Us == name).Written.Share is var share ? (share.Low.Percent, share.High.Percent) : default;
}
