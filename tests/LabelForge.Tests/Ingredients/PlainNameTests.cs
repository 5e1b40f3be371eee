using System.Text.RegularExpressions;
using CsCheck;
using LabelForge.Ingredients;

namespace LabelForge.Tests.Ingredients;

/// <summary>How a name is compared, held against the same said in patterns.</summary>
public partial class PlainNameTests
{
    [Fact]
    public void A_name_is_compared_as_the_patterns_say() =>
        Gen.String[Gen.Char["aCiI. /\t’–*†.(57491\u00a0É"], 0, 14].Sample(name => NameText.Plain(name) == ByPatterns(name), iter: 20_000);

    [Theory]
    [InlineData("C.I. 77491", "ci 77491")]
    [InlineData("CI77491*", "ci 77491")]
    [InlineData(" Aqua /  Water ", "aqua/water")]
    [InlineData("Cocos  Nucifera", "cocos nucifera")]
    public void Spelling_that_means_nothing_is_left_aside(string name, string plain) => Assert.Equal(plain, NameText.Plain(name));

    private static string ByPatterns(string name)
    {
        var plain = name.Trim().TrimEnd('*', '.', '†').Replace('’', '\'').Replace('–', '-').Trim().ToLowerInvariant();
        return ColourIndex().Replace(AroundSlash().Replace(Spaces().Replace(plain, " "), "/"), "ci $1");
    }

    [GeneratedRegex(@"\s*/\s*")]
    private static partial Regex AroundSlash();

    [GeneratedRegex(@"^c\.?i\.? ?(\d{5})$")]
    private static partial Regex ColourIndex();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
