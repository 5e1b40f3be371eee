using System.Diagnostics;
using System.Net;
using System.Net.Http.Json;
using System.Net.Sockets;
using System.Net.WebSockets;
using System.Text.Json;
using LabelForge.Web.Serving;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Every page in Firefox and in WebKit, as Debian packages them: it comes alive, no script fails, every picture is there, nothing runs
/// over the side, and a letter typed into a recipe comes into its file. What both speak is the W3C's: WebDriver BiDi and WebDriver.
/// </summary>
public sealed class OtherBrowsersTests
{
    // Waits until the page is drawn, and says what is wrong with it.
    private const string Look = $$"""
        (async () => {
          const until = performance.now() + 20000;
          while (performance.now() < until && !(document.querySelector('h1') && [...document.images].every(i => i.complete))) await new Promise(r => setTimeout(r, 50));
          if (location.pathname.match(/^.(labels|print).|^.recipes.(?!new)[^/]+$/)) while (performance.now() < until && !document.querySelector('.pictures img')) await new Promise(r => setTimeout(r, 50));
          const wrong = [];
          const cause = {{Overflow.Cause}};
          if (!document.querySelector('h1')) wrong.push('no heading');
          if (document.querySelector('dialog[open]')) wrong.push('lost touch');
          if (document.documentElement.scrollWidth > document.documentElement.clientWidth) wrong.push('runs over the side: ' + cause());
          // What waits until it comes into view is asked for now. One that is replaced while it is decoded is decoded anew.
          for (const i of document.images) {
            i.loading = 'eager';
            for (let tries = 0; i.isConnected && tries <= 30; tries++) {
              try { await i.decode(); break; } catch { if (tries === 30) wrong.push('no picture ' + i.src); else await new Promise(r => setTimeout(r, 100)); }
            }
          }
          return wrong.join('; ');
        })()
        """;

    private const string Type = """
        (async () => {
          const field = document.querySelector('#name');
          field.focus();
          field.value = 'Tideline by the sea';
          field.dispatchEvent(new Event('input', { bubbles: true }));
          const until = performance.now() + 20000;
          while (performance.now() < until && !document.querySelector('h1').textContent.includes('by the sea')) await new Promise(r => setTimeout(r, 50));
          return document.querySelector('h1').textContent;
        })()
        """;

    [Fact]
    public async Task Every_page_comes_alive_in_Firefox()
    {
        var program = InstalledProgram.Find("firefox-esr") ?? InstalledProgram.Find("firefox");
        Assert.SkipUnless(program is not null, "No Firefox is on this machine (Debian: apt install firefox-esr; or run build/test).");
        var profile = Directory.CreateTempSubdirectory("labelforge-firefox-").FullName;
        using var process = Start(program!,
            ["--headless", "--no-remote", "--profile", profile, "--remote-debugging-port", "0", "about:blank"],
            new() { ["HOME"] = profile, ["MOZ_REMOTE_ALLOW_SYSTEM_ACCESS"] = "0" });
        try
        {
            var listening = await Heard(process.StandardError, "WebDriver BiDi listening on ");
            await using var browser = await BiDi.ConnectAsync(new Uri(listening + "/session"));
            await EveryPage(browser.GoAsync, browser.SayAsync, browser.WidthAsync);
        }
        finally
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
            Directory.Delete(profile, recursive: true);
        }
    }

    [Fact]
    public async Task Every_page_comes_alive_in_WebKit()
    {
        const string browserProgram = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser";
        var (driver, screen) = (InstalledProgram.Find("WebKitWebDriver"), InstalledProgram.Find("Xvfb"));
        Assert.SkipUnless(driver is not null && screen is not null && File.Exists(browserProgram),
            "No WebKit with its driver is on this machine (Debian: apt install webkit2gtk-driver xvfb; or run build/test).");
        var port = FreePort();
        using var display = Start(screen!, ["-displayfd", "1", "-screen", "0", "1280x900x24"], []);
        var number = await display.StandardOutput.ReadLineAsync(TestContext.Current.CancellationToken);
        using var process = Start(driver!, [$"--port={port}"], new() { ["DISPLAY"] = ":" + number });
        try
        {
            using var session = await WebDriverSession.OpenAsync(port, browserProgram);
            await EveryPage(session.GoAsync, session.SayAsync, session.WidthAsync);
        }
        finally
        {
            process.Kill(entireProcessTree: true);
            display.Kill(entireProcessTree: true);
        }
    }

    private static async Task EveryPage(Func<string, Task> go, Func<string, Task<string>> say, Func<int, Task> width)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-page-").FullName;
        Window.WriteExample(folder);
        FilledBooks.Fill(folder);
        var found = new List<string>();
        await using (var server = await PageServer.StartAsync(new ServeOptions(folder, 0) { Today = () => new DateOnly(2026, 11, 25) }))
        {
            await go(server.Entrance.ToString());
            foreach (var route in Routes.All)
            {
                await go(new Uri(server.Address, route).ToString());
                if (await say(Look) is { Length: > 0 } wrong)
                    found.Add($"{route}: {wrong}");
            }
            Assert.True(found.Count == 0, string.Join('\n', found));
            await go(new Uri(server.Address, "/recipes/tideline-bar").ToString());
            Assert.Equal("", await say(Look));
            foreach (var pixels in new[] { 390, 1280 })
            {
                await width(pixels);
                Assert.Equal("", await say($"(async () => ({Overflow.Cut})())()"));
                Assert.Equal("", await say(Look));
            }
            Assert.Equal("Tideline by the sea", await say(Type));
            await Window.UntilAsync(() => File.ReadAllText(Path.Combine(folder, "recipes/tideline-bar.yaml"))
                .Contains("name: Tideline by the sea", StringComparison.Ordinal), "the file has the new name");
        }
        Directory.Delete(folder, recursive: true);
    }

    private static Process Start(string program, string[] words, Dictionary<string, string> environment)
    {
        var start = new ProcessStartInfo(program, words) { RedirectStandardError = true, RedirectStandardOutput = true };
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        return Process.Start(start)!;
    }

    // What the program says of itself, after some words; the rest is read too, so that it never waits for a reader.
    private static async Task<string> Heard(StreamReader from, string after)
    {
        while (await from.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60)) is { } line)
        {
            if (line.IndexOf(after, StringComparison.Ordinal) is >= 0 and var at)
            {
                _ = Task.Run(async () => { while (await from.ReadLineAsync() is not null) { } });
                return line[(at + after.Length)..].Trim();
            }
        }
        throw new InvalidOperationException("The browser ended before it listened.");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <summary>W3C WebDriver BiDi, as far as it is needed here.</summary>
    private sealed class BiDi(ClientWebSocket socket) : IAsyncDisposable
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

        public Task GoAsync(string address) =>
            Ask("browsingContext.navigate", new { context = _context, url = address, wait = "complete" });

        public async Task<string> SayAsync(string script)
        {
            var answer = await Ask("script.evaluate",
                new { expression = script, target = new { context = _context }, awaitPromise = true });
            return answer.GetProperty("type").GetString() == "success"
                ? answer.GetProperty("result").GetProperty("value").GetString() ?? ""
                : answer.GetProperty("exceptionDetails").GetProperty("text").GetString()!;
        }

        public Task WidthAsync(int pixels) =>
            Ask("browsingContext.setViewport", new { context = _context, viewport = new { width = pixels, height = 900 } });

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
    private sealed class WebDriverSession(HttpClient http, string session) : IDisposable
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

        public async Task GoAsync(string address) =>
            await Value(await http.PostAsJsonAsync($"session/{session}/url", new { url = address }));

        public async Task<string> SayAsync(string script) =>
            (await Value(await http.PostAsJsonAsync($"session/{session}/execute/async",
                new
                {
                    script = $"const done = arguments[arguments.length - 1]; ({script.Trim()}).then(done, e => done(String(e)));",
                    args = Array.Empty<object>()
                }))).GetString() ?? "";

        public async Task WidthAsync(int pixels) =>
            await Value(await http.PostAsJsonAsync($"session/{session}/window/rect", new { width = pixels, height = 900 }));

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
}
