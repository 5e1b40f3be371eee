using CsCheck;
using LabelForge.Lots;

namespace LabelForge.Tests.Lots;

public class LotCodeTests
{
    private static readonly Gen<LotCode> AnyLot =
        Gen.Select(Gen.Int[0, LotCode.LastDay.DayNumber - LotCode.FirstDay.DayNumber], Gen.Int[1, LotCode.MostBatches])
            .Select((day, batch) => new LotCode(LotCode.FirstDay.AddDays(day), batch));

    // Check characters worked apart from this code, by the sum of ISO/IEC 7064 MOD 37-2.
    [Theory]
    [InlineData(2026, 11, 25, 7, "26R25-072")]
    [InlineData(2026, 11, 25, 1, "26R25-01E")]
    [InlineData(2026, 11, 25, 2, "26R25-02C")]
    [InlineData(2026, 5, 4, 1, "26H04-014")]
    public void A_lot_is_written_with_its_day_its_batch_and_a_check_character(int year, int month, int day, int batch, string written)
    {
        var lot = new LotCode(new DateOnly(year, month, day), batch);
        Assert.Equal(written, lot.ToString());
        Assert.True(Iso7064Mod37_2.Verifies(written.Replace("-", "")));
        Assert.Equal(lot, LotCode.Parse(written).Value);
    }

    [Fact]
    public void Every_lot_has_one_code_of_nine_characters_that_verifies_and_holds_no_letter_that_can_be_misread()
    {
        // All days of 28 years with all batches: a million codes. The check character depends only on what the date and the
        // batch leave when divided by 37; the days of these years leave every remainder, so the century holds no other case.
        var codes = new HashSet<string>();
        for (var day = new DateOnly(2024, 1, 1); day < new DateOnly(2052, 1, 1); day = day.AddDays(1))
        {
            for (var batch = 1; batch <= LotCode.MostBatches; batch++)
            {
                var lot = new LotCode(day, batch);
                var written = lot.ToString();
                Assert.Equal(9, written.Length);
                Assert.True(Iso7064Mod37_2.Verifies(lot.Compact), written);
                Assert.Equal(-1, written.AsSpan().IndexOfAny("BDGILOQSUVZ*"));
                Assert.True(codes.Add(lot.Compact), written);
            }
        }
    }

    [Fact]
    public void A_code_read_back_is_the_same_lot_whatever_the_case_and_spacing() => AnyLot.Sample(lot =>
    {
        var written = lot.ToString();
        string[] ways = [written, lot.Compact, written.ToLowerInvariant(), $" {written[..3]} {written[3..]} ",
            string.Join('-', lot.Compact.AsEnumerable()), written.Replace('-', '\u2013'), "Lot " + written, "LOT: " + lot.Compact];
        return ways.All(way => LotCode.Parse(way) is { IsValue: true } read && read.Value == lot);
    });

    [Fact]
    public void One_wrong_character_is_always_refused() =>
        Gen.Select(AnyLot, Gen.Int[0, 8], Gen.Char[" -!*0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ"]).Sample((lot, at, other) =>
        {
            var written = lot.ToString();
            // The hyphen is no part of the code: spaces and hyphens are left out when it is read.
            if (written[at] == other || (written[at] is '-' && other is ' '))
                return;
            var wrong = written[..at] + other + written[(at + 1)..];
            Assert.False(LotCode.Parse(wrong).IsValue, $"{written} read as {wrong}");
        }, iter: 20_000);

    [Fact]
    public void Two_neighbours_swapped_are_always_refused() => Gen.Select(AnyLot, Gen.Int[0, 7]).Sample((lot, at) =>
    {
        var code = lot.Compact;
        if (at + 1 >= code.Length || code[at] == code[at + 1])
            return;
        var swapped = code[..at] + code[at + 1] + code[at] + code[(at + 2)..];
        Assert.False(LotCode.Parse(swapped).IsValue, $"{code} read as {swapped}");
    }, iter: 20_000);

    [Fact]
    public void Codes_sort_by_date_as_text() => Gen.Select(AnyLot, AnyLot).Sample((a, b) =>
        a.Made == b.Made || Math.Sign(a.Made.CompareTo(b.Made)) == Math.Sign(string.CompareOrdinal(a.ToString(), b.ToString())));

    [Theory]
    [InlineData("", "no lot code")]
    [InlineData("26R25-07", "has 7 characters")]
    [InlineData("26R25-0722X", "has 10 characters")]
    [InlineData("26O25-072", "'O' never stands in a lot code")]
    [InlineData("26R2S-072", "it may be the digit 5")]
    [InlineData("X6R25-072", "is not a year")]
    [InlineData("26W25-072", "is no month")]
    [InlineData("26RA5-072", "is not a day")]
    [InlineData("26R25-0A2", "is not a batch number")]
    [InlineData("26R25-073", "check character")]
    public void A_wrong_code_is_refused_with_what_is_wrong(string text, string says)
    {
        var read = LotCode.Parse(text);
        Assert.False(read.IsValue);
        Assert.Contains(says, $"{read.Wrong} {read.Write}");
    }

    [Theory]
    [InlineData("26C30", "01", "not in the calendar")]
    [InlineData("26R26", "00", "Batch 00")]
    public void A_code_that_checks_but_names_no_lot_is_refused(string date, string batch, string says) =>
        Assert.Contains(says, LotCode.Parse(date + batch + Iso7064Mod37_2.CheckCharacter(date + batch)).Wrong);

    [Fact]
    public void A_joint_letter_where_none_is_needed_is_refused()
    {
        // 26R25X02M verifies, but this lot's one code is 26R25-02C.
        Assert.True(Iso7064Mod37_2.Verifies("26R25X02M"));
        Assert.False(LotCode.Parse("26R25X02M").IsValue);
    }

    [Fact]
    public void A_code_is_said_in_words() =>
        Assert.Equal("two six Romeo two five, zero one Echo", new LotCode(new DateOnly(2026, 11, 25), 1).Spoken);

    [Fact]
    public void Every_code_can_be_said() => AnyLot.Sample(lot => lot.Spoken.Replace(",", "").Split(' ').Length == lot.Compact.Length);

    [Theory]
    [InlineData(1999, 12, 31, 1)]
    [InlineData(2100, 1, 1, 1)]
    [InlineData(2026, 1, 1, 0)]
    [InlineData(2026, 1, 1, 100)]
    public void A_day_or_a_batch_that_cannot_be_written_is_no_lot(int year, int month, int day, int batch) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new LotCode(new DateOnly(year, month, day), batch));

    [Fact]
    public void The_default_is_a_lot() => Assert.Equal(new LotCode(LotCode.FirstDay, 1), default);
}
