namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Every page, wide and light, narrow and dark: it looks as it did when somebody last looked at it, shows words and no keys, does not run
/// over the side, and axe (Deque) finds nothing on it, also where what was folded is open.
/// </summary>
public sealed class PictureTests(Chromium chromium, PageWalk walk)
{
    [Fact]
    public async Task Every_page_wide_and_light_is_as_approved() => Assert.Empty(await walk.FoundAsync(chromium, PageWalk.Seen.Wide));

    [Fact]
    public async Task Every_page_narrow_and_dark_is_as_approved() => Assert.Empty(await walk.FoundAsync(chromium, PageWalk.Seen.Narrow));

    [Fact]
    public async Task No_page_makes_the_browser_complain() => Assert.Empty(await walk.FoundAsync(chromium, PageWalk.Seen.Complaint));
}
