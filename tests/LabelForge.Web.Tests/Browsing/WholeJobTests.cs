using System.Diagnostics;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>From an empty folder to a sheet whose barcode another program reads, without a mouse.</summary>
public sealed class WholeJobTests(Chromium chromium)
{
    [Fact]
    public async Task A_maker_without_a_mouse_goes_from_an_empty_folder_to_a_sheet_of_labels()
    {
        InstalledProgram.OrSkip("pdftoppm", "zbarimg");
        await using var window = await Window.OpenAsync(chromium, example: false);
        var page = window.Page;
        await window.GoAsync("/");
        await Type(page, "#shop", "Otterbank Soaps");
        await Type(page, "#address", "3 Sample Row, Exampleton, ME 00000");
        await Type(page, "#contact", "555-0171");
        await Press(page, "#shop-only");
        await Heading(page, "November");

        await Press(page, "a[href='/materials/new']");
        await Heading(page, "Add a material");
        await Type(page, "#name", "Plain glycerin base");
        await Type(page, "#list", "Ingredients: Glycerin 40%, Water (Aqua) 25%, Sorbitol 20%, Sodium Stearate 15%");
        await page.GetByText("all are known").WaitForAsync();
        await Press(page, "button.chief");
        await Heading(page, "Plain glycerin base");

        await Press(page, "a[href='/recipes']");
        await Heading(page, "Products");
        await Press(page, "a[href='/recipes/new']");
        await Heading(page, "Write a recipe");
        await Type(page, "#name", "River Stone");
        await Type(page, "#identity", "Glycerin bar soap");
        await Focus(page, "#material");
        await page.Keyboard.TypeAsync("Plain");
        await page.Keyboard.PressAsync("Enter");
        await Type(page, "#amount", "900 g");
        await Type(page, "#pieces", "8");
        await Press(page, "button.chief");
        await Heading(page, "River Stone");
        await page.Locator(".pictures img").First.WaitForAsync();
        await Type(page, "#net", "3.9 oz");
        await Window.UntilAsync(() => window.File("recipes/river-stone.yaml").Contains("net: 3.9 oz", StringComparison.Ordinal),
            "the net quantity is in the file");

        await Press(page, "a[href='/print/river-stone']");
        await Heading(page, "Print River Stone");
        await Type(page, "#count", "3");
        await Type(page, "#first", "4");
        await page.GetByText("3 labels on 1 sheet, from position 4.").WaitForAsync();
        await Press(page, "button.chief");
        var sheets = page.Locator("#sheets");
        await sheets.WaitForAsync();
        var pdf = Path.Combine(window.Folder, "sheets.pdf");
        await File.WriteAllBytesAsync(pdf,
            await (await page.APIRequest.GetAsync(new Uri(window.Address, await sheets.GetAttributeAsync("href")).ToString()))
                .BodyAsync());
        Assert.Equal(await page.Locator("#lot").InputValueAsync(), Decoded(pdf));
        Assert.Empty(window.Complaints);
    }

    // The fourth of ten labels, 4 x 2 in on US Letter, stands in the right column from 2.5 in
    // below the top; read off the sheet at 300 dots to the inch.
    private static string Decoded(string pdf)
    {
        Run("pdftoppm", "-r", "300", "-x", "1275", "-y", "750", "-W", "1275", "-H", "600", "-gray", "-png", "-singlefile", pdf, pdf);
        return Run("zbarimg", "-q", "--raw", pdf + ".png").Trim();
    }

    private static string Run(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return text;
    }

    private static Task Heading(IPage page, string text) =>
        page.Locator("h1", new PageLocatorOptions { HasTextString = text }).WaitForAsync();

    private static async Task Type(IPage page, string field, string text)
    {
        await Focus(page, field);
        await page.Keyboard.PressAsync("Control+A");
        await page.Keyboard.TypeAsync(text);
    }

    private static async Task Press(IPage page, string what)
    {
        await Focus(page, what);
        await page.Keyboard.PressAsync("Enter");
    }

    // Tab, and nothing but Tab, until the thing has the focus; and it must be seen to have it.
    private static async Task Focus(IPage page, string what)
    {
        await page.Locator(what).First.WaitForAsync();
        for (var i = 0; i < 120; i++)
        {
            if (await page.EvaluateAsync<bool>("s => document.activeElement?.matches(s) === true", what))
            {
                Assert.True(
                    await page.EvaluateAsync<bool>(
                        "() => document.activeElement.matches(':focus-visible') && "
                            + "getComputedStyle(document.activeElement).outlineStyle !== 'none'"),
                    $"{what} has the focus and does not show it");
                return;
            }
            await page.Keyboard.PressAsync("Tab");
        }
        Assert.Fail($"Tab never comes to {what}");
    }
}
