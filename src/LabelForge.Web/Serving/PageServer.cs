using System.Net;
using LabelForge.Records.Books;
using LabelForge.Web.Components;
using LabelForge.Web.Editing;
using LabelForge.Web.Wording;
using LabelForge.Web.Workbench;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace LabelForge.Web.Serving;

/// <summary>The page of one workshop, served to this machine alone.</summary>
public sealed class PageServer : IAsyncDisposable
{
    private readonly WebApplication _app;
    private readonly WorkshopLock _held;

    private PageServer(WebApplication app, WorkshopLock held, Uri address) => (_app, _held, Address) = (app, held, address);

    /// <summary>Where the page is: <c>http://127.0.0.1:PORT/</c>. It answers only those who came through <see cref="Entrance"/>.</summary>
    public Uri Address { get; }

    /// <summary>The address to show to the person at this machine: it holds the key.</summary>
    public Uri Entrance => _app.Services.GetRequiredService<Door>().Entrance;

    /// <summary>An address that opens once, to start a browser with: others can read what a program is started with.</summary>
    public Uri EntranceOnce() => _app.Services.GetRequiredService<Door>().EntranceOnce();

    /// <summary>Starts serving.</summary>
    /// <exception cref="Measures.InputException">Another page is open on the workshop, the port
    /// is taken, or the folder cannot be written.</exception>
    public static Task<PageServer> StartAsync(ServeOptions options)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        return ServeAsync(options);
    }

    private static async Task<PageServer> ServeAsync(ServeOptions options)
    {
        var held = WorkshopLock.Take(options.Folder);
        try
        {
            var app = Build(options);
            await app.StartAsync();
            var bound = new Uri(app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.First());
            var address = new Uri($"http://127.0.0.1:{bound.Port}/");
            var door = app.Services.GetRequiredService<Door>();
            door.Port = bound.Port;
            held.Announce(door.Entrance);
            return new PageServer(app, held, address);
        }
        catch (Exception e)
        {
            held.Dispose();
            if (e is IOException)
                throw new Measures.InputException("call.port-taken", ("port", options.Port));
            throw;
        }
    }

    /// <summary>Waits until the page is stopped (Ctrl-C).</summary>
    public Task Stopped => _app.WaitForShutdownAsync();

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _app.Services.GetRequiredService<OpenDocuments>().SaveAllAsync();
        _app.Services.GetRequiredService<Stopping>().Begin();
        using (var soon = new CancellationTokenSource(TimeSpan.FromSeconds(2)))
            await _app.StopAsync(soon.Token);
        await _app.DisposeAsync();
        _held.Dispose();
    }

    private static WebApplication Build(ServeOptions options)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions
        {
            ApplicationName = typeof(PageServer).Assembly.GetName().Name,
            EnvironmentName = "Production",
            ContentRootPath = AppContext.BaseDirectory,
        });
        builder.Logging.ClearProviders();
        // What makers type is nobody's business: only the kind of trouble is logged, on standard error.
        builder.Logging.AddSimpleConsole(o => o.SingleLine = true)
            .AddFilter((category, level) => level >= LogLevel.Error
                && category?.StartsWith("Microsoft.Extensions.Hosting", StringComparison.Ordinal) != true);
        builder.Services
            .Configure<Microsoft.Extensions.Logging.Console.ConsoleLoggerOptions>(o => o.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.WebHost.ConfigureKestrel(k =>
        {
            k.Listen(IPAddress.Loopback, options.Port);
            k.AddServerHeader = false;
            k.Limits.MaxRequestBodySize = 1_000_000;
            k.Limits.MaxConcurrentConnections = 500;
        });
        // The keys live as long as the page is served; none is written to the disk.
        builder.Services.AddDataProtection().UseEphemeralDataProtectionProvider();
        // Cookies know no ports: the made-up workshop has its own beside the one that is worked in.
        builder.Services.AddAntiforgery(o => o.Cookie.Name = options.IsSample ? "labelforge-forms-made-up" : "labelforge-forms");
        builder.Services.AddRazorComponents().AddInteractiveServerComponents(o =>
        {
            // A closed lid finds its page again for a while. One person has a few windows; more would only hold memory.
            o.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(10);
            o.DisconnectedCircuitMaxRetained = 20;
        }).AddHubOptions(o =>
        {
            // Window and program are on one machine: a long silence means that it is busy, or its lid closed, not that the line broke.
            o.HandshakeTimeout = TimeSpan.FromMinutes(1);
            o.ClientTimeoutInterval = TimeSpan.FromMinutes(2);
        });
        AddParts(builder.Services, options);
        var app = builder.Build();
        app.UseMiddleware<PageHeaders>();
        app.UseMiddleware<RequestGuard>();
        app.UseStatusCodePagesWithReExecute("/not-found", createScopeForStatusCodePages: true);
        app.UseAntiforgery();
        Assets.Map(app);
        TemporaryDownloads.Map(app);
        Thumbs.Map(app);
        CodeReading.Map(app);
        app.MapRazorComponents<App>().AddInteractiveServerRenderMode(o => o.ContentSecurityFrameAncestorsPolicy = null);
        return app;
    }

    private static void AddParts(IServiceCollection services, ServeOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton<Door>();
        services.AddSingleton<Stopping>();
        services.AddSingleton<OpenDocuments>();
        services.AddSingleton<WorkshopCache>();
        services.AddSingleton<TemporaryDownloads>();
        services.AddSingleton<Choices>();
        services.AddSingleton<BooksCache>();
        services.AddSingleton<Kept>();
        services.AddSingleton<FormKeys>();
        services.AddSingleton<LabelViews>();
        services.AddSingleton<Thumbs>();
        services.AddSingleton<WorkshopQuestions>();
        services.AddSingleton<Preferences>();
        services.AddSingleton<Say>();
        services.AddSingleton<StartPictures>();
        services.AddSingleton<LookPictures>();
        services.AddSingleton<OrnamentTiles>();
        services.AddSingleton<SampleWorkshop>();
    }
}
