using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
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
            await EveryPage(browser);
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
            await EveryPage(session);
        }
        finally
        {
            process.Kill(entireProcessTree: true);
            display.Kill(entireProcessTree: true);
        }
    }

    private static async Task EveryPage(OtherBrowser browser)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-page-").FullName;
        Window.WriteExample(folder);
        FilledBooks.Fill(folder);
        var found = new List<string>();
        await using (var server = await PageServer.StartAsync(new ServeOptions(folder, 0) { Today = () => new DateOnly(2026, 11, 25) }))
        {
            await browser.GoAsync(server.Entrance.ToString());
            foreach (var route in Routes.All)
            {
                await browser.GoAsync(new Uri(server.Address, route).ToString());
                if (await browser.SayAsync(Look) is { Length: > 0 } wrong)
                    found.Add($"{route}: {wrong}");
            }
            Assert.True(found.Count == 0, string.Join('\n', found));
            await browser.GoAsync(new Uri(server.Address, "/recipes/tideline-bar").ToString());
            Assert.Equal("", await browser.SayAsync(Look));
            foreach (var pixels in new[] { 390, 1280 })
            {
                await browser.WidthAsync(pixels);
                Assert.Equal("", await browser.SayAsync($"(async () => ({Overflow.Cut})())()"));
                Assert.Equal("", await browser.SayAsync(Look));
            }
            await Presses(browser);
            Assert.Equal("Tideline by the sea", await browser.SayAsync(Type));
            await Window.UntilAsync(() => File.ReadAllText(Path.Combine(folder, "recipes/tideline-bar.yaml"))
                .Contains("name: Tideline by the sea", StringComparison.Ordinal), "the file has the new name");
        }
        Directory.Delete(folder, recursive: true);
    }

    // A page may move under a press: what was pressed and moved away is pressed all the same, and once; whoever moves off it calls the
    // press back.
    internal static async Task Presses(OtherBrowser browser)
    {
        const string place = """
            (async () => {
              const button = document.createElement('button');
              button.id = 'moving';
              button.style.cssText = 'position:fixed;z-index:99;left:100px;top:100px;width:80px;height:40px';
              button.addEventListener('click', () => { button.dataset.pressed = Number(button.dataset.pressed ?? 0) + 1; });
              button.append(document.createElement('span'));
              button.firstChild.style.cssText = 'display:block;width:100%;height:100%';
              document.body.append(button);
              return '';
            })()
            """;
        const string drawAnew = """
            (async () => {
              const on = document.getElementById('moving').firstChild;
              on.replaceWith(on.cloneNode());
              return '';
            })()
            """;
        static string Put(int top) => $"(async () => {{ document.getElementById('moving').style.top = '{top}px'; return ''; }})()";
        Task<string> Pressed() => browser.SayAsync(
            "(async () => { await new Promise(r => setTimeout(r, 50)); return document.getElementById('moving').dataset.pressed ?? '0'; })()");
        Assert.Equal("", await browser.SayAsync(place));
        await browser.ActAsync(OtherBrowser.MoveTo(140, 120), OtherBrowser.Down, OtherBrowser.Up);
        Assert.Equal("1", await Pressed());
        await browser.ActAsync(OtherBrowser.MoveTo(140, 120), OtherBrowser.Down);
        await browser.SayAsync(Put(300));
        await browser.ActAsync(OtherBrowser.Up);
        Assert.Equal("2", await Pressed());
        await browser.SayAsync(Put(100));
        await browser.ActAsync(OtherBrowser.MoveTo(140, 120), OtherBrowser.Down, OtherBrowser.MoveTo(140, 220), OtherBrowser.Up);
        Assert.Equal("2", await Pressed());
        await browser.ActAsync(OtherBrowser.MoveTo(140, 120), OtherBrowser.Down);
        await browser.SayAsync(drawAnew);
        await browser.ActAsync(OtherBrowser.Up);
        Assert.Equal("3", await Pressed());
        await browser.SayAsync("(async () => { document.getElementById('moving').remove(); return ''; })()");
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
}
