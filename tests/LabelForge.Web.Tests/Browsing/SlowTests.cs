using System.Diagnostics;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A slow machine on a slow line: a quarter of the speed, and 600 milliseconds to the program and back. Nothing that is typed is
/// lost or comes in another order.</summary>
public sealed class SlowTests(Chromium chromium)
{
    private const string Typed =
        "Wet the bar, lather between the hands, rinse. Keep it on a dish that drains, out of the sun; 2 minutes are enough.";

    [Fact]
    public async Task Every_key_arrives_and_in_its_order()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        // The browser's own slow line leaves sockets alone, and the page speaks through one: 300 ms each way, in order.
        await page.AddInitScriptAsync("""
            const send = WebSocket.prototype.send;
            WebSocket.prototype.send = function (data) { setTimeout(() => send.call(this, data), 300); };
            const heard = Object.getOwnPropertyDescriptor(WebSocket.prototype, 'onmessage');
            Object.defineProperty(WebSocket.prototype, 'onmessage', {
                get() { return heard.get.call(this); },
                set(handler) { heard.set.call(this, handler && (e => setTimeout(() => handler.call(this, e), 300))); },
            });
            """);
        await window.GoAsync("/recipes/tideline-bar");
        await page.Locator(".pictures img").First.WaitForAsync();
        var devices = await window.Context.NewCDPSessionAsync(page);
        await devices.SendAsync("Network.enable");
        await devices.SendAsync("Network.emulateNetworkConditions",
            new() { ["offline"] = false, ["latency"] = 600, ["downloadThroughput"] = -1, ["uploadThroughput"] = -1 });
        await devices.SendAsync("Emulation.setCPUThrottlingRate", new() { ["rate"] = 4 });

        // The line is slow indeed: the answer to one key takes that long.
        var clock = Stopwatch.StartNew();
        await page.Locator("#name").PressAsync("End");
        await page.Keyboard.TypeAsync("!");
        await page.Locator("h1", new PageLocatorOptions { HasTextString = "!" }).WaitForAsync();
        Assert.True(clock.ElapsedMilliseconds >= 500, $"The line took only {clock.ElapsedMilliseconds} ms, so nothing was tried.");

        var field = page.Locator("#directions");
        await field.FillAsync("");
        // About twenty keys a second, faster than any hand, and a correction on the way.
        await field.PressSequentiallyAsync(Typed[..60], new() { Delay = 50 });
        await field.PressSequentiallyAsync("xyz", new() { Delay = 20 });
        for (var i = 0; i < 3; i++)
            await page.Keyboard.PressAsync("Backspace");
        await page.Keyboard.TypeAsync(Typed[60..], new() { Delay = 50 });
        Assert.Equal(Typed, await field.InputValueAsync());
        await Window.UntilAsync(() => window.File("recipes/tideline-bar.yaml").Contains(Typed, StringComparison.Ordinal),
            "the file has every letter");
        // The answers to earlier keys have all come in, and wrote over none.
        await Assertions.Expect(page.Locator(".saved")).ToContainTextAsync("Saved");
        Assert.Equal(Typed, await field.InputValueAsync());
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Half_a_form_survives_a_reload_on_a_slow_line()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/stock/in");
        var devices = await window.Context.NewCDPSessionAsync(page);
        await devices.SendAsync("Network.enable");
        await devices.SendAsync("Network.emulateNetworkConditions",
            new() { ["offline"] = false, ["latency"] = 600, ["downloadThroughput"] = -1, ["uploadThroughput"] = -1 });
        await page.Locator("#supplier").PressSequentiallyAsync("Quillmere Supplies", new() { Delay = 40 });
        await page.Locator("#lot").PressSequentiallyAsync("QS-4471", new() { Delay = 40 });
        await Window.UntilAsync(() => File.Exists(Path.Combine(window.Folder, ".drafts/typed.json"))
            && window.File(".drafts/typed.json").Contains("QS-4471", StringComparison.Ordinal), "what was typed is kept");
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#supplier")).ToHaveValueAsync("Quillmere Supplies");
        await Assertions.Expect(page.Locator("#lot")).ToHaveValueAsync("QS-4471");
    }
}
