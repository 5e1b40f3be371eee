using System.Text.RegularExpressions;
using LabelForge.Records.Books;
using LabelForge.Web.Tests.Browsing;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Hostile;

/// <summary>Impatient hands: what is pressed twice is written once, and what was written by mistake is struck by one button.</summary>
public sealed class TwiceTests(Chromium chromium)
{
    // As fast as a browser can: before any answer is back.
    private const string Twice = "button => { button.click(); button.click(); button.click(); }";

    [Fact]
    public async Task A_receipt_a_weighing_a_complaint_and_a_batch_are_written_once()
    {
        await using var window = await Filled();
        var page = window.Page;
        var before = Read(window);
        await window.GoAsync("/stock/in");
        await page.Locator("#material").SelectOptionAsync("castor-oil");
        await page.Locator("#amount").FillAsync("16 fl oz");
        await page.Locator("#price").FillAsync("9.50");
        await page.Locator("button[type=submit].chief").EvaluateAsync(Twice);
        await Assertions.Expect(page.Locator(".notice.well")).ToContainTextAsync("Written down");
        await window.GoAsync("/stock/complaints");
        await page.Locator("#from").FillAsync("A. Reader");
        await page.Locator("#what").FillAsync("It stung");
        await page.Locator("button[type=submit].chief").EvaluateAsync(Twice);
        await Assertions.Expect(page.Locator(".notice.well")).ToContainTextAsync("Written down");
        await window.GoAsync($"/batches/{FilledBooks.OpenLot}");
        await page.Locator("#weighed").FillAsync("1");
        await page.Locator(".bench-buttons button[type=submit]").EvaluateAsync(Twice);
        await Assertions.Expect(page.Locator(".notice.well")).ToContainTextAsync("written down");
        await window.GoAsync("/batches");
        await page.Locator("button[type=submit].chief").EvaluateAsync(Twice);
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/batches/."));
        var after = Read(window);
        Assert.Equal(before.AllReceipts.Count + 1, after.AllReceipts.Count);
        Assert.Equal(before.AllComplaints.Count + 1, after.AllComplaints.Count);
        Assert.Equal(before.AllWeighings.Count + 1, after.AllWeighings.Count);
        Assert.Equal(before.AllBatches.Count + 1, after.AllBatches.Count);
    }

    [Fact]
    public async Task What_was_booked_is_undone_by_one_button_and_struck_not_rubbed_out()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/stock/out");
        await page.Locator("#sale-lot").SelectOptionAsync(FilledBooks.Lot);
        await page.Locator("#pieces").FillAsync("1");
        await page.Locator("#to").FillAsync("Fairport market");
        await page.Locator("#paid").FillAsync("7.00");
        await page.Locator("#paid").PressAsync("Enter");
        await page.ClickAsync("#undo-booking");
        await Assertions.Expect(page.GetByText("Undone, and struck in the books")).ToBeVisibleAsync();
        var snapshot = Read(window);
        Assert.DoesNotContain(snapshot.Sales, s => s is { To: "Fairport market", Pieces: 1 });
        Assert.Contains(snapshot.AllSales, s => s is { To: "Fairport market", Pieces: 1 });
        Assert.Equal("Undone at once", snapshot.Corrections[^1].Reason);
    }

    [Fact]
    public async Task A_batch_begun_by_mistake_is_undone_where_it_leads_to()
    {
        await using var window = await Filled();
        await window.GoAsync("/batches");
        await window.Page.Locator("button[type=submit].chief").ClickAsync();
        await Assertions.Expect(window.Page).ToHaveURLAsync(new Regex("/batches/."));
        var before = Read(window).Batches.Count;
        await window.Page.ClickAsync("#undo-booking");
        await Window.UntilAsync(() => Read(window).Batches.Count == before - 1, "the batch is struck");
    }

    private static ReckonedBooks Read(Window window) => OpenBooks.Open(window.Folder).Read();

    private async Task<Window> Filled()
    {
        var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        return window;
    }
}
