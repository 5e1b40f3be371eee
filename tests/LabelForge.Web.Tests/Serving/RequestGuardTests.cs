using System.Net;
using System.Net.Sockets;
using System.Text;
using LabelForge.Measures;
using LabelForge.Web.Serving;

namespace LabelForge.Web.Tests.Serving;

/// <summary>Only the page itself gets an answer. The requests are written by hand, as another page or program would send them.</summary>
public sealed class RequestGuardTests : IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-web-").FullName;
    private PageServer _page = null!;

    public async ValueTask InitializeAsync()
    {
        _page = await PageServer.StartAsync(new ServeOptions(_folder, 0));
        var entered = await Send($"GET {_page.Entrance.AbsolutePath} HTTP/1.1\r\nHost: {Host}\r\n");
        _cookie = entered.Split("Set-Cookie: ")[1].Split(';')[0];
    }

    public async ValueTask DisposeAsync()
    {
        await _page.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private string Host => $"127.0.0.1:{_page.Address.Port}";

    private string? _cookie;

    [Fact]
    public async Task The_page_answers_on_its_own_address() =>
        Assert.StartsWith("HTTP/1.1 200", await Send($"GET / HTTP/1.1\r\nHost: {Host}\r\n"), StringComparison.Ordinal);

    [Fact]
    public async Task Localhost_is_the_same_machine() =>
        Assert.StartsWith("HTTP/1.1 200", await Send($"GET / HTTP/1.1\r\nHost: localhost:{_page.Address.Port}\r\n"),
            StringComparison.Ordinal);

    [Theory]
    [InlineData("rebound.example")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    [InlineData("0.0.0.0:{0}")]
    [InlineData("127.0.0.1.rebound.example:{0}")]
    [InlineData("[::1]:{0}")]
    public async Task A_name_that_points_here_from_elsewhere_is_refused(string host)
    {
        var answer =
            await Send($"GET / HTTP/1.1\r\nHost: {host.Replace("{0}", _page.Address.Port.ToString(), StringComparison.Ordinal)}\r\n");
        Assert.StartsWith("HTTP/1.1 403", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("Blazor", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("http://rebound.example")]
    [InlineData("https://127.0.0.1:{0}")]
    [InlineData("http://localhost:{0}")]
    [InlineData("null")]
    public async Task A_socket_opened_by_another_page_is_refused(string origin)
    {
        var from = origin.Replace("{0}", _page.Address.Port.ToString(), StringComparison.Ordinal);
        var answer =
            await Send(
                $"GET /_blazor?id=x HTTP/1.1\r\nHost: {Host}\r\nOrigin: {from}\r\nConnection: Upgrade\r\nUpgrade: "
                    + $"websocket\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n");
        Assert.StartsWith("HTTP/1.1 403", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_socket_that_does_not_say_where_it_comes_from_is_refused() =>
        Assert.StartsWith("HTTP/1.1 403",
            await Send(
                $"GET /_blazor?id=x HTTP/1.1\r\nHost: {Host}\r\nConnection: Upgrade\r\nUpgrade: websocket\r\nSec-WebSocket-Version: "
                    + $"13\r\nSec-WebSocket-Key: AAAAAAAAAAAAAAAAAAAAAA==\r\n"), StringComparison.Ordinal);

    [Theory]
    [InlineData("/_blazor/negotiate?negotiateVersion=1")]
    [InlineData("/")]
    [InlineData("/recipes/new")]
    public async Task A_form_sent_by_another_page_is_refused(string path)
    {
        Assert.StartsWith("HTTP/1.1 403",
            await Send($"POST {path} HTTP/1.1\r\nHost: {Host}\r\nOrigin: http://elsewhere.example\r\nContent-Length: 0\r\n"),
            StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 403", await Send($"POST {path} HTTP/1.1\r\nHost: {Host}\r\nContent-Length: 0\r\n"),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_the_pages_token_is_refused_even_from_here()
    {
        const string body = "_handler=x";
        var answer =
            await Send(
                $"POST / HTTP/1.1\r\nHost: {Host}\r\nOrigin: http://{Host}\r\nContent-Type: "
                    + $"application/x-www-form-urlencoded\r\nContent-Length: {body.Length}\r\n", body);
        Assert.StartsWith("HTTP/1.1 400", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_other_page_is_ever_told_that_it_may_read()
    {
        var answer = await Send($"GET /assets/page.css HTTP/1.1\r\nHost: {Host}\r\nOrigin: http://{Host}\r\n");
        Assert.DoesNotContain("Access-Control-Allow", answer, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Cross-Origin-Resource-Policy: same-origin", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/assets/page.js")]
    [InlineData("/nothing/here")]
    public async Task Every_answer_forbids_scripts_and_styles_that_are_not_ours(string path)
    {
        var answer = await Send($"GET {path} HTTP/1.1\r\nHost: {Host}\r\n");
        Assert.Contains("Content-Security-Policy: default-src 'self'; script-src 'self'; style-src 'self';", answer,
            StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe", answer, StringComparison.Ordinal);
        Assert.Contains("X-Content-Type-Options: nosniff", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("<script>", answer, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/assets/..%2f..%2fworkshop.yaml")]
    [InlineData("/assets/../workshop.yaml")]
    [InlineData("/papers/x/..%2fworkshop.yaml")]
    public async Task Nothing_of_the_disk_is_served(string path) =>
        Assert.StartsWith("HTTP/1.1 404", await Send($"GET {path} HTTP/1.1\r\nHost: {Host}\r\n"), StringComparison.Ordinal);

    [Fact]
    public async Task A_second_page_on_the_workshop_is_refused_and_told_where_the_first_is()
    {
        var refused = await Assert.ThrowsAsync<InputException>(() => PageServer.StartAsync(new ServeOptions(_folder, 0)));
        Assert.Contains(_page.Entrance.ToString(), refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_killed_page_left_behind_stops_nobody()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-web-").FullName;
        await File.WriteAllTextAsync(Path.Combine(folder, WorkshopLock.FileName), "");
        await File.WriteAllTextAsync(Path.Combine(folder, WorkshopLock.FileName + "-address"), "http://127.0.0.1:1/");
        await using (await PageServer.StartAsync(new ServeOptions(folder, 0)))
            Assert.True(File.Exists(Path.Combine(folder, WorkshopLock.FileName)));
        Assert.False(File.Exists(Path.Combine(folder, WorkshopLock.FileName + "-address")));
        await using (await PageServer.StartAsync(new ServeOptions(folder, 0)))
            Assert.True(File.Exists(Path.Combine(folder, WorkshopLock.FileName + "-address")));
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task A_port_that_is_taken_is_named()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-web-").FullName;
        var refused = await Assert.ThrowsAsync<InputException>(() => PageServer.StartAsync(new ServeOptions(folder, _page.Address.Port)));
        Assert.Contains($"Port {_page.Address.Port} is taken", refused.Message, StringComparison.Ordinal);
        Directory.Delete(folder, recursive: true);
    }

    private async Task<string> Send(string head, string body = "")
    {
        if (_cookie is not null)
            head += $"Cookie: {_cookie}\r\n";
        using var socket = new TcpClient();
        await socket.ConnectAsync(IPAddress.Loopback, _page.Address.Port);
        var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII
            .GetBytes(head.Contains("Upgrade", StringComparison.Ordinal)
                ? $"{head}\r\n{body}"
                : $"{head}Connection: close\r\n\r\n{body}"));
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        var answer = new StringBuilder();
        var buffer = new byte[65536];
        int read;
        while ((read = await stream.ReadAsync(buffer, patience.Token)) > 0)
        {
            answer.Append(Encoding.UTF8.GetString(buffer, 0, read));
            if (head.Contains("Upgrade", StringComparison.Ordinal))
                break;
        }
        return answer.ToString();
    }
}
