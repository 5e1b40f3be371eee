using LabelForge.Markets;

namespace LabelForge.Tests.Markets;

/// <summary>The product types that Annexes III to VI of Regulation (EC) No 1223/2009 speak of.</summary>
public class ProductGroupTests
{
    [Theory]
    [InlineData("conditioner", "hair+rinse-off", Applies.Yes)]
    [InlineData("hair-leave-in", "hair+rinse-off", Applies.No)]
    [InlineData("hair-leave-in", "hair+leave-on", Applies.Yes)]
    [InlineData("lip-balm", "mucous", Applies.Perhaps)]
    [InlineData("lip-balm", "lips", Applies.Yes)]
    [InlineData("eye-cream", "eye", Applies.Yes)]
    [InlineData("soap-bar", "hair;soap", Applies.Yes)]
    [InlineData("body-wash", "hair;soap", Applies.Perhaps)]
    [InlineData("soap-bar", "nails", Applies.No)]
    [InlineData("face-cream", "all", Applies.Yes)]
    public void A_kind_falls_in_the_groups_that_an_annex_speaks_of(string kind, string groups, Applies covers) =>
        Assert.Equal(covers, ProductGroup.Covers(ProductKinds.Find(kind).Value!, groups.Split(';')));

    [Fact]
    public void Every_kind_falls_in_a_group_or_is_told_by_its_area() =>
        Assert.Empty(ProductKinds.All
            .Where(k => k.Groups.IsEmpty && k.Id is not ("suntanning" or "hair-dye" or "feminine-deodorant-spray")).Select(k => k.Id));

    [Fact]
    public void An_unknown_group_is_refused_with_the_list() =>
        Assert.Contains("shampoo", ProductGroup.Parse("noses").Write, StringComparison.Ordinal);
}
