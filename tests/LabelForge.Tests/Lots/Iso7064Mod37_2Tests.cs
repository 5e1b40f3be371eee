using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

public class Iso7064Mod37_2Tests
{
    // Donation numbers of ISBT 128, which take their check character from ISO/IEC 7064 MOD 37-2: G123 498 654 321 with H
    // (from memory of the ISBT 128 Standard); ABCDE27000069 with C (a published check-character function's sample).
    public static TheoryData<string, char> Published => new() { { "G123498654321", 'H' }, { "ABCDE27000069", 'C' } };

    [Theory]
    [MemberData(nameof(Published))]
    public void Published_numbers_have_their_published_check_character(string body, char check)
    {
        Assert.Equal(check, Iso7064Mod37_2.CheckCharacter(body));
        Assert.True(Iso7064Mod37_2.Verifies(body + check));
    }

    // By hand: 1 weighs 2, so the rest to 1 modulo 37 is 36, written *; 0 weighs nothing, so the check is 1.
    [Theory]
    [InlineData("1", '*')]
    [InlineData("0", '1')]
    [InlineData("10", 'Y')]
    public void Worked_by_hand(string body, char check) => Assert.Equal(check, Iso7064Mod37_2.CheckCharacter(body));

    [Theory]
    [InlineData("")]
    [InlineData("A*")]
    [InlineData("a1")]
    [InlineData("Ä1")]
    public void A_body_of_other_characters_has_no_check_character(string body) =>
        Assert.ThrowsAny<ArgumentException>(() => Iso7064Mod37_2.CheckCharacter(body));

    [Theory]
    [InlineData("")]
    [InlineData("1")]
    [InlineData("*1")]
    [InlineData("g123498654321H")]
    public void Text_that_cannot_be_checked_does_not_verify(string whole) => Assert.False(Iso7064Mod37_2.Verifies(whole));
}
