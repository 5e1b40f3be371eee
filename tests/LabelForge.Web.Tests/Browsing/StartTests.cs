using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>An empty folder asks four things, shows a label after two, and writes nothing before there is enough.</summary>
public sealed class StartTests(Chromium chromium)
{
    [Fact]
    public async Task A_label_is_drawn_after_two_answers_and_says_what_it_waits_for()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await Assertions.Expect(page.GetByText("Your label appears here")).ToBeVisibleAsync();
        await page.FillAsync("#shop", "Thistlepond Bench");
        await page.ClickAsync("#good-white-base");
        await Assertions.Expect(page.GetByAltText("The label of White bar, as far as it is answered for")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByText("Your first label, from two answers.")).ToBeVisibleAsync();
        Assert.False(File.Exists(Path.Combine(window.Folder, "workshop.yaml")));
        Assert.False(Directory.Exists(Path.Combine(window.Folder, "materials")));
    }

    [Fact]
    public async Task What_was_answered_is_there_after_a_reload()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.FillAsync("#shop", "Thistlepond Bench");
        await page.ClickAsync("#good-shea-base");
        await page.FillAsync("#amount-shea-base", "½ lb");
        await Assertions.Expect(page.Locator("#amount-shea-base-hint")).ToHaveTextAsync("understood: 226.8 g");
        await Window.UntilAsync(() => File.Exists(Path.Combine(window.Folder, ".drafts/typed.json"))
            && window.File(".drafts/typed.json").Contains("0.5 lb", StringComparison.Ordinal), "the answers are kept");
        await window.GoAsync("/");
        await Assertions.Expect(page.Locator("#shop")).ToHaveValueAsync("Thistlepond Bench");
        await Assertions.Expect(page.Locator("#good-shea-base")).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(page.Locator("#amount-shea-base")).ToHaveValueAsync("0.5 lb");
    }

    [Fact]
    public async Task What_is_wrong_is_told_at_its_field_and_the_focus_goes_to_what_is_missing()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.ClickAsync("#print-first");
        await Assertions.Expect(page.Locator("#shop")).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator("#shop-wrong")).ToHaveTextAsync("Write the name that you trade under.");
        await page.FillAsync("#contact", "bench@thistlepond");
        await page.PressAsync("#contact", "Tab");
        await Assertions.Expect(page.Locator("#contact-wrong")).ToContainTextAsync("bench@thistlepond.example");
        await page.FillAsync("#address", "14 Sample Mill Road\nLower Wendle ME 00000");
        await Assertions.Expect(page.Locator("#address-hint"))
            .ToHaveTextAsync("understood: 14 Sample Mill Road · Lower Wendle · Maine · 00000 · United States");
        await page.FillAsync("#scents", "Moss Wall, oakmoss fragrance, glowing");
        await page.PressAsync("#scents", "Tab");
        await Assertions.Expect(page.Locator("#scents-wrong")).ToContainTextAsync("What colour is \"glowing\"?");
        await page.FillAsync("#amount-fragrance", "1,5");
        await page.PressAsync("#amount-fragrance", "Tab");
        await Assertions.Expect(page.Locator("#amount-fragrance-wrong")).ToHaveTextAsync("1.5 of what?");
        await page.GetByRole(AriaRole.Button, new() { Name = "1.5 % of batch" }).ClickAsync();
        await Assertions.Expect(page.Locator("#amount-fragrance")).ToHaveValueAsync("1.5 % of batch");
    }

    // The field that is left by the press says what is wrong with it, and the button goes down before it is let go.
    [Fact]
    public async Task A_button_that_moves_while_it_is_held_down_is_pressed()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.ClickAsync("#good-white-base");
        await page.FillAsync("#amount-white-base", "1.5");
        var button = page.GetByRole(AriaRole.Button, new() { Name = "1.5 lb" });
        await button.HoverAsync();
        var before = (await button.BoundingBoxAsync())!;
        await page.Mouse.DownAsync();
        await Assertions.Expect(page.Locator("#amount-white-base-wrong")).ToBeVisibleAsync();
        var after = (await button.BoundingBoxAsync())!;
        Assert.True(after.Y - before.Y > before.Height / 2, "The button moves away from under the press, or this proves nothing.");
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("#amount-white-base")).ToHaveValueAsync("1.5 lb");
        Assert.Empty(window.Complaints);
    }

    // A press that is thought better of: held, moved off, let go.
    [Fact]
    public async Task A_press_that_is_moved_off_its_button_is_none()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.Locator("#good-white-base").HoverAsync();
        await page.Mouse.DownAsync();
        await page.Locator("h1").HoverAsync();
        await page.Mouse.UpAsync();
        await page.ClickAsync("#good-shea-base");
        await Assertions.Expect(page.Locator("#good-shea-base")).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(page.Locator("#good-white-base")).ToHaveAttributeAsync("aria-pressed", "false");
    }

    [Fact]
    public async Task A_list_of_ours_says_so_until_the_wrapper_was_compared()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.FillAsync("#shop", "Thistlepond Bench");
        await page.FillAsync("#address", "14 Sample Mill Road\nLower Wendle ME 00000");
        await page.FillAsync("#contact", "555-0127");
        await page.ClickAsync("#good-clear-base");
        await page.FillAsync("#amount-clear-base", "900 g");
        await page.FillAsync("#pieces", "8");
        await page.FillAsync("#net", "100 g");
        await page.ClickAsync("#print-first");
        await Assertions.Expect(page.Locator("h1")).ToHaveTextAsync("Print Clear bar");
        await page.Locator(".unconfirmed a").ClickAsync();
        await Assertions.Expect(page.Locator("#confirm-title")).ToBeVisibleAsync();
        await page.ClickAsync("#confirm-same");
        await Window.UntilAsync(() => window.File("materials/clear-base.yaml") is var now
            && !now.Contains("to confirm", StringComparison.Ordinal) && now.Contains("listed: label", StringComparison.Ordinal),
            "the file says that it was compared");
        await window.GoAsync("/recipes/clear-bar");
        await Assertions.Expect(page.Locator("#can-print")).ToContainTextAsync("You can print.");
        await Assertions.Expect(page.Locator(".unconfirmed")).ToHaveCountAsync(0);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Light_dark_and_language_are_chosen_and_stay()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/business");
        await page.SelectOptionAsync("#scheme", "dark");
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-scheme", "dark");
        Assert.Equal("rgb(26, 23, 19)", await page.EvaluateAsync<string>("() => getComputedStyle(document.body).backgroundColor"));
        await page.SelectOptionAsync("#language", "fr");
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "fr");
        await Assertions.Expect(page.Locator(".foot")).ToContainTextAsync("Sur cette machine seulement");
        await window.GoAsync("/recipes");
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("data-scheme", "dark");
        Assert.Empty(window.Complaints);
    }
}
