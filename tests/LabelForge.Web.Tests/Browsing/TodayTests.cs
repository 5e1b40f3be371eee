using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>The first screen says what to do now, and each product whether it can be printed.</summary>
public sealed class TodayTests(Chromium chromium)
{
    [Fact]
    public async Task What_waits_for_labels_stands_first_and_leads_to_its_own_lot_and_number()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        await window.GoAsync("/");
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Wednesday 25 November");
        await Assertions.Expect(page.Locator("#first")).ToContainTextAsync("wait for their labels");
        await Assertions.Expect(page.Locator(".open li").First).ToContainTextAsync("Report a serious complaint by");
        await Assertions.Expect(page.Locator(".fronts .thumb img").First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Print 6 labels of Hayloft" }).ClickAsync();
        await Assertions.Expect(page.Locator("#lot")).ToHaveValueAsync(FilledBooks.OpenLot);
        await Assertions.Expect(page.Locator("#count")).ToHaveValueAsync("6");
    }

    [Theory]
    [InlineData("/", ".thumb img")]
    [InlineData("/recipes/harbour-wall-bar", ".pictures img")]
    [InlineData("/labels/harbour-wall-bar", ".pictures img")]
    [InlineData("/print/harbour-wall-bar", ".pictures img")]
    public async Task A_page_that_is_opened_again_has_its_labels_with_its_first_drawing(string address, string label)
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync(address);
        await Assertions.Expect(window.Page.Locator(label).First).ToBeVisibleAsync();
        await window.Page.AddInitScriptAsync($$"""
            new MutationObserver((_, watch) => {
              if (!document.querySelector('h1')) return;
              watch.disconnect();
              window.first = document.querySelectorAll('{{label}}').length;
            }).observe(document, { subtree: true, childList: true });
            """);
        await window.Page.ReloadAsync();
        await Assertions.Expect(window.Page.Locator(label).First).ToBeVisibleAsync();
        Assert.NotEqual(0, await window.Page.EvaluateAsync<int>("window.first"));
    }

    [Fact]
    public async Task Many_materials_that_run_low_are_one_line_that_opens()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        string[] low = ["white-shea-base", "castor-oil", "bramble-fragrance", "moss-fragrance", "rain-fragrance"];
        var book = OpenBooks.Open(window.Folder);
        foreach (var material in low)
            StockMovements.Receive(book, new Receipt { On = new(2026, 11, 1), By = "A", Material = material, Amount = 1, Price = 1 });
        await window.GoAsync("/");
        var line = window.Page.Locator(".open li.stock");
        await Assertions.Expect(line).ToHaveCountAsync(1);
        await Assertions.Expect(line.Locator("h3")).ToHaveTextAsync("5 materials run low");
        await line.Locator("summary").ClickAsync();
        await Assertions.Expect(line.Locator("details li")).ToHaveCountAsync(5);
        await Assertions.Expect(line.Locator("details li").First).ToBeVisibleAsync();
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Without_books_it_says_what_comes_next()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/");
        await Assertions.Expect(window.Page.Locator("#first")).ToHaveTextAsync("Ready to pour");
        await Assertions.Expect(window.Page.Locator(".shelf .thumb img").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task Of_a_recipe_with_scents_it_is_said_which_can_be_printed_and_which_not()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var file = Path.Combine(window.Folder, "recipes", "meadow-bar.yaml");
        await File.WriteAllTextAsync(file,
            (await File.ReadAllTextAsync(file))
                .Replace("salt-meadow-fragrance: peach-fragrance",
                    "salt-meadow-fragrance: { use: peach-fragrance, amount: 30 % of batch }", StringComparison.Ordinal));
        await window.GoAsync("/recipes/meadow-bar");
        await Assertions.Expect(window.Page.Locator("#can-print")).ToHaveTextAsync("You can print 5 of 6. Not yet: Peach Morning.");
        await Assertions.Expect(window.Page.Locator(".musts li").First).ToContainTextAsync("Peach");
    }

    [Fact]
    public async Task A_product_says_whether_it_can_be_printed_and_has_the_message_that_makes_it_better()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.Context.GrantPermissionsAsync(["clipboard-read", "clipboard-write"]);
        var page = window.Page;
        await window.GoAsync("/recipes/tideline-bar");
        var line = page.Locator("#can-print");
        await Assertions.Expect(line).ToContainTextAsync("You can print. Better: ask Quarrelsome Heron Supply");
        await page.Locator(".messages summary").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Copy the message" }).First.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Copied" })).ToBeVisibleAsync();
        Assert.Contains("in percent by weight", await page.EvaluateAsync<string>("() => navigator.clipboard.readText()"),
            StringComparison.Ordinal);
        await page.FillAsync("#net", "9 oz");
        await Assertions.Expect(line).ToContainTextAsync("Not yet: a rule requires");
        await page.FillAsync("#net", "4 oz");
        await Assertions.Expect(line).ToContainTextAsync("You can print.");
        await page.FillAsync("#amount-0", "½");
        await Assertions.Expect(line).ToHaveTextAsync("Not yet: something cannot be used.");
    }
}
