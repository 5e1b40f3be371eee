using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Where the cursor is after another page was opened: at its heading, but never taken from a person who types already.</summary>
public sealed class FocusTests(Chromium chromium)
{
    // Counts how often the page has put the focus where it wants it.
    private const string Watch = """
        Object.defineProperty(window, 'labelforge', { configurable: true, set(own) {
          const arrive = own.arrive;
          own.arrive = () => { arrive(); window.arrived = (window.arrived ?? 0) + 1; };
          Object.defineProperty(window, 'labelforge', { value: own });
        } });
        """;

    // A quick person: is in the first field of text as soon as it is drawn, before the page says where the focus goes.
    private const string Quick = """
        () => new MutationObserver((_, seen) => {
          const field = document.querySelector('main #name');
          if (field) { seen.disconnect(); field.focus(); }
        }).observe(document.body, { subtree: true, childList: true })
        """;

    [Fact]
    public async Task Another_page_begins_at_its_heading()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.Context.AddInitScriptAsync(Watch);
        await window.GoAsync("/recipes");
        await window.Page.WaitForFunctionAsync("() => window.arrived === 1");
        await window.Page.Locator("main a[href='/recipes/harbour-wall-bar']").First.ClickAsync();
        await window.Page.WaitForFunctionAsync("() => window.arrived === 2");
        await Assertions.Expect(window.Page.Locator("h1")).ToBeFocusedAsync();
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Who_types_already_is_not_taken_out_of_the_field()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        await window.Context.AddInitScriptAsync(Watch);
        await window.GoAsync("/recipes");
        await window.Page.WaitForFunctionAsync("() => window.arrived === 1");
        await window.Page.EvaluateAsync(Quick);
        await window.Page.Locator("main a[href='/recipes/harbour-wall-bar']").First.ClickAsync();
        await window.Page.WaitForFunctionAsync("() => window.arrived === 2");
        await Assertions.Expect(window.Page.Locator("#name")).ToBeFocusedAsync();
        await window.Page.Keyboard.PressAsync("End");
        await window.Page.Keyboard.TypeAsync(" of two");
        await Assertions.Expect(window.Page.Locator("#name")).ToHaveValueAsync("Harbour Wall of two");
        await Window.UntilAsync(() => window.File("recipes/harbour-wall-bar.yaml")
            .Contains("name: Harbour Wall of two", StringComparison.Ordinal), "every letter is in the file");
    }

    // Quicker than the page: in the field of what came out before the page goes on to the next weight.
    private const string QuickAtTheBench = """
        Object.defineProperty(window, 'labelforge', { configurable: true, set(own) {
          const goOn = own.goOn;
          own.goOn = id => { document.getElementById('made').focus(); goOn(id); window.wentOn = true; };
          Object.defineProperty(window, 'labelforge', { value: own });
        } });
        """;

    [Fact]
    public async Task Who_goes_on_to_another_field_after_a_weighing_is_left_there()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        FilledBooks.Fill(window.Folder);
        var page = window.Page;
        await window.Context.AddInitScriptAsync(QuickAtTheBench);
        await window.GoAsync($"/batches/{FilledBooks.OpenLot}");
        await page.FillAsync("#weighed", "1");
        await page.PressAsync("#weighed", "Enter");
        await page.WaitForFunctionAsync("() => window.wentOn");
        await Assertions.Expect(page.Locator("#made")).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator(".notice.well")).ToContainTextAsync("1.00 g");
        Assert.Empty(window.Complaints);
    }
}
