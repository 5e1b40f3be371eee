using System.Collections.Immutable;
using CsCheck;
using LabelForge.Print.Sheets;

namespace LabelForge.Print.Tests;

/// <summary>Which sheets go into the tray: as few as can be are part-used afterwards.</summary>
public sealed class SheetFillingTests
{
    private static PartUsedSheet Used(string name, params int[] places) => new(name, [.. places]);

    [Fact]
    public void Part_used_sheets_are_filled_before_a_new_one_is_begun()
    {
        var sheets = SheetFilling.Plan(10, [Used("A", 1, 2, 3, 4), Used("B", 1, 2, 3, 4, 5, 6, 7, 8)], 18);
        Assert.Equal(["B", "A", null], sheets.Select(s => s.Name));
        Assert.Equal(["9-10", "5-10", "1-10"], sheets.Select(s => PositionRanges.Write(s.Places)));
    }

    [Fact]
    public void A_place_between_used_ones_is_used_too()
    {
        var sheet = Assert.Single(SheetFilling.Plan(10, [Used("A", 1, 3, 5, 6, 7, 8, 9, 10)], 2));
        Assert.Equal([2, 4], sheet.Places);
    }

    [Fact]
    public void A_sheet_that_would_stay_part_used_either_way_stays_in_its_folder()
    {
        // Ten labels: a new sheet is filled, where sheet A and a new one would both go through the printer.
        var sheet = Assert.Single(SheetFilling.Plan(10, [Used("A", 1)], 9));
        Assert.Equal("A", sheet.Name);
        Assert.Equal([(string?)null], SheetFilling.Plan(10, [Used("A", 1, 2, 3, 4)], 10).Select(s => s.Name).Distinct());
    }

    [Fact]
    public void No_other_choice_of_sheets_leaves_fewer_part_used() =>
        Gen.Select(Gen.Int[2, 6], Gen.Int[0, 3], Gen.Int[1, 20], Gen.Int[0, int.MaxValue]).Sample((perSheet, count, labels, seed) =>
        {
            var random = new Random(seed);
            PartUsedSheet[] known = [.. Enumerable.Range(0, count)
                .Select(i => Used($"{(char)('A' + i)}",
                    [.. Enumerable.Range(1, perSheet).OrderBy(_ => random.Next()).Take(random.Next(1, perSheet))]))];
            var plan = SheetFilling.Plan(perSheet, known, labels);
            Assert.Equal(labels, plan.Sum(s => s.Places.Length));
            Assert.All(plan, s => Assert.Empty(s.Places.Intersect(s.UsedBefore)));
            var after = known.Length - plan.Count(s => s.Name is not null)
                + plan.Count(s => s.UsedBefore.Count + s.Places.Length < perSheet);
            Assert.Equal(Fewest([.. known.Select(k => perSheet - k.Used.Count)], perSheet, labels), after);
        }, iter: 200);

    [Theory]
    [InlineData("1-4,7", "1-4,7")]
    [InlineData("7 1,2, 3", "1-3,7")]
    [InlineData("2", "2")]
    public void Places_are_read_as_people_write_them(string written, string understood) =>
        Assert.Equal(understood, PositionRanges.Write(PositionRanges.Read(written)!));

    [Theory]
    [InlineData("4-1")]
    [InlineData("0")]
    [InlineData("one")]
    [InlineData("1-2-3")]
    public void Places_that_are_none_are_not_read(string written) => Assert.Null(PositionRanges.Read(written));

    // By trying how many labels go on each part-used sheet, one after the other; the rest fills new ones.
    private static int Fewest(ImmutableArray<int> free, int perSheet, int labels) => free.IsEmpty
        ? labels % perSheet == 0 ? 0 : 1
        : Enumerable.Range(0, Math.Min(free[0], labels) + 1)
            .Min(n => Fewest(free.RemoveAt(0), perSheet, labels - n) + (n < free[0] ? 1 : 0));
}
