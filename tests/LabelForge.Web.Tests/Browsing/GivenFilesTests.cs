using System.Text;
using System.Text.RegularExpressions;
using LabelForge.Print;
using Microsoft.Playwright;
using SkiaSharp;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Files that a maker gives to the page: what is in them counts, and what cannot be used is said and not kept.</summary>
public sealed class GivenFilesTests(Chromium chromium)
{
    [Fact]
    public async Task A_certificate_as_a_PDF_table_fills_limits_and_allergens_and_one_undo_takes_them_back()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        const string file = "materials/hayloft-fragrance.yaml";
        var before = window.File(file);
        await window.GoAsync("/materials/hayloft-fragrance");
        await page.GetByText("Read a certificate").ClickAsync();
        await page.Locator("#paper")
            .SetInputFilesAsync(new FilePayload
            {
                Name = "certificate.pdf",
                MimeType = "application/pdf",
                Buffer = Table(("Category 9", "5.25 %"), ("Category 5B", "1.1 %"), ("Linalool 78-70-6", "6 %")),
            });
        await page.GetByText("I compared it").ClickAsync();
        await Window.UntilAsync(() => window.File(file) is var now
            && now.Contains("category 9: 5.25 %", StringComparison.Ordinal)
            && now.Contains("category 5B: 1.1 %", StringComparison.Ordinal) && now.Contains("Linalool: 6 %", StringComparison.Ordinal),
            "what was read is in the file");
        await page.GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Window.UntilAsync(() => window.File(file) == before, "one step back");
    }

    [Fact]
    public async Task A_swatch_is_picked_from_a_photo_and_a_bomb_is_refused()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        const string file = "materials/slate-blue-mica.yaml";
        await window.GoAsync("/materials/slate-blue-mica");
        await page.GetByText("Pick it from a photo").ClickAsync();
        await page.Locator("#swatch-photo")
            .SetInputFilesAsync(new FilePayload { Name = "bomb.png", MimeType = "image/png", Buffer = Claiming(60_000, 60_000) });
        await Assertions.Expect(page.GetByText("at most 80 million", new() { Exact = false })).ToBeVisibleAsync();
        using var bitmap = new SKBitmap(30, 30);
        bitmap.Erase(new SKColor(0x33, 0x55, 0x99));
        using var photo = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        await page.Locator("#swatch-photo")
            .SetInputFilesAsync(new FilePayload { Name = "soap.png", MimeType = "image/png", Buffer = photo.ToArray() });
        await page.Locator("#take-swatch").ClickAsync();
        await Window.UntilAsync(() => window.File(file).Contains("swatch: \"#335599\"", StringComparison.Ordinal),
            "the colour is in the file");
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_picture_stands_on_the_front_of_the_label_and_a_bomb_is_refused()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/labels/bramble-bar");
        await page.Locator(".pictures img").First.WaitForAsync();
        await page.GetByText("Your own picture on the front").ClickAsync();
        await page.Locator("#art")
            .SetInputFilesAsync(new FilePayload { Name = "bomb.png", MimeType = "image/png", Buffer = Claiming(60_000, 60_000) });
        await Assertions.Expect(page.GetByText("at most 25 million", new() { Exact = false })).ToBeVisibleAsync();
        Assert.False(Directory.Exists(Path.Combine(window.Folder, "designs")));

        await page.Locator("#art-width").FillAsync("7 mm");
        await page.Locator("#art").SetInputFilesAsync(new FilePayload
        {
            Name = "../../My leaf.svg",
            MimeType = "image/svg+xml",
            Buffer = Encoding.UTF8
                .GetBytes(
                    "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 10 10\"><path d=\"M5 0 L10 10 L0 10 Z\" "
                        + "fill=\"currentColor\"/></svg>"),
        });
        await Assertions.Expect(page.GetByText("It is on the design bar-2x4-own")).ToBeVisibleAsync();
        Assert.Equal(["bar-2x4-own.yaml", "my-leaf.svg"],
            Directory.EnumerateFiles(Path.Combine(window.Folder, "designs")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("{ role: art, file: my-leaf.svg, place: top, align: centre, length: 7 mm", window.File("designs/bar-2x4-own.yaml"),
            StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#design")).ToHaveValueAsync("bar-2x4-own");
        await Assertions.Expect(page.GetByText("It does not fit.")).Not.ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_variant_is_made_in_fields_and_has_a_label_of_its_own()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/recipes/bramble-bar");
        await page.Locator("#add-variant").ClickAsync();
        await page.Locator("#variant-0").FillAsync("Tideline & Shea");
        await page.Locator("#variant-0-bramble-fragrance").SelectOptionAsync("tideline-fragrance");
        await page.Locator("#variant-0-ultramarine-violet").SelectOptionAsync("(left out)");
        await Window.UntilAsync(() => window.File("recipes/bramble-bar.yaml") is var now
            && now.Contains("replace: { bramble-fragrance: tideline-fragrance }", StringComparison.Ordinal)
            && now.Contains("leave out: [ ultramarine-violet ]", StringComparison.Ordinal), "the variant is in the file");
        await window.GoAsync("/labels/bramble-bar");
        await page.Locator("#variant").SelectOptionAsync("Tideline & Shea");
        await Assertions.Expect(page.Locator(".statement").First).Not.ToContainTextAsync("Ultramarines");
        await Assertions.Expect(page.GetByAltText("The label of Tideline & Shea", new() { Exact = false }).First).ToBeVisibleAsync();
    }

    [Fact]
    public async Task The_arrow_keys_choose_where_the_print_begins()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/print/bramble-bar");
        await page.Locator("#position-1").FocusAsync();
        for (var position = 2; position <= 4; position++)
        {
            await page.Keyboard.PressAsync("ArrowRight");
            await Assertions.Expect(page.Locator($"#position-{position}")).ToBeFocusedAsync();
        }
        await Assertions.Expect(page.Locator("#first")).ToHaveValueAsync("4");
        await Assertions.Expect(page.GetByText("from position 4.")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_label_that_lies_on_its_stock_lies_in_the_picture_of_the_sheet()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/print/bramble-bar");
        var (place, label) = (page.Locator("#position-2 rect"), page.Locator("#position-2 image"));
        await page.Locator("#stock").SelectOptionAsync("us-letter-10-2x4in");
        await Assertions.Expect(page.Locator(".sheet-picture [role=radio]")).ToHaveCountAsync(10);
        await Assertions.Expect(label).ToBeVisibleAsync();
        Assert.Null(await label.GetAttributeAsync("transform"));
        // Labels of 4 x 2 in on places of 2 x 10 in: turned by a quarter to the left, as they are printed.
        await page.Locator("#stock").SelectOptionAsync("us-letter-4-wrap-2x10in");
        await Assertions.Expect(page.Locator(".sheet-picture [role=radio]")).ToHaveCountAsync(4);
        await Assertions.Expect(label).ToHaveAttributeAsync("transform", new Regex(@"^rotate\(-90 "));
        var (there, lies) = ((await place.BoundingBoxAsync())!, (await label.BoundingBoxAsync())!);
        Assert.True(there.Height > 4 * there.Width);
        Assert.Equal([there.X, there.Y, there.Width, there.Height], [lies.X, lies.Y, lies.Width, lies.Height], Near);
    }

    // But for the line around the place.
    private static bool Near(float one, float other) => Math.Abs(one - other) < 2;

    // A table whose columns stand apart, as such papers have them.
    private static byte[] Table(params (string Left, string Right)[] rows)
    {
        using var stream = new MemoryStream();
        using (var document = SKDocument.CreatePdf(stream))
        {
            var canvas = document.BeginPage(595, 842);
            using var face =
                SKTypeface.FromStream(new MemoryStream(LabelForge.Print.Templates.Bytes("fonts/BarlowCondensed-Regular.ttf")));
            using var font = new SKFont(face, 12);
            using var paint = new SKPaint { Color = SKColors.Black };
            for (var i = 0; i < rows.Length; i++)
            {
                canvas.DrawText(rows[i].Left, 60, 100 + (i * 24), SKTextAlign.Left, font, paint);
                canvas.DrawText(rows[i].Right, 400, 100 + (i * 24), SKTextAlign.Left, font, paint);
            }
            document.EndPage();
        }
        return stream.ToArray();
    }

    // The head of a PNG that claims a size (PNG Specification, 11.2.2), and nothing behind it.
    private static byte[] Claiming(int width, int height)
    {
        using var bitmap = new SKBitmap(1, 1);
        var png = bitmap.Encode(SKEncodedImageFormat.Png, 100).ToArray();
        for (var i = 0; i < 4; i++)
            (png[16 + i], png[20 + i]) = ((byte)(width >> (24 - (8 * i))), (byte)(height >> (24 - (8 * i))));
        var crc = Crc(png.AsSpan(12, 17));
        for (var i = 0; i < 4; i++)
            png[29 + i] = (byte)(crc >> (24 - (8 * i)));
        return png;
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var i = 0; i < 8; i++)
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320u : crc >> 1;
        }
        return ~crc;
    }
}
