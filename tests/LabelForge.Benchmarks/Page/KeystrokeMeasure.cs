using System.Globalization;
using System.Text;
using Microsoft.Playwright;

namespace LabelForge.Benchmarks.Page;

/// <summary>How long a keystroke in a recipe takes to the new picture of its label, in a real
/// browser on a page served as makers serve it.</summary>
/// <remarks>
/// The browser itself takes the time: from the field's change to the frame after the new picture is decoded. It includes the way to
/// the program and back, reading the recipe, composition, declaration, layout, checks, the picture and its drawing.
/// </remarks>
internal static class KeystrokeMeasure
{
    private const int WarmUp = 15;
    private const int Counted = 60;

    private const string TypedToSeen = """
        async text => {
          const field = document.querySelector('#identity');
          const picture = () => document.querySelector('.pictures img');
          const old = picture().src;
          const began = performance.now();
          field.value = text;
          field.dispatchEvent(new Event('input', { bubbles: true }));
          while (picture().src === old) {
            if (performance.now() - began > 10000) throw new Error(`${location.pathname}: no new picture of "${text}" in ten seconds`);
            await new Promise(r => requestAnimationFrame(r));
          }
          await picture().decode();
          await new Promise(r => requestAnimationFrame(r));
          return performance.now() - began;
        }
        """;

    /// <summary>Milliseconds from key to picture, in order of size, for each recipe of the example.</summary>
    public static async Task<IReadOnlyList<(string Recipe, double[] Milliseconds)>> Run(IReadOnlyList<string> recipes)
    {
        await using var served = await ServedExample.StartAsync();
        var page = await served.NewPageAsync();
        var measured = new List<(string, double[])>();
        foreach (var recipe in recipes)
        {
            await page.GotoAsync(new Uri(served.Address, $"recipes/{recipe}").ToString());
            await page.Locator(".pictures img").First.WaitForAsync();
            var times = new List<double>();
            for (var i = 0; i < WarmUp + Counted; i++)
            {
                var milliseconds = await page.EvaluateAsync<double>(TypedToSeen, $"Kind {i}");
                if (i >= WarmUp)
                    times.Add(milliseconds);
                // As a quick hand types: the save of the file comes in between.
                await Task.Delay(120);
            }
            measured.Add((recipe, [.. times.Order()]));
        }
        return measured;
    }

    /// <summary>The same as a table for the documentation.</summary>
    public static async Task<string> Table()
    {
        var text =
            new StringBuilder("| recipe | half of the keystrokes within | 95 of 100 within | slowest |\n| --- | ---: | ---: | ---: |\n");
        foreach (var (recipe, times) in await Run(Measured))
            text.Append(CultureInfo.InvariantCulture,
                $"| {recipe} | {times[times.Length / 2]:0} ms | {times[times.Length * 95 / 100]:0} ms | {times[^1]:0} ms |\n");
        return $"{text}\n{await Parts()}";
    }

    private static readonly string[] Measured = ["harbour-wall-bar", "bramble-bar", "sugar-scrub", "bath-salt"];

    private static async Task<string> Parts()
    {
        await using var served = await ServedExample.StartAsync();
        return $"Of this the program itself, half of the keystrokes, without the browser and the way to it; the whole way to the layout "
            + $"holds the parts before it but reading:\n\n{KeystrokeParts.Table(served.Folder, Measured)}";
    }
}
