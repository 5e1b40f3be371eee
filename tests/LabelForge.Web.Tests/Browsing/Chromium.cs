using System.Diagnostics;
using System.Reflection;
using LabelForge.Web.Serving;
using LabelForge.Web.Tests.Browsing;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(Chromium))]

namespace LabelForge.Web.Tests.Browsing;

/// <summary>One real browser for all tests: the machine's own Chromium, started once.</summary>
public sealed class Chromium : IAsyncLifetime
{
    // Debian's, Ubuntu's and others' names for the same browser.
    private static readonly string? Program = new[] { "chromium", "chromium-browser", "google-chrome", "google-chrome-stable" }
        .Select(InstalledProgram.Find).FirstOrDefault(p => p is not null);

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>The browser; the test is skipped where the machine has none.</summary>
    public IBrowser Browser
    {
        get
        {
            Assert.SkipUnless(_browser is not null,
                "No Chromium is on this machine to show the page in (Debian: apt install chromium; or run build/test).");
            return _browser!;
        }
    }

    public async ValueTask InitializeAsync()
    {
        if (Program is null)
            return;
        _playwright = await Playwright.CreateAsync();
        Assertions.SetDefaultExpectTimeout(60_000);
        _browser = await LaunchAsync();
    }

    /// <summary>A browser of its own, for what has to be said when it starts, as what its camera
    /// sees. The test is skipped where the machine has none.</summary>
    public async Task<IBrowser> AnotherAsync(params string[] more)
    {
        _ = Browser;
        return await LaunchAsync(more);
    }

    private Task<IBrowser> LaunchAsync(params string[] more) => _playwright!.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
    {
        ExecutablePath = Program,
        Args = ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--renderer-process-limit=4", .. more],
    });

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}

/// <summary>A workshop in a folder of its own, its page, and a browser's window on it that notes every complaint.</summary>
public sealed class Window : IAsyncDisposable
{
    private readonly PageServer _server;
    private readonly bool _isBeside;
    private readonly IBrowserContext _context;
    private readonly List<string> _complaints = [];

    private Window(PageServer server, bool isBeside, IBrowserContext context, IPage page, string folder) =>
        (_server, _isBeside, _context, Page, Folder) = (server, isBeside, context, page, folder);

    public IPage Page { get; }

    public IBrowserContext Context => _context;

    public string Folder { get; }

    public Uri Address => _server.Address;

    /// <summary>What the browser complained of: scripts that failed, what the policy stopped.</summary>
    public IReadOnlyList<string> Complaints => _complaints;

    public static async Task<Window> OpenAsync(Chromium chromium, bool example, int width = 1280, ColorScheme scheme = ColorScheme.Light,
        bool bypassPolicy = false, IBrowser? own = null)
    {
        // Before anything is made or started: where there is no browser, the test is skipped here.
        var browser = own ?? chromium.Browser;
        var folder = Directory.CreateTempSubdirectory("labelforge-page-").FullName;
        if (example)
            WriteExample(folder);
        var server = await PageServer.StartAsync(new ServeOptions(folder, 0)
        {
            Today = () => new DateOnly(2026, 11, 25),
            WriteSample = WriteExample,
        });
        return await OnAsync(browser, server, isBeside: false, folder, width, scheme, bypassPolicy);
    }

    /// <summary>Another browser's window on the same page, with the policy in force; the page goes on when it is closed.</summary>
    public Task<Window> BesideAsync(Chromium chromium) =>
        OnAsync(chromium.Browser, _server, isBeside: true, Folder, 1280, ColorScheme.Light, bypassPolicy: false);

    private static async Task<Window> OnAsync(IBrowser browser, PageServer server, bool isBeside, string folder, int width,
        ColorScheme scheme, bool bypassPolicy)
    {
        var context = await browser.NewContextAsync(new BrowserNewContextOptions
        {
            ViewportSize = new ViewportSize { Width = width, Height = 800 },
            ColorScheme = scheme,
            ReducedMotion = ReducedMotion.Reduce,
            BypassCSP = bypassPolicy,
        });
        // Long, and for every page of the window: all test programs share two cores, and what is waited for comes or does not.
        context.SetDefaultTimeout(180_000);
        await context.APIRequest.GetAsync(server.Entrance.ToString());
        var page = await context.NewPageAsync();
        var window = new Window(server, isBeside, context, page, folder);
        page.Console += (_, message) =>
        {
            if (message.Type == "error")
                window._complaints.Add(message.Text);
        };
        page.PageError += (_, error) => window._complaints.Add(error);
        return window;
    }

    /// <summary>Goes to a page and waits until it is live.</summary>
    public async Task GoAsync(string path)
    {
        await Page.GotoAsync(new Uri(Address, path).ToString());
        await Page.Locator("h1").WaitForAsync();
    }

    /// <summary>Waits until the page's pictures are there and nothing has moved for a moment.</summary>
    public async Task SettleAsync()
    {
        if (Page.Url.Contains("/labels/", StringComparison.Ordinal)
            || Page.Url.Contains("/print/", StringComparison.Ordinal)
            || System.Text.RegularExpressions.Regex.IsMatch(Page.Url, "/recipes/(?!new)[^/]+$"))
            await Page.Locator(".pictures img").First.WaitForAsync();
        if (Page.Url.Contains("/looks/", StringComparison.Ordinal))
        {
            await Page.Locator(".measured").WaitForAsync();
            await Page.WaitForFunctionAsync("() => !document.querySelector('.tiles .no-thumb') && document.querySelector('.range-strip')");
        }
        // A list that more comes into says so.
        await Page.WaitForFunctionAsync("() => !document.querySelector('[aria-busy=true]')");
        // What is loaded only when it comes into view is not waited for.
        await Page.WaitForFunctionAsync("() => Array.from(document.images).every(i => i.complete || i.loading === 'lazy')");
        await Page.EvaluateAsync("""
            () => new Promise(done => {
              let timer = setTimeout(stop, 400);
              const seen = new MutationObserver(() => { clearTimeout(timer); timer = setTimeout(stop, 400); });
              function stop() { seen.disconnect(); done(); }
              seen.observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
            })
            """);
    }

    /// <summary>The text of a file of the workshop.</summary>
    public string File(string path) => System.IO.File.ReadAllText(Path.Combine(Folder, path));

    /// <summary>Waits until something holds.</summary>
    public static async Task UntilAsync(Func<bool> holds, string what)
    {
        var since = Stopwatch.StartNew();
        while (!holds())
        {
            Assert.True(since.Elapsed < TimeSpan.FromSeconds(60), $"Waited in vain: {what}");
            await Task.Delay(25);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await TellLastAsync();
        await _context.DisposeAsync();
        if (_isBeside)
            return;
        await _server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }

    // What stood on the page last, beside a test that failed: nobody was there to look at it.
    private async Task TellLastAsync()
    {
        if (TestContext.Current.TestOutputHelper is not { } output || Page.IsClosed)
            return;
        try
        {
            var text = await Page.EvaluateAsync<string>(LastSeen).WaitAsync(TimeSpan.FromSeconds(5));
            output.WriteLine($"{Page.Url}\n{text}\n{string.Join('\n', _complaints)}");
        }
        catch (Exception e) when (e is PlaywrightException or TimeoutException)
        {
            output.WriteLine($"{Page.Url}: {e.Message}");
        }
    }

    private const string LastSeen = """
        () => [document.activeElement?.outerHTML.slice(0, 200), document.querySelector('dialog[open]')?.innerText, document.body.innerText]
            .filter(text => text).join('\n')
        """;

    // The invented example that the command ships.
    internal static void WriteExample(string folder)
    {
        var command = Assembly.Load("LabelForge.Cli");
        const string root = "example/";
        foreach (var name in command.GetManifestResourceNames().Where(n => n.StartsWith(root, StringComparison.Ordinal)))
        {
            var path = Path.Combine(folder, name[root.Length..].Replace('\\', '/'));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var from = command.GetManifestResourceStream(name)!;
            using var to = System.IO.File.Create(path);
            from.CopyTo(to);
        }
    }
}
