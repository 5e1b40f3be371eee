using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Stock, traces, the scale, money and labels from elsewhere, worked as a maker works them.</summary>
public sealed class BooksPagesTests(Chromium chromium)
{
    [Fact]
    public async Task A_bottle_that_came_in_gets_its_number_and_is_traced_from_it()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/stock/in");
        await page.Locator("#material").SelectOptionAsync("castor-oil");
        await page.Locator("#amount").FillAsync("16 fl oz");
        await page.Locator("#price").FillAsync("9.5x");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it into the books" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Write a plain figure with a decimal point");
        await page.Locator("#price").FillAsync("9.50");
        await page.GetByRole(AriaRole.Button, new() { Name = "Write it into the books" }).ClickAsync();
        await Assertions.Expect(page.GetByText("on the bottle.", new() { Exact = false }).First).ToContainTextAsync("Write M");
        var receipt = OpenBooks.Open(window.Folder).Read().Receipts[^1];
        Assert.Equal(("castor-oil", 9.50m), (receipt.Material, receipt.Price));
        await window.GoAsync($"/trace/M{receipt.Id}");
        await Assertions.Expect(page.GetByText("None has left the house.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_sale_of_more_than_there_is_is_refused_in_words()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/stock/out");
        await page.Locator("#sale-lot").SelectOptionAsync(FilledBooks.Lot);
        await page.Locator("#pieces").FillAsync("99");
        await page.Locator("#to").FillAsync("Fairport market");
        await page.Locator("#paid").FillAsync("10.00");
        await page.Locator("#paid").PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("less than nothing");
        Assert.DoesNotContain(OpenBooks.Open(window.Folder).Read().Sales, s => s.Pieces == 99);
    }

    [Fact]
    public async Task Weights_typed_one_after_the_other_are_judged_at_once()
    {
        await using var window = await Filled(380);
        var page = window.Page;
        await window.GoAsync("/weigh");
        await page.Locator("#list").FillAsync("");
        await page.Locator("#declared").FillAsync("113 g");
        foreach (var grams in new[] { "113.6", "114.0", "113.2" })
        {
            await page.Locator("#piece").FillAsync(grams);
            await page.Locator("#piece").PressAsync("Enter");
            await Assertions.Expect(page.Locator("#piece")).ToHaveValueAsync("");
            await Assertions.Expect(page.Locator("#piece")).ToBeFocusedAsync();
        }
        await Assertions.Expect(page.GetByText("The average passes.")).ToBeVisibleAsync();
        await page.Locator("#declared").FillAsync("120 g");
        await Assertions.Expect(page.GetByText("The average fails.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_cost_and_what_to_buy_are_reckoned()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync($"/costs?of={FilledBooks.Lot}");
        await Assertions.Expect(page.GetByText("paid for M1", new() { Exact = true }).First).ToBeVisibleAsync();
        await window.GoAsync("/costs/buy");
        await page.Locator("#want-tideline-bar").CheckAsync();
        await page.Locator("#pieces-tideline-bar").FillAsync("12");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find the cheapest packs" }).ClickAsync();
        await Assertions.Expect(page.GetByText("Makes 12 Tideline")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_dropped_file_is_checked_and_one_of_another_kind_is_refused()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/check");
        await page.Locator("#file")
            .SetInputFilesAsync(new FilePayload { Name = "label.pdf", MimeType = "application/pdf", Buffer = [1, 2, 0, 3] });
        await Assertions.Expect(page.GetByText("This is neither a PDF nor a text.")).ToBeVisibleAsync();
        await page.Locator("#file")
            .SetInputFilesAsync(new FilePayload
            {
                Name = "label.pdf",
                MimeType = "application/pdf",
                Buffer = "%PDF-1.7 and nothing more"u8.ToArray(),
            });
        await Assertions.Expect(page.GetByText("This PDF is broken", new() { Exact = false })).ToBeVisibleAsync();
        await page.Locator("#file")
            .SetInputFilesAsync(new FilePayload
            {
                Name = "label.txt",
                MimeType = "text/plain",
                Buffer = "Bramble Soap\nNet Wt 4 oz\n"u8.ToArray(),
            });
        await Assertions.Expect(page.Locator(".findings").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task What_a_finding_asks_of_a_label_is_answered_on_the_page_and_asked_again()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/check");
        await page.Locator("#words").FillAsync("Bubble bath\nNet 8 fl oz (236 mL)\nIngredients: Water, Glycerin, Decyl Glucoside.");
        var missing = page.GetByText("urinary tract", new() { Exact = false }).First;
        await Assertions.Expect(missing).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { NameRegex = new("adults.* Yes$") }).First.ClickAsync();
        await Assertions.Expect(missing).Not.ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask again" }).ClickAsync();
        await Assertions.Expect(missing).ToBeVisibleAsync();
        Assert.Empty(await Axe.Violations(page, "a finding that asks"));
    }

    [Fact]
    public async Task Several_files_are_checked_at_once_in_one_table_and_each_told_below()
    {
        await using var window = await Window.OpenAsync(chromium, example: true, 390);
        var page = window.Page;
        await window.GoAsync("/check");
        const string Right =
            "Bar soap\nNet Wt 4 oz (113 g)\nIngredients: Sodium Palmate, Water, Glycerin.\nExample Works, 12 Mill Road, Fairport, ME 04999\n"
                + "Lot 26R25-01E\n";
        await page.Locator("#file").SetInputFilesAsync(
        [
            new FilePayload { Name = "right.txt", MimeType = "text/plain", Buffer = System.Text.Encoding.UTF8.GetBytes(Right) },
            new FilePayload { Name = "wrong.txt", MimeType = "text/plain", Buffer = "Bramble Soap\nHeals eczema\nNet Wt 4 oz\n"u8.ToArray() },
            new FilePayload { Name = "broken.pdf", MimeType = "application/pdf", Buffer = "%PDF-1.7 and nothing more"u8.ToArray() },
        ]);
        var rows = page.Locator("tbody tr");
        await Assertions.Expect(rows).ToHaveCountAsync(3);
        await Assertions.Expect(rows.Nth(0)).ToContainTextAsync("Nothing found by these checks");
        await Assertions.Expect(rows.Nth(1)).ToContainTextAsync("Not yet: a rule requires more");
        await Assertions.Expect(rows.Nth(2)).ToContainTextAsync("Could not be read");
        await Assertions.Expect(page.Locator("#label-1 .findings").First).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("#label-2")).ToContainTextAsync("This PDF is broken");
        await rows.Nth(2).GetByRole(AriaRole.Link).ClickAsync();
        await Assertions.Expect(page.Locator("#label-2 h2")).ToBeInViewportAsync();
        Assert.Empty(await Axe.Violations(page, "several files checked"));
        // Too many are refused whole: those of before are not judged again under the refusal.
        await page.Locator("#file").SetInputFilesAsync(Enumerable.Range(1, 21)
            .Select(i => new FilePayload { Name = $"{i}.txt", MimeType = "text/plain", Buffer = "Bar soap"u8.ToArray() }));
        await Assertions.Expect(page.GetByText("These are 21 files at once.")).ToBeVisibleAsync();
        await page.Locator("#market").SelectOptionAsync("eu");
        await window.SettleAsync();
        await Assertions.Expect(rows).ToHaveCountAsync(0);
        await page.Locator("#words").FillAsync("Bar soap");
        await Assertions.Expect(page.Locator("#read")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_sale_is_corrected_and_the_old_entry_stays_struck()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/stock/books/sale");
        await page.Locator("#number").SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await page.Locator("#field").SelectOptionAsync("to");
        await page.Locator("#value").FillAsync("B. Reader");
        await page.Locator("#why").FillAsync("The name was wrong");
        await page.GetByRole(AriaRole.Button, new() { Name = "Correct it" }).ClickAsync();
        await Assertions.Expect(page.GetByText("stands instead.", new() { Exact = false })).ToBeVisibleAsync();
        Assert.Contains(OpenBooks.Open(window.Folder).Read().Sales, s => s.To == "B. Reader");
        await Assertions.Expect(page.Locator("tr.struck")).ToHaveCountAsync(2);
    }

    [Fact]
    public async Task Costs_are_written_down_in_fields_and_counted()
    {
        await using var window = await Filled();
        var page = window.Page;
        await window.GoAsync("/costs/figures");
        await page.Locator("#wage").FillAsync("twenty");
        await Assertions.Expect(page.GetByText("\"twenty\" is not a figure.", new() { Exact = false }).First).ToBeVisibleAsync();
        await page.Locator("#wage").FillAsync("24.00");
        await Window.UntilAsync(() => window.File("costs.yaml").Contains("wage: 24.00          # an hour", StringComparison.Ordinal),
            "the wage is in the file, its comment too");
    }

    [Fact]
    public async Task A_recall_sheet_is_made_from_a_trace()
    {
        await using var window = await Filled();
        await window.GoAsync($"/trace/M1");
        var opened = window.Page.Context.WaitForPageAsync();
        await window.Page.GetByRole(AriaRole.Button, new() { Name = "Open a recall sheet with letters" }).ClickAsync();
        var sheet = await opened;
        Assert.Matches("/papers/[0-9a-f]{32}/recall.pdf", sheet.Url);
        var bytes = await (await window.Page.APIRequest.GetAsync(sheet.Url)).BodyAsync();
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(bytes);
        Assert.Contains("Please stop using this product",
            string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/stock/in", "supplier", "Fen Supply")]
    [InlineData("/stock/complaints", "what", "It stung a little")]
    [InlineData("/weigh", "list", "113.4\n112.9")]
    [InlineData("/check", "words", "Bramble Soap\nNet Wt 4 oz (113 g)")]
    [InlineData("/weigh/dry", "days", "0, 120\n4, 117")]
    public async Task A_reload_keeps_what_was_typed(string route, string field, string typed)
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync(route);
        await window.Page.Locator($"#{field}").FillAsync(typed);
        await Window.UntilAsync(() => Typed(window.Folder, typed), "it is written down");
        await window.Page.ReloadAsync();
        await Assertions.Expect(window.Page.Locator($"#{field}")).ToHaveValueAsync(typed);
    }

    private static bool Typed(string folder, string typed)
    {
        var path = Path.Combine(folder, ".drafts", "typed.json");
        return File.Exists(path)
            && File.ReadAllText(path).Contains(System.Text.Json.JsonSerializer.Serialize(typed)[1..^1], StringComparison.Ordinal);
    }

    private async Task<Window> Filled(int width = 1280)
    {
        var window = await Window.OpenAsync(chromium, example: true, width);
        FilledBooks.Fill(window.Folder);
        return window;
    }
}
