using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A beginner is shown the way and can put it away; a made-up workshop cannot be mistaken for one's own.</summary>
public sealed class TourTests(Chromium chromium)
{
    [Fact]
    public async Task The_way_to_a_first_sheet_is_shown_until_it_is_put_away()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.GoAsync("/");
        await Assertions.Expect(window.Page.Locator("#tour")).ToBeVisibleAsync();
        await window.Page.ClickAsync("#tour-away");
        await Assertions.Expect(window.Page.Locator("#tour")).ToHaveCountAsync(0);
        await window.GoAsync("/recipes");
        await window.GoAsync("/");
        await Assertions.Expect(window.Page.Locator("#first")).ToBeVisibleAsync();
        await Assertions.Expect(window.Page.Locator("#tour")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Who_has_printed_needs_no_tour()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        await window.GoAsync("/");
        await Assertions.Expect(window.Page.Locator("#first")).ToBeVisibleAsync();
        await Assertions.Expect(window.Page.Locator("#tour")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task The_made_up_workshop_says_so_on_every_page_and_leaves_the_own_folder_empty()
    {
        await using var window = await Window.OpenAsync(chromium, example: false);
        await window.GoAsync("/");
        var sample = await window.Page.RunAndWaitForPopupAsync(() => window.Page.ClickAsync("#open-sample"));
        await Assertions.Expect(sample.Locator(".made-up")).ToContainTextAsync("Made-up workshop");
        await sample.GotoAsync(new Uri(new Uri(sample.Url), "/recipes").ToString());
        await Assertions.Expect(sample.Locator("h1")).ToBeVisibleAsync();
        await Assertions.Expect(sample.Locator(".made-up")).ToBeVisibleAsync();
        Assert.NotEqual(window.Address.Port, new Uri(sample.Url).Port);
        Assert.False(File.Exists(Path.Combine(window.Folder, "workshop.yaml")));
    }
}
