using System.Reflection;
using LabelForge.Web;
using LabelForge.Web.Serving;
using Microsoft.Playwright;

namespace LabelForge.Benchmarks.Page;

/// <summary>The example workshop in a folder of its own, its page served by this program, and a browser.</summary>
internal sealed class ServedExample : IAsyncDisposable
{
    private readonly PageServer _server;
    private readonly IPlaywright _playwright;

    private ServedExample(string folder, PageServer server, IPlaywright playwright, IBrowser browser) =>
        (Folder, _server, _playwright, Browser) = (folder, server, playwright, browser);

    public string Folder { get; }

    public Uri Address => _server.Address;

    private IBrowser Browser { get; }

    /// <summary>A window of the browser that was let in.</summary>
    public async Task<IPage> NewPageAsync() => await (await NewContextAsync()).NewPageAsync();

    /// <summary>Windows of their own that were let in.</summary>
    public async Task<IBrowserContext> NewContextAsync()
    {
        var context = await Browser.NewContextAsync();
        await context.APIRequest.GetAsync(_server.Entrance.ToString());
        return context;
    }

    public static async Task<ServedExample> StartAsync()
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-served-").FullName;
        WriteExample(folder);
        var server = await PageServer.StartAsync(new ServeOptions(folder, 0));
        var playwright = await Playwright.CreateAsync();
        var browser = await playwright.Chromium
            .LaunchAsync(new BrowserTypeLaunchOptions
            {
                ExecutablePath = "/usr/bin/chromium",
                Args = ["--headless", "--no-sandbox", "--disable-gpu"],
            });
        return new ServedExample(folder, server, playwright, browser);
    }

    public async ValueTask DisposeAsync()
    {
        await Browser.DisposeAsync();
        _playwright.Dispose();
        await _server.DisposeAsync();
        Directory.Delete(Folder, recursive: true);
    }

    // The invented example that the command ships.
    private static void WriteExample(string folder)
    {
        var command = Assembly.Load("LabelForge.Cli");
        const string root = "example/";
        foreach (var name in command.GetManifestResourceNames().Where(n => n.StartsWith(root, StringComparison.Ordinal)))
        {
            var path = Path.Combine(folder, name[root.Length..].Replace('\\', '/'));
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            using var from = command.GetManifestResourceStream(name)!;
            using var to = File.Create(path);
            from.CopyTo(to);
        }
    }
}
