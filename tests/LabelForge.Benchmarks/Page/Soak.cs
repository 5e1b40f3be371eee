using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace LabelForge.Benchmarks.Page;

/// <summary>Works on the page for a long time as several people would, and watches the program's memory.</summary>
/// <remarks>
/// Three windows: one types in recipes, one goes from page to page and prints sheets, one opens windows and closes them without a
/// word, as browsers do. Memory is read after a full collection, so that what is seen to grow is held.
/// </remarks>
internal static class Soak
{
    private static readonly TimeSpan Pause = TimeSpan.FromSeconds(4);

    private static readonly string[] Rooms = ["", "materials", "materials/bramble-fragrance", "recipes", "recipes/bramble-bar",
        "labels/hayloft-bar", "batches", "stock", "stock/in", "stock/books", "trace", "weigh", "costs", "costs/buy", "check", "business"];

    /// <summary>Works for so long, and tells memory and work done ten times on the way.</summary>
    public static async Task<string> Table(TimeSpan length)
    {
        await using var served = await ServedExample.StartAsync();
        var (keys, pages, sheets, windows) = (0L, 0L, 0L, 0L);
        using var over = new CancellationTokenSource();
        var work = new[]
        {
            Repeat(over.Token, async () => keys += await Type(served)),
            Repeat(over.Token, async () => (pages, sheets) = (pages + Rooms.Length, sheets + await Walk(served))),
            Repeat(over.Token, async () => windows += await ComeAndGo(served)),
        };
        var text =
            new StringBuilder(
                "| minute | managed memory | the whole program | keystrokes | pages | sheets printed | windows come and gone |\n| ---: | "
                    + "---: | ---: | ---: | ---: | ---: | ---: |\n");
        var since = Stopwatch.StartNew();
        for (var i = 0; i <= 10; i++)
        {
            await Task.Delay(i == 0
                ? TimeSpan.FromSeconds(20)
                : TimeSpan.FromTicks(Math.Max(0, (length * i / 10).Ticks - since.Elapsed.Ticks)));
            GC.Collect(2, GCCollectionMode.Forced, blocking: true, compacting: true);
            using var process = Process.GetCurrentProcess();
            var row = string.Create(CultureInfo.InvariantCulture,
                $"| {since.Elapsed.TotalMinutes:0.0} | {GC.GetTotalMemory(false) / 1e6:0.0} MB | {process.WorkingSet64 / 1e6:0} MB | {keys} | {pages} | {sheets} | {windows} |");
            Console.Error.WriteLine(row);
            text.Append(row).Append('\n');
        }
        await over.CancelAsync();
        await Task.WhenAll(work);
        return text.ToString();
    }

    private static async Task Repeat(CancellationToken over, Func<Task> once)
    {
        while (!over.IsCancellationRequested)
        {
            await once();
            // People pause; and so does a test that shares its machine.
            await Task.Delay(Pause);
        }
    }

    private static async Task<long> Type(ServedExample served)
    {
        var page = await served.NewPageAsync();
        await page.GotoAsync(new Uri(served.Address, "recipes/tideline-bar").ToString());
        await page.Locator(".pictures img").First.WaitForAsync();
        const string name = "Tideline by the sea";
        for (var i = 1; i <= name.Length; i++)
        {
            await page.FillAsync("#name", name[..i]);
            await Task.Delay(150);
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await page.Context.CloseAsync();
        return name.Length;
    }

    private static async Task<long> Walk(ServedExample served)
    {
        var page = await served.NewPageAsync();
        foreach (var room in Rooms)
        {
            await page.GotoAsync(new Uri(served.Address, room).ToString());
            await page.Locator("h1").WaitForAsync();
            await Task.Delay(300);
        }
        await page.GotoAsync(new Uri(served.Address, "print/bramble-bar").ToString());
        await page.FillAsync("#count", "30");
        await page.GetByText("30 labels on", new() { Exact = false }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the sheets" }).ClickAsync();
        await page.Locator("#sheets").WaitForAsync();
        await page.Context.CloseAsync();
        return 3;
    }

    // Closed from outside, so that the page is not told.
    private static async Task<long> ComeAndGo(ServedExample served)
    {
        await using var context = await served.NewContextAsync();
        var page = await context.NewPageAsync();
        await page.GotoAsync(new Uri(served.Address, "labels/bramble-bar").ToString());
        await page.Locator(".pictures img").First.WaitForAsync();
        await context.SetOfflineAsync(true);
        await Task.Delay(1000);
        return 1;
    }
}
