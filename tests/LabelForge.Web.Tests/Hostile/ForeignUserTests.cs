using System.Net;
using LabelForge.Web.Serving;

namespace LabelForge.Web.Tests.Hostile;

/// <summary>Someone else who may log in to the machine finds the port, and cannot read or drive the page.</summary>
public sealed class ForeignUserTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-web-").FullName;
    private readonly HttpClient _other = new(new SocketsHttpHandler { UseCookies = false, AllowAutoRedirect = false });
    private PageServer _page = null!;

    public async ValueTask InitializeAsync() => _page = await PageServer.StartAsync(new ServeOptions(_folder, 0));

    public async ValueTask DisposeAsync()
    {
        _other.Dispose();
        await _page.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    [Theory]
    [InlineData("")]
    [InlineData("recipes")]
    [InlineData("assets/page.css")]
    [InlineData("_framework/blazor.web.js")]
    [InlineData("papers/00000000000000000000000000000000/label.svg")]
    [InlineData("open/")]
    [InlineData("open/0000000000000000000000000000000000000000000000000")]
    public async Task Without_the_address_that_was_shown_nothing_is_answered(string path)
    {
        using var answer = await _other.GetAsync(new Uri(_page.Address, path));
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.False(answer.Headers.Contains("Set-Cookie"));
        Assert.DoesNotContain("<html", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_socket_that_drives_the_page_needs_the_cookie_too()
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(_page.Address, "_blazor/negotiate?negotiateVersion=1"));
        request.Headers.Add("Origin", _page.Address.GetLeftPart(UriPartial.Authority));
        using var answer = await _other.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task The_first_visit_gives_a_cookie_that_goes_to_this_page_alone_and_no_script_can_read()
    {
        using var entered = await _other.GetAsync(_page.Entrance);
        var cookie = Assert.Single(entered.Headers.GetValues("Set-Cookie"));
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("expires", cookie, StringComparison.OrdinalIgnoreCase);
        // The key of the address is not what is in the cookie: reading one does not give the other.
        Assert.DoesNotContain(_page.Entrance.Segments[^1], cookie, StringComparison.Ordinal);
        using var request = new HttpRequestMessage(HttpMethod.Get, _page.Address);
        request.Headers.Add("Cookie", cookie.Split(';')[0]);
        using var answer = await _other.SendAsync(request);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task The_address_a_browser_is_started_with_opens_once()
    {
        var once = _page.EntranceOnce();
        Assert.NotEqual(_page.Entrance, once);
        Assert.Equal(HttpStatusCode.OK, (await _other.GetAsync(once)).StatusCode);
        Assert.Equal(HttpStatusCode.Forbidden, (await _other.GetAsync(once)).StatusCode);
        Assert.Equal(HttpStatusCode.OK, (await _other.GetAsync(_page.Entrance)).StatusCode);
    }

    [Fact]
    public void The_address_written_down_for_a_second_program_is_its_owners_to_read()
    {
        if (OperatingSystem.IsWindows())
            return;
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite,
            File.GetUnixFileMode(Path.Combine(_folder, WorkshopLock.FileName + "-address")));
    }
}
