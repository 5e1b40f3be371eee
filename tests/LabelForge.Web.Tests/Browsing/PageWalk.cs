using System.Text.RegularExpressions;
using LabelForge.Web.Wording;
using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(LabelForge.Web.Tests.Browsing.PageWalk))]

namespace LabelForge.Web.Tests.Browsing;

/// <summary>
/// Every page of a filled workshop, gone to once and looked at in every way: wide and light, narrow and dark, with letters twice as large,
/// on the narrowest screen, and with axe; then once more in French. Going there is what costs; the tests ask what was found.
/// </summary>
public sealed partial class PageWalk
{
    // A page that is longer is shown to here, as far as anyone looks at a picture in a text.
    private const int Tallest = 1600;

    // Words that a box cuts off: it hides what runs over, and something does. What is hidden from sight on purpose is left out.
    private const string CutOff = """
        () => [...document.querySelectorAll('main *, header *, footer *')].filter(e => {
          const style = getComputedStyle(e);
          if (e.closest('.unseen, svg, [hidden], dialog, textarea, pre, .scroll') || style.visibility === 'hidden' || e.getClientRects().length === 0) return false;
          if (style.clipPath !== 'none' || e.parentElement && getComputedStyle(e.parentElement).clipPath !== 'none') return false;
          const words = [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim());
          const cut = words && style.overflowX === 'hidden' && e.scrollWidth > e.clientWidth + 1 || words && style.overflowY === 'hidden' && e.scrollHeight > e.clientHeight + 1;
          const over = words && !e.closest('.tiles.scrolled') && e.getBoundingClientRect().right > document.documentElement.clientWidth + 1 && !e.closest('[tabindex="0"]');
          return cut || over;
        }).slice(0, 3).map(e => e.tagName + '.' + e.className + ' "' + e.textContent.trim().slice(0, 40) + '"')
        """;

    private static readonly HashSet<string> Groups = [.. WordBook.Of("en").Keys.Select(k => k.Split('.')[0])];

    private readonly Lock _gate = new();
    private Task<ILookup<Seen, string>>? _walk;

    /// <summary>How a page was looked at.</summary>
    public enum Seen
    {
        /// <summary>1280 pixels wide, light.</summary>
        Wide,

        /// <summary>390 pixels wide, dark.</summary>
        Narrow,

        /// <summary>1280 pixels wide, letters of twice their size.</summary>
        WideLarge,

        /// <summary>390 pixels wide, letters of twice their size.</summary>
        NarrowLarge,

        /// <summary>320 pixels wide.</summary>
        Narrowest,

        /// <summary>However wide: what the browser complained of.</summary>
        Complaint,

        /// <summary>In French, with the policy in force.</summary>
        French,
    }

    /// <summary>What was found wrong, page by page; the first who asks walks.</summary>
    public async Task<IReadOnlyList<string>> FoundAsync(Chromium chromium, Seen seen)
    {
        Task<ILookup<Seen, string>> walk;
        lock (_gate)
            walk = _walk ??= WalkAsync(chromium);
        return [.. (await walk)[seen]];
    }

    [GeneratedRegex(@"(?<![\w./-])[a-z][a-z-]*\.[A-Za-z][\w-]*")]
    private static partial Regex Key();

    private async Task<ILookup<Seen, string>> WalkAsync(Chromium chromium)
    {
        await using var window = await Window.OpenAsync(chromium, example: true, bypassPolicy: true);
        FilledBooks.Fill(window.Folder);
        var found = new List<(Seen Seen, string What)>();
        foreach (var route in Routes.All)
            await VisitAsync(window, route, found);
        found.AddRange(window.Complaints.Select(c => (Seen.Complaint, c)));
        await using var beside = await window.BesideAsync(chromium);
        found.AddRange((await InFrenchAsync(beside)).Select(w => (Seen.French, w)));
        return found.ToLookup(f => f.Seen, f => f.What);
    }

    // After all was seen in English: the language is the program's own. The labels are drawn by now, and no window knows the other's.
    private static async Task<IReadOnlyList<string>> InFrenchAsync(Window window)
    {
        var pot = FilledBooks.BeginPot(window.Folder);
        await English.LeaveAsync(window);
        var found = new List<string>();
        foreach (var route in (string[])[.. Routes.All, $"/pour?pot={pot}"])
        {
            await window.GoAsync(route);
            if (route == "/papers")
                await window.Page.SelectOptionAsync("#of-product", "lip-balm");
            await window.SettleAsync();
            found.AddRange(await English.OnAsync(window.Page, route));
        }
        return [.. found, .. window.Complaints];
    }

    private static async Task VisitAsync(Window window, string route, List<(Seen Seen, string What)> found)
    {
        var page = window.Page;
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await page.SetViewportSizeAsync(1280, 800);
        await window.GoAsync(route);
        await window.SettleAsync();
        // Small pictures of labels are drawn beside the page, and loaded when they come into view.
        await page.WaitForFunctionAsync("() => !document.querySelector('.no-thumb')");
        found.AddRange(Key().Matches(await page.Locator("body").InnerTextAsync()).Select(m => m.Value).Where(IsKey)
            .Select(k => (Seen.Wide, $"{route} shows the key \"{k}\" and not its words")));

        // Letters first, while the page is as it came.
        foreach (var (seen, width, percent) in
            new[] { (Seen.WideLarge, 1280, 200), (Seen.NarrowLarge, 390, 200), (Seen.Narrowest, 320, 100) })
        {
            await page.SetViewportSizeAsync(width, 800);
            await page.EvaluateAsync($"document.documentElement.style.fontSize = '{percent}%'");
            Assert.Equal($"{16 * percent / 100}px",
                await page.EvaluateAsync<string>("() => getComputedStyle(document.documentElement).fontSize"));
            found.AddRange((await SidewaysAsync(page)).Concat(await page.EvaluateAsync<string[]>(CutOff))
                .Select(w => (seen, $"{route}: {w}")));
        }
        await page.EvaluateAsync("document.documentElement.style.fontSize = ''");

        await MakeAlikeAsync(page);
        await PictureAsync(page, route, "wide", 1280, ColorScheme.Light, Seen.Wide, found);
        await PictureAsync(page, route, "narrow", 390, ColorScheme.Dark, Seen.Narrow, found);
        await page.EvaluateAsync("() => { for (const d of document.querySelectorAll('details')) d.open = true; }");
        await JudgeAsync(page, route, Seen.Narrow, found);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await page.SetViewportSizeAsync(1280, 800);
        await JudgeAsync(page, route, Seen.Wide, found);
    }

    private static async Task JudgeAsync(IPage page, string route, Seen seen, List<(Seen Seen, string What)> found) =>
        found.AddRange((await Axe.Violations(page, route)).Concat((await SidewaysAsync(page)).Select(w => $"{route}: {w}"))
            .Select(w => (seen, w)));

    private static async Task<string[]> SidewaysAsync(IPage page) =>
        await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth > document.documentElement.clientWidth")
            ? ["runs over the side: " + await page.EvaluateAsync<string>(Overflow.Cause)]
            : [];

    // What differs from one machine to the next, or from one minute to the next.
    private static async Task MakeAlikeAsync(IPage page)
    {
        // The type of files as text is the system's own; and so is the folder.
        await page.AddStyleTagAsync(new()
        {
            Content = ".as-text textarea, code, pre { font-family: 'Barlow Condensed' !important; } "
                + ".rooms, .two .watch > :first-child { position: static !important; }",
        });
        // When an entry was written is the machine's own time.
        await page.EvaluateAsync("""
            async () => {
              for (const e of document.querySelectorAll('code.path')) e.textContent = 'my-workshop';
              for (const e of document.querySelectorAll('td'))
                if (/^\d{4}-\d\d-\d\d \d\d:\d\d:\d\d/.test(e.textContent.trim()))
                  e.textContent = e.textContent.trim().replace(/^.{19}/, '2026-11-25 12:00:00');
              await document.fonts.ready;
            }
            """);
    }

    private static async Task PictureAsync(IPage page, string route, string way, int width, ColorScheme scheme, Seen seen,
        List<(Seen Seen, string What)> found)
    {
        await page.EmulateMediaAsync(new() { ColorScheme = scheme });
        await page.SetViewportSizeAsync(width, 800);
        var height = await page.EvaluateAsync<int>("() => document.documentElement.scrollHeight");
        await page.SetViewportSizeAsync(width, Math.Min(height, Tallest));
        await page.WaitForFunctionAsync("() => Array.from(document.images).every(i => i.complete)");
        var picture = await page.ScreenshotAsync(new() { Animations = ScreenshotAnimations.Disabled });
        await page.SetViewportSizeAsync(width, 800);
        if (Approved.Differs($"{Name(route)}-{way}", picture) is { } wrong)
            found.Add((seen, wrong));
    }

    // A key without words is shown as it is; names of files look alike.
    private static bool IsKey(string text) =>
        Groups.Contains(text.Split('.')[0])
            && !text.EndsWith(".yaml", StringComparison.Ordinal)
            && !text.EndsWith(".pdf", StringComparison.Ordinal);

    private static string Name(string route) => route == "/" ? "workshop" : route.Trim('/').Replace('/', '-').ToLowerInvariant();
}
