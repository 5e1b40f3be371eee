using System.Net.Http.Json;
using System.Net.WebSockets;
using System.Text.Json;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A browser that is no Chromium, as far as it is needed here.</summary>
internal abstract class OtherBrowser
{
    /// <summary>Opens an address.</summary>
    public abstract Task GoAsync(string address);

    /// <summary>What a script comes to, or why it does not.</summary>
    public abstract Task<string> SayAsync(string script);

    /// <summary>Makes the window so many pixels wide.</summary>
    public abstract Task WidthAsync(int pixels);

    /// <summary>Does something with the mouse, as both protocols describe it; its button stays down until it is let go.</summary>
    public abstract Task ActAsync(params object[] actions);

    /// <summary>Moves the mouse to a point of the window.</summary>
    public static object MoveTo(int x, int y) => new { type = "pointerMove", x, y };

    /// <summary>Presses its first button.</summary>
    public static object Down { get; } = new { type = "pointerDown", button = 0 };

    /// <summary>Lets it go.</summary>
    public static object Up { get; } = new { type = "pointerUp", button = 0 };

    /// <summary>What is done, with what it is done by.</summary>
    protected static object[] Pointer(object[] actions) =>
        [new { type = "pointer", id = "mouse", parameters = new { pointerType = "mouse" }, actions }];
}

/// <summary>W3C WebDriver BiDi, as far as it is needed here.</summary>
internal sealed class BiDi(ClientWebSocket socket) : OtherBrowser, IAsyncDisposable
{
    private int _last;
    private string _context = "";

    public static async Task<BiDi> ConnectAsync(Uri address)
    {
        var socket = new ClientWebSocket();
        await socket.ConnectAsync(address, TestContext.Current.CancellationToken);
        var browser = new BiDi(socket);
        await browser.Ask("session.new", new { capabilities = new { } });
        browser._context = (await browser.Ask("browsingContext.getTree", new { })).GetProperty("contexts")[0].GetProperty("context")
            .GetString()!;
        return browser;
    }

    public override Task GoAsync(string address) =>
        Ask("browsingContext.navigate", new { context = _context, url = address, wait = "complete" });

    public override async Task<string> SayAsync(string script)
    {
        var answer = await Ask("script.evaluate",
            new { expression = script, target = new { context = _context }, awaitPromise = true });
        return answer.GetProperty("type").GetString() == "success"
            ? answer.GetProperty("result").GetProperty("value").GetString() ?? ""
            : answer.GetProperty("exceptionDetails").GetProperty("text").GetString()!;
    }

    public override Task WidthAsync(int pixels) =>
        Ask("browsingContext.setViewport", new { context = _context, viewport = new { width = pixels, height = 900 } });

    public override Task ActAsync(params object[] actions) =>
        Ask("input.performActions", new { context = _context, actions = Pointer(actions) });

    public async ValueTask DisposeAsync()
    {
        await Ask("browser.close", new { });
        socket.Dispose();
    }

    private async Task<JsonElement> Ask(string method, object parameters)
    {
        var id = ++_last;
        await socket.SendAsync(JsonSerializer.SerializeToUtf8Bytes(new { id, method, @params = parameters }),
            WebSocketMessageType.Text, true, TestContext.Current.CancellationToken);
        while (true)
        {
            using var message = new MemoryStream();
            ValueWebSocketReceiveResult got;
            var part = new byte[16384];
            do
            {
                got = await socket.ReceiveAsync(part.AsMemory(), TestContext.Current.CancellationToken);
                message.Write(part, 0, got.Count);
            }
            while (!got.EndOfMessage);
            var said = JsonDocument.Parse(message.ToArray()).RootElement;
            if (!said.TryGetProperty("id", out var answered)
                || answered.ValueKind != JsonValueKind.Number
                || answered.GetInt32() != id)
                continue;
            return said.TryGetProperty("result", out var result)
                ? result
                : throw new InvalidOperationException($"{method}: {said.GetProperty("message").GetString()}");
        }
    }
}

/// <summary>W3C WebDriver, as far as it is needed here.</summary>
internal sealed class WebDriverSession(HttpClient http, string session) : OtherBrowser, IDisposable
{
    public static async Task<WebDriverSession> OpenAsync(int port, string browser)
    {
        var http = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}/"), Timeout = TimeSpan.FromMinutes(2) };
        for (var tries = 0; ; tries++)
        {
            try
            {
                var made =
                    await Value(await http.PostAsJsonAsync("session",
                        new
                        {
                            capabilities = new
                            {
                                alwaysMatch = new Dictionary<string, object>
                                {
                                    ["webkitgtk:browserOptions"] = new { binary = browser, args = new[] { "--automation" } },
                                }
                            }
                        }));
                return new WebDriverSession(http, made.GetProperty("sessionId").GetString()!);
            }
            catch (HttpRequestException) when (tries < 100)
            {
                // The driver does not listen yet.
                await Task.Delay(100);
            }
        }
    }

    public override async Task GoAsync(string address) =>
        await Value(await http.PostAsJsonAsync($"session/{session}/url", new { url = address }));

    public override async Task<string> SayAsync(string script) =>
        (await Value(await http.PostAsJsonAsync($"session/{session}/execute/async",
            new
            {
                script = $"const done = arguments[arguments.length - 1]; ({script.Trim()}).then(done, e => done(String(e)));",
                args = Array.Empty<object>()
            }))).GetString() ?? "";

    public override async Task WidthAsync(int pixels) =>
        await Value(await http.PostAsJsonAsync($"session/{session}/window/rect", new { width = pixels, height = 900 }));

    public override async Task ActAsync(params object[] actions) =>
        await Value(await http.PostAsJsonAsync($"session/{session}/actions", new { actions = Pointer(actions) }));

    public void Dispose()
    {
        http.Send(new HttpRequestMessage(HttpMethod.Delete, $"session/{session}")).Dispose();
        http.Dispose();
    }

    private static async Task<JsonElement> Value(HttpResponseMessage response)
    {
        var said = (await response.Content.ReadFromJsonAsync<JsonElement>()).GetProperty("value");
        return response.IsSuccessStatusCode ? said : throw new InvalidOperationException(said.ToString());
    }
}
