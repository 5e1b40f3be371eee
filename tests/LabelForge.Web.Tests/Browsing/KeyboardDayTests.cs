using System.Globalization;
using System.Text.RegularExpressions;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A Saturday without a pointer: two scents out of one pot, their labels, the table, a
/// complaint and its trace, by Tab, Enter, arrows and letters alone.</summary>
public sealed class KeyboardDayTests(Chromium chromium)
{
    private static readonly string[] Scents = ["Salt Meadow", "Peach Morning"];

    [Fact]
    public async Task The_whole_day_is_done_by_keys()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        Prepare(window.Folder);
        var keys = new Hands(window.Page);
        await window.GoAsync("/");

        await keys.Press(".rooms a[href='/pour']");
        await Assertions.Expect(window.Page).ToHaveURLAsync(new Regex("/pour$"));
        foreach (var scent in Scents)
            await keys.Fill($"[id='{await IdOf(window.Page, $"Pieces of {scent}")}']", "3");
        await keys.Press("#begin-pot");
        await Assertions.Expect(window.Page).ToHaveURLAsync(new Regex(@"/pour\?pot="));
        await Weigh(window.Page, keys);
        await Assertions.Expect(window.Page.Locator("#close-pot")).ToBeVisibleAsync();
        foreach (var batch in OpenBooks.Open(window.Folder).Read().Batches)
            await keys.Fill($"[id='made-{batch.Lot}']", "3");
        await keys.Press("#close-pot");

        await keys.Press("main a[href='/run']");
        await Assertions.Expect(window.Page).ToHaveURLAsync(new Regex("/run$"));
        await keys.Press("#plan");
        await Assertions.Expect(window.Page.Locator("figure.mixed image")).ToHaveCountAsync(6);
        await keys.Press("#make-run");
        await window.Page.Locator("#run-pdf").WaitForAsync();
        Assert.Equal(6, OpenBooks.Open(window.Folder).Read().Printings.Sum(p => p.Labels));

        await Sell(window, keys);
        await Complain(window, keys);
        Assert.Empty(window.Complaints);
        TestContext.Current.TestOutputHelper
            ?.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{keys.Tabs} presses of Tab, {keys.Stops} stops"));
    }

    private static void Prepare(string folder)
    {
        File.AppendAllText(Path.Combine(folder, "workshop.yaml"), "label stock: [ us-letter-10-2x4in ]\n");
        var book = OpenBooks.Open(folder);
        foreach (var material in Workshop.Open(folder).Materials.Values)
            StockMovements.Receive(book,
                new Receipt
                {
                    On = new DateOnly(2026, 11, 20),
                    By = "test",
                    Material = material.Id,
                    Amount = material.Kind == MaterialKind.Base ? 9000 : 300,
                    Price = 31.37m,
                });
    }

    private static async Task<string> IdOf(IPage page, string label) =>
        await page.GetByLabel(label, new() { Exact = true }).GetAttributeAsync("id") ?? "";

    private static async Task Weigh(IPage page, Hands keys)
    {
        await page.Locator(".pouring .plain li").First.WaitForAsync();
        var count = await page.Locator(".pouring .plain li").CountAsync();
        Assert.True(count > 4);
        for (var weighed = 1; weighed <= count; weighed++)
        {
            var figure = (await page.Locator(".bench-figure").InnerTextAsync()).Replace("g", "", StringComparison.Ordinal).Trim();
            var key = await page.Locator(".pouring form").GetAttributeAsync("data-once");
            await keys.Fill("#weighed", figure);
            await page.Keyboard.PressAsync("Enter");
            if (weighed < count)
                await Assertions.Expect(page.Locator(".pouring form")).Not.ToHaveAttributeAsync("data-once", key!);
        }
    }

    private static async Task Sell(Window window, Hands keys)
    {
        var page = window.Page;
        await keys.Press(".rooms a[href='/market']");
        await page.Locator(".goods").WaitForAsync();
        await keys.Fill("#place", "Fairport market");
        await keys.To(".goods li:has-text('Salt Meadow') button");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("7.00 USD");
        await keys.Press("#pay-cash");
        await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync("1");
        await keys.Press("#undo-sale");
        await Window.UntilAsync(() => !OpenBooks.Open(window.Folder).Read().Sales.Any(), "the sale is struck");
        await keys.To(".goods li:has-text('Peach Morning') button");
        await page.Keyboard.PressAsync("Space");
        await Assertions.Expect(page.Locator("#sum")).ToHaveTextAsync("7.00 USD");
        await keys.Press("#pay-card");
        await Assertions.Expect(page.Locator("#sold-in-all")).ToHaveTextAsync("1");
        Assert.Equal(1, OpenBooks.Open(window.Folder).Read().Sales.Sum(s => s.Pieces));
    }

    // Found by the key / and a few letters, as from every page.
    private static async Task Complain(Window window, Hands keys)
    {
        var page = window.Page;
        var lot = OpenBooks.Open(window.Folder).Read().Batches[1].Lot;
        await window.GoAsync("/stock/complaints");
        await keys.Fill("#from", "a buyer, 555-0142");
        await keys.Fill("#what", "Red hands after washing");
        await keys.Press("main form button[type=submit]");
        await Window.UntilAsync(() => OpenBooks.Open(window.Folder).Read().Complaints.Any(), "the complaint is in the books");
        await page.Locator("h1").FocusAsync();
        await page.Keyboard.PressAsync("/");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex("/find"));
        await keys.Fill("main input", lot);
        // What a part of the lot finds stands there before.
        await Assertions.Expect(page.Locator("main ul a").First).ToHaveAttributeAsync("href", new Regex(Regex.Escape(lot)));
        await page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(page.Locator("main ul a").First).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex(Regex.Escape(lot)));
    }

    /// <summary>Hands on a keyboard: what has the focus is reached by Tab, and shows that it has it.</summary>
    private sealed class Hands(IPage page)
    {
        private const int Most = 160;

        public int Tabs { get; private set; }

        public int Stops { get; private set; }

        public async Task To(string selector)
        {
            await page.Locator(selector).First.WaitForAsync();
            for (var i = 0; i < Most; i++)
            {
                if (await page.Locator(selector).First.EvaluateAsync<bool>("e => e === document.activeElement"))
                {
                    Stops++;
                    Assert.True(await page.EvaluateAsync<bool>(Ringed), $"{selector} does not show that it has the focus.");
                    return;
                }
                await page.Keyboard.PressAsync("Tab");
                Tabs++;
            }
            Assert.Fail($"{selector} is not reached by Tab.");
        }

        public async Task Fill(string selector, string text)
        {
            await To(selector);
            await page.Keyboard.PressAsync("Control+a");
            await page.Keyboard.TypeAsync(text);
        }

        public async Task Press(string selector)
        {
            await To(selector);
            await page.Keyboard.PressAsync("Enter");
        }

        private const string Ringed =
            "() => { const s = getComputedStyle(document.activeElement); return s.outlineStyle !== 'none' && "
                + "parseFloat(s.outlineWidth) >= 2; }";
    }
}
