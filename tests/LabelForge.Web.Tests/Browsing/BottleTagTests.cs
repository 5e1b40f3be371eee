using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A bottle has a label with its number: printed from the page, and scanned on it.</summary>
public sealed class BottleTagTests(Chromium chromium)
{
    [Fact]
    public async Task Labels_for_the_bottles_in_the_house_are_printed_from_the_page()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        await window.GoAsync("/stock");
        var paper = await window.Page.RunAndWaitForPopupAsync(() => window.Page.ClickAsync("#tags"));
        await Assertions.Expect(window.Page.Locator(".notice.well")).ToContainTextAsync("a code to scan");
        var answer = await window.Context.APIRequest.GetAsync(paper.Url);
        using var document = PdfDocument.Open(await answer.BodyAsync());
        var text = string.Join(' ', document.GetPages().Select(p => p.Text));
        var bottles = OpenBooks.Open(window.Folder).Ask(books => books.InStock().Select(s => books.Bottle(s.Receipt.Id)).ToArray());
        Assert.NotEmpty(bottles);
        Assert.All(bottles, bottle => Assert.Contains(bottle, text, StringComparison.Ordinal));
        Assert.Contains("Received 2026-10-26", text, StringComparison.Ordinal);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_bottles_number_scanned_at_the_bench_is_taken_from_and_elsewhere_leads_to_where_it_went()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        var workshop = Workshop.Open(window.Folder);
        var line = BatchFormula.Of(workshop, workshop.Recipe("hayloft-bar")).Lines[1].Material;
        var book = OpenBooks.Open(window.Folder);
        var bottle = StockMovements.Receive(book,
            new Receipt { On = new(2026, 11, 20), By = "test", Material = line.Id, Amount = 500, Price = 9 }).Id;
        await window.GoAsync($"/batches/{FilledBooks.OpenLot}");
        await page.Locator("#weighed").WaitForAsync();
        await ScannedAsync(page, $"M{bottle}", async () => await page.Locator("#from").InputValueAsync() == $"{bottle}");
        await Assertions.Expect(page.Locator("#now")).ToHaveTextAsync(line.Name);
        await page.FillAsync("#weighed", "5");
        await page.ClickAsync(".bench-buttons .chief");
        await Assertions.Expect(page.Locator(".notice.well, .slip").First).ToBeVisibleAsync();

        // A bottle of something that does not go in is not taken.
        var wrong = book.Ask(books => books.InStock()
            .First(s => s.Receipt.Material is var m
                && BatchFormula.Of(workshop, workshop.Recipe("hayloft-bar")).Lines.All(l => l.Material.Id != m)).Receipt);
        await ScannedAsync(page, $"M{wrong.Id}", async () => await page.Locator("main [role=alert]").CountAsync() > 0);
        await Assertions.Expect(page.Locator("main [role=alert]").First).ToContainTextAsync($"M{wrong.Id} holds {wrong.Material}");

        await window.GoAsync("/recipes");
        await page.Locator(".rooms a").First.WaitForAsync();
        await ScannedAsync(page, "M1", () => Task.FromResult(page.Url.EndsWith("/trace/M1", StringComparison.Ordinal)));
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync("M1");
        Assert.Empty(window.Complaints);
    }

    // A page that has just come may not listen yet: whoever scans and sees nothing scans again. The cursor is taken out of the
    // weight first, where a weighing puts it and where a scanner would type.
    private static async Task ScannedAsync(IPage page, string code, Func<Task<bool>> heard)
    {
        for (var again = 0; again < 30; again++)
        {
            await page.EvaluateAsync("() => document.activeElement?.blur()");
            await CameraTests.ScanAsync(page, code);
            for (var wait = 0; wait < 20; wait++)
            {
                if (await heard())
                    return;
                await page.WaitForTimeoutAsync(100);
            }
        }
        Assert.Fail($"{code} was scanned and not heard.");
    }
}
