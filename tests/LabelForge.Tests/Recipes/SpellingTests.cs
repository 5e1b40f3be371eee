using CsCheck;
using LabelForge.Recipes.Files;

namespace LabelForge.Tests.Recipes;

/// <summary>How far a misspelt word lies from a known one.</summary>
public sealed class SpellingTests
{
    private static readonly Gen<string> AnyWord = Gen.String[Gen.Char["abcAB"], 0, 12];

    [Fact]
    public void The_distance_is_the_least_number_of_letters_to_change_and_null_beyond_what_is_asked() =>
        Gen.Select(AnyWord, AnyWord, Gen.Int[0, 13]).Sample((a, b, most) =>
        {
            var plain = ByDefinition(a.ToLowerInvariant(), b.ToLowerInvariant());
            Assert.Equal(plain <= most ? plain : null, Spelling.DistanceWithin(most, a, b));
        });

    // The textbook's own example, kitten and sitting (from memory), and what makers type.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("glycerine", "glycerin", 1)]
    [InlineData("Sheabutter", "shea butter", 1)]
    [InlineData("", "", 0)]
    public void Words_lie_as_far_apart_as_letters_differ(string a, string b, int distance)
    {
        Assert.Equal(distance, Spelling.DistanceWithin(distance, a, b));
        Assert.Null(distance == 0 ? null : Spelling.DistanceWithin(distance - 1, a, b));
    }

    [Fact]
    public void The_nearest_word_is_offered_only_where_no_more_than_one_letter_in_three_is_wrong()
    {
        Assert.Equal("castor-oil", Spelling.Nearest("caster-oil", ["olive-oil", "castor-oil"]));
        Assert.Null(Spelling.Nearest("mica", ["olive-oil", "castor-oil"]));
        Assert.Null(Spelling.Nearest("mica", []));
    }

    // The recurrence as it is defined, each case looked at.
    private static int ByDefinition(string a, string b)
    {
        var known = new Dictionary<(int, int), int>();
        return Of(a.Length, b.Length);

        int Of(int i, int j)
        {
            if (i == 0 || j == 0)
                return i + j;
            if (known.TryGetValue((i, j), out var distance))
                return distance;
            distance = Math.Min(Math.Min(Of(i - 1, j), Of(i, j - 1)) + 1, Of(i - 1, j - 1) + (a[i - 1] == b[j - 1] ? 0 : 1));
            known[(i, j)] = distance;
            return distance;
        }
    }
}
