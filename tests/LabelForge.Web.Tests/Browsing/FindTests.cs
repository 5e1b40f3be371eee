using LabelForge.Lookup;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Anything is found by a few letters, from every page and without a mouse.</summary>
public sealed class FindTests(Chromium chromium)
{
    [Fact]
    public void Products_supplies_bottles_lots_buyers_and_complaints_are_found_by_a_few_letters()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-find-").FullName;
        try
        {
            Window.WriteExample(folder);
            FilledBooks.Fill(folder);
            var (workshop, snapshot) = (Workshop.Open(folder), OpenBooks.Open(folder).Read());
            Found[] In(string text) => [.. OpenBooks.Open(folder).Ask(books => new FindAnything(workshop, books).In(books, text))];
            FoundKind[] Kinds(string text) => [.. In(text).Select(f => f.Kind).Distinct()];
            Assert.Equal([FoundKind.Product, FoundKind.Material, FoundKind.Bottle, FoundKind.Lot], Kinds("bramble"));
            Assert.Equal(FilledBooks.Lot, In(FilledBooks.Lot.ToLowerInvariant())[0].Key);
            Assert.Equal("meadow-bar/Peach Morning", In("PEACH  morning").First(f => f.Kind == FoundKind.Product).Key);
            Assert.Contains(FoundKind.Buyer, Kinds(snapshot.Sales[0].To[..4]));
            Assert.Contains(FoundKind.Complaint, Kinds(snapshot.Complaints[0].From));
            Assert.Equal("Crème de karité",
                Assert.Single(FindAnything.In([new(FoundKind.Material, "karite", "Crème de karité", "")], "KARITE creme")).Title);
            Assert.Empty(Kinds("no such thing"));
            Assert.Empty(Kinds("  "));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task The_slash_key_finds_from_every_page_and_arrows_walk_through_what_was_found()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        await window.GoAsync("/business");
        await page.Keyboard.PressAsync("/");
        await Assertions.Expect(page.Locator("#find")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("tideline bar");
        await Assertions.Expect(page.Locator("#found-Product")).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(page.Locator(".find ul a").First).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("ArrowUp");
        await Assertions.Expect(page.Locator("#find")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Tideline");
        // In a field it is a slash, and the page takes the cursor from nobody who writes already.
        await page.Locator("#directions").FocusAsync();
        await page.Keyboard.PressAsync("Control+End");
        await page.Keyboard.TypeAsync(" and/or");
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains("and/or", StringComparison.Ordinal),
            "the slash is typed");
        Assert.DoesNotContain("find", page.Url, StringComparison.Ordinal);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_row_is_moved_by_keys_and_the_cursor_goes_with_it()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/tideline-bar");
        var (first, second) = (await page.InputValueAsync("#use-0"), await page.InputValueAsync("#use-1"));
        await page.Locator("#amount-0").FocusAsync();
        await page.Keyboard.PressAsync("Alt+ArrowDown");
        await Assertions.Expect(page.Locator("#use-1")).ToHaveValueAsync(first);
        await Assertions.Expect(page.Locator("#use-0")).ToHaveValueAsync(second);
        await Assertions.Expect(page.Locator("#amount-1")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Alt+ArrowUp");
        await Assertions.Expect(page.Locator("#use-0")).ToHaveValueAsync(first);
    }

    [Fact]
    public async Task Half_a_form_is_there_again_after_a_reload()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/materials/new");
        await page.FillAsync("#name", "Milk base");
        await page.FillAsync("#list", "Glycerin, Water");
        await window.GoAsync("/recipes/new");
        await page.FillAsync("#name", "River Stone");
        await page.FillAsync("#amount", "½ lb");
        await page.PressAsync("#amount", "Tab");
        await Assertions.Expect(page.Locator("#amount")).ToHaveValueAsync("0.5 lb");
        await Window.UntilAsync(() => File.Exists(Path.Combine(window.Folder, ".drafts/typed.json"))
            && window.File(".drafts/typed.json") is var typed
            && typed.Contains("Milk base", StringComparison.Ordinal)
            && typed.Contains("0.5 lb", StringComparison.Ordinal), "both are kept");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#name")).ToHaveValueAsync("River Stone");
        await window.GoAsync("/materials/new");
        await Assertions.Expect(page.Locator("#list")).ToHaveValueAsync("Glycerin, Water");
        await page.GetByText("2 names; all are known.").WaitForAsync();
    }

    [Fact]
    public async Task Country_and_currency_are_chosen_from_lists_and_an_e_mail_that_ends_too_soon_is_told_at_its_field()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/business");
        await page.SelectOptionAsync("#country", "CA");
        await page.SelectOptionAsync("#currency", "CAD");
        await Window.UntilAsync(() => window.File("workshop.yaml") is var now
            && now.Contains("country: CA", StringComparison.Ordinal)
            && now.Contains("currency: CAD", StringComparison.Ordinal), "both are in the file");
        await page.FillAsync("#email", "bench@thistlepond");
        await page.PressAsync("#email", "Tab");
        await Assertions.Expect(page.Locator("#email-wrong")).ToContainTextAsync("ends too soon");
        await page.FillAsync("#email", "bench@thistlepond.example");
        await Assertions.Expect(page.Locator("#email-wrong")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task On_a_narrow_page_a_tables_rows_are_cards_that_name_their_columns()
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width: 380);
        FilledBooks.Fill(window.Folder);
        await window.GoAsync("/stock/books/sale");
        var cell = window.Page.Locator("table.cards tbody td").First;
        Assert.NotEqual("none", await cell.EvaluateAsync<string>("c => getComputedStyle(c, '::before').content"));
        Assert.False(string.IsNullOrEmpty(await cell.GetAttributeAsync("data-label")));
        await Assertions.Expect(window.Page.GetByRole(AriaRole.Cell).First).ToBeVisibleAsync();
        Assert.True(await window.Page.EvaluateAsync<bool>("document.documentElement.scrollWidth <= document.documentElement.clientWidth"));
    }

    [Fact]
    public async Task A_word_of_the_law_is_explained_on_hover_on_focus_and_on_tap()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/tideline-bar");
        await page.FillAsync("#net", "9 oz");
        var term = page.Locator(".term-word", new() { HasText = "net quantity" }).First;
        await term.WaitForAsync();
        var means = page.Locator(".term-means", new() { HasText = "lowest part of the front" }).First;
        await Assertions.Expect(means).ToBeHiddenAsync();
        await term.HoverAsync();
        await Assertions.Expect(means).ToBeVisibleAsync();
        await page.Mouse.MoveAsync(0, 0);
        await term.ClickAsync();
        await page.Mouse.MoveAsync(0, 0);
        await Assertions.Expect(means).ToBeVisibleAsync();
        await page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(means).ToBeHiddenAsync();
    }
}
