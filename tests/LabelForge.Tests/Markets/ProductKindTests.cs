using LabelForge.Markets;
using LabelForge.Measures;

namespace LabelForge.Tests.Markets;

public class ProductKindTests
{
    /// <summary>IFRA Standards, 49th Amendment, categories of finished products.</summary>
    [Theory]
    [InlineData("soap-bar", "9", ProductUse.RinseOff, AreaOfUse.External, QuantityBy.Mass)]
    [InlineData("lip-balm", "1", ProductUse.LeaveOn, AreaOfUse.Lips, QuantityBy.Mass)]
    [InlineData("body-lotion", "5A", ProductUse.LeaveOn, AreaOfUse.External, QuantityBy.Volume)]
    [InlineData("face-cream", "5B", ProductUse.LeaveOn, AreaOfUse.External, QuantityBy.Mass)]
    [InlineData("hand-cream", "5C", ProductUse.LeaveOn, AreaOfUse.External, QuantityBy.Mass)]
    [InlineData("deodorant", "2", ProductUse.LeaveOn, AreaOfUse.External, QuantityBy.Mass)]
    [InlineData("perfume-oil", "4", ProductUse.LeaveOn, AreaOfUse.External, QuantityBy.Volume)]
    [InlineData("eye-cream", "3", ProductUse.LeaveOn, AreaOfUse.Eye, QuantityBy.Mass)]
    public void A_kind_knows_what_its_rules_turn_on(string id, string category, ProductUse use, AreaOfUse area, QuantityBy by)
    {
        var kind = ProductKinds.Find(id).Value!;
        Assert.Equal((category, use, area, by), (kind.IfraCategory, kind.Use, kind.Area, kind.QuantityBy));
    }

    [Fact]
    public void An_unknown_kind_is_refused_with_the_list_of_the_known_ones()
    {
        var refused = ProductKinds.Find("soapbar");
        Assert.False(refused.IsValue);
        Assert.All(ProductKinds.All, k => Assert.Contains(k.Id, refused.Write, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_category_is_one_of_the_49th_amendment() =>
        Assert.All(ProductKinds.All, k => Assert.Contains(k.IfraCategory,
            new[] { "1", "2", "3", "4", "5A", "5B", "5C", "5D", "6", "7A", "7B", "8", "9", "10A", "10B", "11A", "11B", "12" }));

    [Theory]
    [InlineData("use: rinse-off", "use: sometimes")]
    [InlineData("area: external, ", "")]
    [InlineData("form: solid", "form: solid, shape: bar")]
    public void A_kind_that_is_not_whole_is_refused_at_its_line(string from, string to)
    {
        const string good = "- { id: a, name: A, use: rinse-off, ifra: \"9\", area: external, net: mass, form: solid }";
        Assert.Single(ProductKinds.Read("kinds.yaml", good));
        var refused = Assert.Throws<InputException>(() => ProductKinds.Read("kinds.yaml",
            "\n" + good.Replace(from, to, StringComparison.Ordinal)));
        Assert.Equal(2, refused.Problem.Line);
        Assert.Contains("twice", Assert.Throws<InputException>(() => ProductKinds.Read("kinds.yaml", good + "\n" + good)).Message,
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("us", "us")]
    [InlineData(" EU ", "eu")]
    [InlineData("uk", "uk")]
    [InlineData("ca", "ca")]
    public void A_market_is_read_and_written_by_its_two_letters(string text, string market)
    {
        Assert.Equal(Market.Named(market), MarketBook.Shipped.Find(text).OrRefuse());
        Assert.Equal(text.Trim().ToLowerInvariant(), Market.Named(market).Id);
        Assert.False(MarketBook.Shipped.Find("usa").IsValue);
    }
}
