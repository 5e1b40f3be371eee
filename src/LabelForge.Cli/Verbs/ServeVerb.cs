using LabelForge.Cli.Handover;
using LabelForge.Web;
using LabelForge.Web.Serving;

namespace LabelForge.Cli.Verbs;

/// <summary><c>serve</c>: the same work as a page in the browser, on this machine alone.</summary>
internal static class ServeVerb
{
    public static Command Build()
    {
        var verb = new Verb("serve", "Opens the workshop as a page in the browser, on this machine alone");
        var port = verb.Option<int>("--port", "The port (default: one that is free)");
        var workshop = verb.Option<string?>("--workshop", "The workshop's folder (default: the current one); an empty one will do");
        var quiet = verb.Option<bool>("--no-browser", "Print the address, and open no browser");
        return verb.OpensPage(r => Run(r.GetValue(workshop) ?? Directory.GetCurrentDirectory(), r.GetValue(port), !r.GetValue(quiet))
            .GetAwaiter().GetResult());
    }

    private static async Task<int> Run(string folder, int port, bool browser)
    {
        if (port is < 0 or > 65535)
            throw new InputException("call.not-a-port", ("port", port));
        await using var page = await PageServer.StartAsync(new ServeOptions(folder, port)
        {
            WriteSample = into => ShippedWorkshop.Write(ShippedWorkshop.Example, into),
        });
        Console.WriteLine($"The workshop {Path.GetFullPath(folder)} is open at {page.Entrance}");
        Console.WriteLine("Only this machine can reach it, and only who has this address. Stop it with Ctrl-C.");
        if (browser)
            Browser.TryOpen(page.EntranceOnce());
        await page.Stopped;
        return Exit.Done;
    }
}
