using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace LabelForge.Benchmarks.Page;

/// <summary>How long a page takes from the server's first byte to a screen that can be read and used, in a real browser.</summary>
/// <remarks>
/// The browser itself takes the time, from the document's <c>responseStart</c> (Navigation Timing, Level 2) to the frame after the page's
/// heading and its labels are there and each picture in view is decoded. A new window has nothing of the page yet;
/// the same window has script, style and
/// letters by then, as on every opening but the first.
/// </remarks>
internal static class FirstScreenMeasure
{
    private const int Counted = 15;

    // Each page with the labels that it is looked at for.
    private static readonly (string Path, string Labels)[] Pages =
    [
        ("", ".thumb img"), ("recipes", ".thumb img"), ("recipes/harbour-wall-bar", ".pictures img"),
        ("print/harbour-wall-bar", ".pictures img"), ("market", "h1"),
    ];

    private const string Seen = """
        async labels => {
          const shown = () => document.querySelector('h1') && document.querySelector(labels) && [...document.images].every(i => i.complete || i.getBoundingClientRect().top > innerHeight);
          while (!shown()) await new Promise(r => requestAnimationFrame(r));
          await new Promise(r => requestAnimationFrame(r));
          const end = performance.now(), way = performance.getEntriesByType('navigation')[0];
          const script = performance.getEntriesByType('resource').find(r => r.name.includes('blazor.web'));
          return [end - way.responseStart, script.responseEnd - way.responseStart];
        }
        """;

    /// <summary>Milliseconds for each page, in a new window and in one that has been there, as a table for the documentation.</summary>
    public static async Task<string> Table()
    {
        await using var served = await ServedExample.StartAsync();
        var text =
            new StringBuilder(
                "| page | a new window: half within | 95 of 100 within | of this until the script is there | the same window: half within "
                    + "| 95 of 100 within |\n| --- | ---: | ---: | ---: | ---: | ---: |\n");
        // The program's own first steps are not the page's: the first opening of each page is not counted.
        foreach (var page in Pages)
            _ = await NewWindow(served, page);
        foreach (var page in Pages)
        {
            var (fresh, script, again) = (new List<double>(), new List<double>(), new List<double>());
            for (var i = 0; i < Counted; i++)
            {
                var times = await NewWindow(served, page);
                fresh.Add(times.First[0]);
                script.Add(times.First[1]);
                again.Add(times.Second[0]);
            }
            text.Append(CultureInfo.InvariantCulture,
                $"| /{page.Path} | {At(fresh, 50):0} ms | {At(fresh, 95):0} ms | {At(script, 50):0} ms | {At(again, 50):0} ms | {At(again, 95):0} ms |\n");
        }
        return text.ToString();
    }

    private static async Task<(double[] First, double[] Second)> NewWindow(ServedExample served, (string Path, string Labels) of)
    {
        await using var context = await served.NewContextAsync();
        var page = await context.NewPageAsync();
        var address = new Uri(served.Address, of.Path).ToString();
        return (await Open(page, address, of.Labels), await Open(page, address, of.Labels));
    }

    private static async Task<double[]> Open(IPage page, string address, string labels)
    {
        await page.GotoAsync("about:blank");
        await page.GotoAsync(address, new PageGotoOptions { WaitUntil = WaitUntilState.Commit });
        return await page.EvaluateAsync<double[]>(Seen, labels);
    }

    private static double At(List<double> times, int percent) =>
        times.Order().ElementAt(Math.Min(times.Count - 1, times.Count * percent / 100));
}
