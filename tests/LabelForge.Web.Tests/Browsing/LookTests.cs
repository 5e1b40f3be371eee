using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Looks are chosen from pictures of the maker's own label, and written when the maker says so.</summary>
public sealed class LookTests(Chromium chromium)
{
    private const string Recipe = "recipes/meadow-bar.yaml";

    [Fact]
    public async Task A_look_is_tried_on_the_makers_own_label_and_written_into_the_scent_alone()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var before = window.File(Recipe);
        await window.GoAsync("/looks/meadow-bar");
        await Assertions.Expect(page.Locator(".measured"))
            .ToHaveAttributeAsync("aria-label", new System.Text.RegularExpressions.Regex("^The front of Salt Meadow"));
        await Assertions.Expect(page.Locator("#arrangement-colour-block")).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(page.Locator("#use-here")).ToBeDisabledAsync();
        // A picture of the very product in each arrangement that has room for it.
        await Assertions.Expect(page.Locator("#arrangement-medallion img")).ToBeVisibleAsync();
        await page.ClickAsync("#arrangement-medallion");
        await page.ClickAsync("#ornament-tide");
        await Assertions.Expect(page.Locator("#look-verdict")).ToHaveTextAsync("Keeps every height that was checked");
        Assert.Equal(before, window.File(Recipe));
        await page.ClickAsync("#use-here");
        await Window.UntilAsync(() => window.File(Recipe)
            .Contains("arrangement: medallion, ornament: { family: tide, seed: \"Salt Meadow\" }", StringComparison.Ordinal),
            "the look is in the file");
        Assert.Single(window.File(Recipe).Split('\n'), l => l.Contains("medallion", StringComparison.Ordinal));
        await Assertions.Expect(page.Locator("#arrangement-medallion")).ToHaveAttributeAsync("aria-pressed", "true");
        await page.ClickAsync("#look-undo");
        await Window.UntilAsync(() => window.File(Recipe) == before, "the file is as it was, to the letter");
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_surprise_has_a_number_and_the_number_gives_the_same_look_again()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/looks/bramble-bar");
        await page.Locator(".measured").WaitForAsync();
        await page.ClickAsync("#surprise");
        await Assertions.Expect(page.Locator("#seed")).Not.ToHaveValueAsync("");
        var seed = await page.InputValueAsync("#seed");
        var pressed = await Pressed(page);
        await page.ClickAsync("#arrangement-stack");
        await page.ClickAsync("#ornament-none");
        await Assertions.Expect(page.Locator("#ornament-none")).ToHaveAttributeAsync("aria-pressed", "true");
        await page.FillAsync("#seed", "");
        await page.FillAsync("#seed", seed);
        await Assertions.Expect(page.Locator("#ornament-none")).ToHaveAttributeAsync("aria-pressed", "false");
        Assert.Equal(pressed, await Pressed(page));
    }

    [Fact]
    public async Task What_a_range_shares_is_written_once_and_taken_back_in_one_step()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var (recipe, workshop) = (window.File(Recipe), window.File("workshop.yaml"));
        await window.GoAsync("/looks/meadow-bar");
        await page.ClickAsync("#types-round");
        await page.ClickAsync("#ornament-rain");
        await page.ClickAsync("#use-all");
        await Window.UntilAsync(() => window.File("workshop.yaml").Contains("types: round", StringComparison.Ordinal)
            && window.File(Recipe).Contains("family: rain", StringComparison.Ordinal),
            "the range has the letters, the scent its ornament");
        Assert.DoesNotContain("types:", window.File(Recipe), StringComparison.Ordinal);
        await page.ClickAsync("#look-undo");
        await Window.UntilAsync(() => window.File(Recipe) == recipe && window.File("workshop.yaml") == workshop,
            "both files are as they were");
    }

    [Fact]
    public async Task A_label_that_goes_round_is_shown_on_its_package_and_at_the_screens_own_true_size()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/labels/lip-balm");
        await Assertions.Expect(page.GetByRole(AriaRole.Img, new() { Name = "Plain Lip Balm on its package: From the front" }))
            .ToBeVisibleAsync();
        var label = page.Locator(".bench img").First;
        var wide = double.Parse((await label.GetAttributeAsync("width"))!, System.Globalization.CultureInfo.InvariantCulture);
        await page.Locator(".ruler summary").ClickAsync();
        await page.Locator("#screen-scale").FillAsync("1.2");
        await Assertions.Expect(label).ToHaveAttributeAsync("width", FormattableString.Invariant($"{Math.Round(wide * 1.2, 1):0.#}"));
        await window.GoAsync("/print/lip-balm");
        await Assertions.Expect(page.Locator(".sheet-picture .filled image").First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_name_is_sized_by_dragging_its_grip_or_by_keys_and_the_ornament_moved()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        const string file = "recipes/bramble-bar.yaml";
        await window.GoAsync("/looks/bramble-bar");
        await Assertions.Expect(page.Locator("#look-verdict")).ToHaveTextAsync("Keeps every height that was checked");
        var grip = (await page.Locator("#grip-name").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(grip.X + grip.Width / 2, grip.Y + grip.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(grip.X + grip.Width / 2, grip.Y + grip.Height / 2 + 100, new() { Steps = 10 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(page.Locator("#name-size")).Not.ToHaveValueAsync("1");
        // The same by keys: a slider.
        await page.Locator("#name-size").FocusAsync();
        await page.Keyboard.PressAsync("Home");
        await Assertions.Expect(page.Locator("#name-size")).ToHaveAttributeAsync("aria-valuetext", "50 %");
        await page.SelectOptionAsync("#ornament-place", "below");
        await Assertions.Expect(page.Locator("#look-verdict")).ToHaveTextAsync("Keeps every height that was checked");
        await page.ClickAsync("#use-here");
        await Window.UntilAsync(() => window.File(file) is var now
            && now.Contains("name size: 0.5", StringComparison.Ordinal)
            && now.Contains("ornament place: below", StringComparison.Ordinal), "sizes and places are in the file");
        Assert.Empty(window.Complaints);
    }

    // A flick is over before the page has asked how large a millimetre is on the screen: on a busy machine every pull is.
    [Fact]
    public async Task Words_are_carried_however_quickly_they_are_pulled_and_stay_where_they_are_let_go()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/looks/bramble-bar");
        await page.ClickAsync("#arrangement-ranged-left");
        await Assertions.Expect(page.Locator("#arrangement-ranged-left")).ToHaveAttributeAsync("aria-pressed", "true");
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        var name = page.Locator("#move-name");
        await name.FocusAsync();
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        const string fire = """
            (word, events) => {
              const box = word.getBoundingClientRect();
              const y = box.y + box.height / 2;
              for (const [type, by, buttons] of events)
                word.dispatchEvent(new PointerEvent(type,
                  { bubbles: true, isPrimary: true, clientX: box.x + box.width / 2 + by, clientY: y, buttons }));
            }
            """;
        await name.EvaluateAsync(fire,
            new object[] { new object[] { "pointerdown", 0, 1 }, new object[] { "pointermove", -600, 1 }, new object[] { "pointerup", -600, 0 } });
        await Assertions.Expect(name).ToHaveAttributeAsync("x", new System.Text.RegularExpressions.Regex("^(0\\.[89]|1)"));
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        var there = await Place(name);
        await name.EvaluateAsync(fire, new object[] { new object[] { "pointermove", 300, 1 } });
        // A key after it, so that the move has been told.
        await page.Keyboard.PressAsync("ArrowDown");
        await Assertions.Expect(name).Not.ToHaveAttributeAsync("y", there.Y);
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        Assert.Equal(double.Parse(there.X, System.Globalization.CultureInfo.InvariantCulture),
            double.Parse((await Place(name)).X, System.Globalization.CultureInfo.InvariantCulture), 0.05);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Words_are_dragged_or_moved_by_keys_stop_where_a_rule_stops_them_and_are_taken_back()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        const string file = "recipes/bramble-bar.yaml";
        var before = window.File(file);
        await window.GoAsync("/looks/bramble-bar");
        await page.ClickAsync("#arrangement-ranged-left");
        await Assertions.Expect(page.Locator("#arrangement-ranged-left")).ToHaveAttributeAsync("aria-pressed", "true");
        var name = page.Locator("#move-name");
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        var start = await Place(name);
        await name.FocusAsync();
        await Assertions.Expect(page.Locator(".guides rect")).Not.ToHaveCountAsync(0);
        Assert.Empty(await Axe.Violations(page, "a word held, its guides shown"));
        // Two guides are wider and higher than the net quantity itself: the space that the law keeps clear round it.
        var (net, guides) = (await BoxAsync(page.Locator("#move-net-quantity")), page.Locator(".guides rect"));
        var round = await Task.WhenAll(Enumerable.Range(0, await guides.CountAsync()).Select(i => BoxAsync(guides.Nth(i))));
        Assert.Contains(round, g => g.Y < net.Y - 2 && g.Y + g.Height > net.Y + net.Height + 2 && g.Width < net.Width + 2);
        Assert.Contains(round, g => g.X < net.X - 2 && g.X + g.Width > net.X + net.Width + 2 && g.Height < net.Height + 2);
        await page.Keyboard.PressAsync("Shift+ArrowRight");
        await Assertions.Expect(name).Not.ToHaveAttributeAsync("x", start.X);
        // A pull far over the edge ends at the margin.
        var box = (await name.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + box.Width / 2 - 600, box.Y + box.Height / 2, new() { Steps = 6 });
        await page.Mouse.UpAsync();
        await Assertions.Expect(name).ToHaveAttributeAsync("x", new System.Text.RegularExpressions.Regex("^(0\\.[89]|1)"));
        await Assertions.Expect(page.Locator("#look-verdict")).ToHaveTextAsync("Keeps every height that was checked");
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        await page.ClickAsync("#use-here");
        await Window.UntilAsync(() => window.File(file).Contains("moved: { name: [-", StringComparison.Ordinal), "the place is in the file");
        await page.ClickAsync("#look-undo");
        await Window.UntilAsync(() => window.File(file) == before, "the file is as it was");
        // What is only tried is taken back a step at a time.
        await name.FocusAsync();
        await Assertions.Expect(page.Locator(".drawing")).ToHaveCountAsync(0);
        var there = await Place(name);
        await page.Keyboard.PressAsync("ArrowUp");
        await Assertions.Expect(page.Locator("#look-undo")).ToBeEnabledAsync();
        await page.ClickAsync("#look-undo");
        await Assertions.Expect(name).ToHaveAttributeAsync("y", there.Y);
        await Assertions.Expect(page.Locator("#use-here")).ToBeDisabledAsync();
        Assert.Empty(window.Complaints);
    }

    private static async Task<LocatorBoundingBoxResult> BoxAsync(ILocator part) => (await part.BoundingBoxAsync())!;

    private static async Task<(string X, string Y)> Place(ILocator words) =>
        ((await words.GetAttributeAsync("x"))!, (await words.GetAttributeAsync("y"))!);

    [Fact]
    public async Task A_wanted_shade_is_answered_with_colourants_that_may_go_in()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/looks/lip-balm");
        await page.Locator("#shade").FillAsync("#c98080");
        await Assertions.Expect(page.Locator("#shade-amounts li")).ToContainTextAsync(["Red iron oxide pigment"]);
        await Assertions.Expect(page.GetByText("Left out: Ultramarine violet pigment.")).ToBeVisibleAsync();
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task The_plate_of_white_ink_is_opened_from_the_labels_page_where_the_printer_lays_white()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        var workshop = Path.Combine(window.Folder, "workshop.yaml");
        var button = page.GetByRole(AriaRole.Button, new() { Name = "Open the plate of white ink" });
        await window.GoAsync("/labels/bramble-bar");
        await page.GetByRole(AriaRole.Button, new() { Name = "proof" }).First.WaitForAsync();
        await Assertions.Expect(button).ToHaveCountAsync(0);
        await System.IO.File.WriteAllTextAsync(workshop, window.File("workshop.yaml").Replace("look: {", "look: { white ink: true, stock: \"#1c1c1e\",",
            StringComparison.Ordinal));
        await window.GoAsync("/labels/bramble-bar");
        var plate = await page.RunAndWaitForPopupAsync(() => button.ClickAsync());
        using var document = UglyToad.PdfPig.PdfDocument.Open(await (await window.Context.APIRequest.GetAsync(plate.Url)).BodyAsync());
        // Black is where white ink goes: under the name, which is printed light on the dark stock.
        Assert.Contains("Bramble", document.GetPage(1).Text, StringComparison.Ordinal);
        Assert.Empty(window.Complaints);
    }

    private static Task<string[]> Pressed(IPage page) =>
        page.EvaluateAsync<string[]>("() => [...document.querySelectorAll('.look-choices button[aria-pressed=true]')].map(b => b.id)");
}
