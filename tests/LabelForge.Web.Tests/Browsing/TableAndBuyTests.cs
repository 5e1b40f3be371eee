using LabelForge.Records.Books;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Cards for the table and labels of gift sets; and what a first hundred dollars buy,
/// the things of the bench counted in.</summary>
public sealed class TableAndBuyTests(Chromium chromium)
{
    [Fact]
    public async Task Price_tags_are_drawn_and_laid_on_sheets_as_many_as_are_asked_for()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/table");
        await page.ClickAsync("#make-cards");
        // Nothing was asked for: that is told, and nothing is made.
        await Assertions.Expect(page.Locator("form [role=alert]")).ToBeVisibleAsync();
        await page.FillAsync("#card-meadow-bar-Moss-Lane", "3");
        await page.FillAsync("[id='card-bramble-bar']", "2");
        await page.ClickAsync("#make-cards");
        using var pdf = await PdfAsync(window, "#cards-pdf");
        var words = string.Concat(pdf.GetPages().Select(p => p.Text));
        Assert.Equal((3, 2), (Times(words, "Moss Lane"), Times(words, "Bramble & Shea")));
        await Assertions.Expect(page.Locator(".front img")).ToHaveCountAsync(2);
        // What was made is of what was asked: another number, and it is gone until it is made again.
        await page.FillAsync("[id='card-bramble-bar']", "1");
        await Assertions.Expect(page.Locator("#cards-pdf")).ToHaveCountAsync(0);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_gift_set_is_put_together_judged_and_printed_and_an_open_rule_stops_it_until_it_is_ticked()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/table");
        await page.Locator("#card").SelectOptionAsync("gift-set");
        await page.FillAsync("#set-name", "Two from the hedge");
        await page.FillAsync("#card-meadow-bar-Moss-Lane", "1");
        await page.FillAsync("[id='card-bramble-bar']", "1");
        await page.FillAsync("#set-count", "4");
        await page.ClickAsync("#make-cards");
        using (var pdf = await PdfAsync(window, "#cards-pdf"))
        {
            var words = string.Concat(pdf.GetPages().Select(p => p.Text));
            Assert.Equal(4, Times(words, "Two from the hedge"));
            Assert.Equal(4, Times(words, "Total: 2 pieces"));
        }
        // A name that promises to heal makes a drug of it.
        await page.FillAsync("#set-name", "Eczema cure box");
        await page.ClickAsync("#make-cards");
        await Assertions.Expect(page.Locator("form [role=alert]")).ToContainTextAsync("drug");
        await Assertions.Expect(page.Locator("#make-cards")).ToBeDisabledAsync();
        await Assertions.Expect(page.Locator("#cards-pdf")).ToHaveCountAsync(0);
        await page.CheckAsync("#anyway");
        await page.ClickAsync("#make-cards");
        await page.Locator("#cards-pdf").WaitForAsync();
        // Four to a sheet leave no margin to say it in, and that is told.
        await Assertions.Expect(page.Locator("section .notice.should")).ToContainTextAsync("claim.drug");
        // Labels of a set bind no lot, and cards are no labels: the books know of none.
        Assert.False(OpenBooks.Exists(window.Folder));
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_first_hundred_dollars_buy_packs_and_what_the_bench_needs_and_more_packs_where_a_thing_is_there()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/costs/buy");
        await page.CheckAsync("#want-hayloft-bar");
        await page.GetByText("As many pieces as the money makes").ClickAsync();
        await page.FillAsync("#budget", "140");
        await page.CheckAsync("#count-tools");
        await page.Locator("#price-scale").WaitForAsync();
        // No lye goes into it, so nobody is asked for goggles; into the other it does.
        await Assertions.Expect(page.Locator("#have-goggles")).ToHaveCountAsync(0);
        await page.CheckAsync("#want-harbour-wall-bar");
        await page.Locator("#have-goggles").WaitForAsync();
        await page.UncheckAsync("#want-harbour-wall-bar");
        await Assertions.Expect(page.Locator("#have-goggles")).ToHaveCountAsync(0);
        var bare = await SolveAsync(page);
        await Assertions.Expect(page.Locator("section table")).ToContainTextAsync("scale that shows 1 g");
        await Assertions.Expect(page.Locator("#without-tools")).ToBeVisibleAsync();
        // A scale that is there is not bought, and the price of a jug is what was typed.
        await page.CheckAsync("#have-scale");
        await page.FillAsync("#price-jug", "1.50");
        var having = await SolveAsync(page);
        await Assertions.Expect(page.Locator("section table")).Not.ToContainTextAsync("scale that shows");
        await Assertions.Expect(page.Locator("section tr:has-text('jug') td").Last).ToHaveTextAsync("1.50");
        Assert.True(having > bare, $"{having} pieces with a scale at hand, {bare} without");
        // It is remembered when the page is opened again.
        await window.GoAsync("/costs/buy");
        await Assertions.Expect(page.Locator("#have-scale")).ToBeCheckedAsync();
        await Assertions.Expect(page.Locator("#price-jug")).ToHaveValueAsync("1.50");
        Assert.Empty(window.Complaints);
    }

    private static async Task<int> SolveAsync(IPage page)
    {
        // The answer of before goes, and another comes: the old one, still there for a moment, is not read.
        await page.EvaluateAsync("() => document.getElementById('makes')?.setAttribute('data-before', '')");
        await page.Locator("form button[type=submit]").ClickAsync();
        await page.Locator("#makes:not([data-before])").WaitForAsync();
        return int.Parse(
            new string([.. (await page.Locator("#makes").InnerTextAsync()).SkipWhile(c => !char.IsAsciiDigit(c))
                .TakeWhile(char.IsAsciiDigit)]), System.Globalization.CultureInfo.InvariantCulture);
    }

    private static async Task<PdfDocument> PdfAsync(Window window, string link)
    {
        var address = await window.Page.Locator(link).GetAttributeAsync("href");
        var answer = await window.Context.APIRequest.GetAsync(new Uri(window.Address, address!).ToString());
        return PdfDocument.Open(await answer.BodyAsync());
    }

    // Where a line ends there is no space.
    private static int Times(string text, string what) => Bare(text).Split(Bare(what)).Length - 1;

    private static string Bare(string text) => text.Replace(" ", "", StringComparison.Ordinal);
}
