using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>axe (Deque) finds nothing in the states that pages have besides the usual one: empty,
/// wrong, not saved, in French, chosen dark.</summary>
public sealed class StateTests(Chromium chromium)
{
    [Fact]
    public async Task A_workshop_with_nothing_in_it_yet()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        await File.WriteAllTextAsync(Path.Combine(window.Folder, "workshop.yaml"), "business: Thistlepond Bench\n");
        var found = new List<string>();
        foreach (var route in Routes.All.Where(r => !r.Contains("/new", StringComparison.Ordinal) && r.Count(c => c == '/') < 2))
        {
            await window.GoAsync(route);
            found.AddRange(await Axe.Violations(window.Page, route));
        }
        Assert.True(found.Count == 0, string.Join("\n", found));
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_recipe_in_which_something_is_wrong()
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width: 390, scheme: ColorScheme.Dark);
        var page = window.Page;
        await window.GoAsync("/recipes/tideline-bar");
        await page.Locator(".pictures img").First.WaitForAsync();
        await page.FillAsync("#net", "9 oz");
        await page.GetByText("Not yet: a rule requires").First.WaitForAsync();
        var found = new List<string>(await Axe.Violations(page, "a must"));
        await page.Locator(".term-word").First.FocusAsync();
        found.AddRange(await Axe.Violations(page, "a word explained"));
        await page.FillAsync("#amount-0", "½");
        await page.GetByText("Not yet: something cannot be used.").First.WaitForAsync();
        found.AddRange(await Axe.Violations(page, "an amount that cannot be read"));
        await page.Locator(".label-bar summary").ClickAsync();
        found.AddRange(await Axe.Violations(page, "the label's bar open"));
        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    [Fact]
    public async Task A_start_that_is_half_answered_and_wrong()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await page.ClickAsync("#print-first");
        await page.FillAsync("#shop", "Thistlepond Bench");
        await page.ClickAsync("#good-white-base");
        await page.FillAsync("#contact", "bench@thistlepond");
        await page.PressAsync("#contact", "Tab");
        await page.FillAsync("#scents", "Moss, oak, green\nSea, salt, glowing");
        await page.PressAsync("#scents", "Tab");
        await page.FillAsync("#amount-white-base", "1,5");
        await page.PressAsync("#amount-white-base", "Tab");
        await page.GetByText("1.5 of what?").WaitForAsync();
        Assert.Empty(await Axe.Violations(page, "wrong answers"));
        await page.FillAsync("#scents", "Moss, oak, green\nSea, salt, blue");
        await page.Locator(".mat-plain img").WaitForAsync();
        Assert.Empty(await Axe.Violations(page, "a label"));
    }

    [Fact]
    public async Task A_file_that_cannot_be_read_and_a_workshop_in_French()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await File.WriteAllTextAsync(Path.Combine(window.Folder, "materials", "broken.yaml"), "kind: [\n");
        var page = window.Page;
        await window.GoAsync("/recipes");
        await page.Locator(".notice.must").First.WaitForAsync();
        var found = new List<string>(await Axe.Violations(page, "a broken file"));
        File.Delete(Path.Combine(window.Folder, "materials", "broken.yaml"));
        await window.GoAsync("/business");
        await page.SelectOptionAsync("#language", "fr");
        await Assertions.Expect(page.Locator("html")).ToHaveAttributeAsync("lang", "fr");
        foreach (var route in new[] { "/", "/recipes/tideline-bar", "/looks/tideline-bar", "/business" })
        {
            await window.GoAsync(route);
            await window.SettleAsync();
            found.AddRange(await Axe.Violations(page, $"{route} in French"));
        }
        Assert.True(found.Count == 0, string.Join("\n", found));
    }
}
