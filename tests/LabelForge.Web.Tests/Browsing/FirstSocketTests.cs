using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A page comes to life through a socket. On a machine that is busy the first one may fail: the page tries again, and is never
/// left empty.</summary>
public sealed class FirstSocketTests(Chromium chromium)
{
    [Fact]
    public async Task A_page_whose_first_socket_is_closed_at_once_comes_to_life_after_all()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var tries = 0;
        await window.Page.RouteWebSocketAsync(url => url.Contains("/_blazor", StringComparison.Ordinal), socket =>
        {
            if (Interlocked.Increment(ref tries) == 1)
                _ = socket.CloseAsync();
            else
                socket.ConnectToServer();
        });
        await window.GoAsync("/recipes/tideline-bar");
        await window.Page.Locator(".pictures img").First.WaitForAsync();
        Assert.True(tries > 1, "The first socket was not closed, so nothing was tried.");
    }

    [Fact]
    public async Task A_page_that_the_program_does_not_answer_says_so()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.Page.RouteWebSocketAsync(url => url.Contains("/_blazor", StringComparison.Ordinal),
            socket => _ = socket.CloseAsync());
        await window.Page.GotoAsync(new Uri(window.Address, "/recipes").ToString());
        await window.Page.Locator("#components-reconnect-modal[data-state=gone]").WaitForAsync();
        await Assertions.Expect(window.Page.Locator("#lost-again")).ToBeVisibleAsync();
    }
}
