namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Letters at twice their size, and a page no wider than 320 pixels: nothing is cut off and nothing has to be scrolled sideways for
/// (WCAG 2.2, success criteria 1.4.4 and 1.4.10). Tables and pictures that need two dimensions scroll by themselves.
/// </summary>
public sealed class LargeTextTests(Chromium chromium, PageWalk walk)
{
    [Theory]
    [InlineData(PageWalk.Seen.WideLarge)]
    [InlineData(PageWalk.Seen.NarrowLarge)]
    [InlineData(PageWalk.Seen.Narrowest)]
    public async Task No_word_is_lost_and_no_page_scrolls_sideways(PageWalk.Seen seen)
    {
        var found = await walk.FoundAsync(chromium, seen);
        Assert.True(found.Count == 0, string.Join('\n', found));
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_recipes_fields_show_the_whole_of_what_is_in_them(int width)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width);
        foreach (var recipe in Directory.GetFiles(Path.Combine(window.Folder, "recipes")).Select(f => Path.GetFileNameWithoutExtension(f)))
        {
            await window.GoAsync($"/recipes/{recipe}");
            await window.SettleAsync();
            Assert.Equal("", await window.Page.EvaluateAsync<string>(Overflow.Cut));
        }
    }

    // Where the header has more than one line, its own least height no longer keeps what is in it off the line below.
    [Theory]
    [InlineData(1280, 200)]
    [InlineData(800, 100)]
    [InlineData(390, 200)]
    public async Task The_way_to_find_stands_clear_of_the_headers_line(int width, int percent)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, width);
        await window.GoAsync("/");
        await window.Page.EvaluateAsync($"document.documentElement.style.fontSize = '{percent}%'");
        var room = await window.Page.EvaluateAsync<double>("""
            () => {
              const top = document.querySelector('.top');
              return top.getBoundingClientRect().top + top.clientHeight - document.querySelector('.find-link').getBoundingClientRect().bottom;
            }
            """);
        Assert.True(room > 3, $"{room} pixels are between the way to find and the line.");
    }
}
