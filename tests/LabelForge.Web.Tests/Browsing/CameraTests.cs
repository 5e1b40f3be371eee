using System.Text.RegularExpressions;
using LabelForge.Lots;
using LabelForge.Print.Barcodes;
using LabelForge.Print.Output;
using LabelForge.Recipes;
using LabelForge.Records.Books;
using Microsoft.Playwright;
using SkiaSharp;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>A complaint comes with a bar: its code is held before the camera, or scanned, and
/// leads to the batch, the bottles and all who have the same.</summary>
public sealed class CameraTests(Chromium chromium) : IDisposable
{
    private static readonly DateOnly Day = new(2026, 11, 25);
    private static readonly string Lot = new LotCode(Day, 1).ToString();
    private static readonly Gs1ElementString Piece = Gs1ElementString.ForItem(Gtin.FromPrefix("9521407", 3).Value!, lot: Lot,
        serial: "17").Value!;

    private readonly string _seen = Path.Combine(Path.GetTempPath(), $"labelforge-seen-{Guid.NewGuid():N}.y4m");

    public void Dispose() => File.Delete(_seen);

    [Theory]
    [InlineData(BarcodeKind.Gs1DataMatrix)]
    [InlineData(BarcodeKind.Qr)]
    public async Task A_code_held_before_the_camera_leads_to_the_batch_and_the_camera_is_switched_off(BarcodeKind kind)
    {
        Film(kind == BarcodeKind.Qr ? Piece.DigitalLink("https://id.example.com").Value! : Piece.HumanReadable, kind);
        await using var browser = await chromium.AnotherAsync("--use-fake-device-for-media-stream",
            $"--use-file-for-fake-video-capture={_seen}");
        await using var window = await Window.OpenAsync(chromium, example: true, own: browser);
        await window.Context.GrantPermissionsAsync(["camera"]);
        Begin(window.Folder);
        var page = window.Page;
        await window.GoAsync("/find");
        await page.ClickAsync("#camera-open");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex($"/trace/{Lot}$"));
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync(Lot);
        await Assertions.Expect(page.Locator("video")).ToHaveCountAsync(0);

        // At the complaint it chooses the lot, and nothing is typed.
        await window.GoAsync("/stock/complaints");
        await page.ClickAsync("#camera-open");
        await Assertions.Expect(page.Locator("#told-lot")).ToHaveValueAsync(Lot);
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Without_a_camera_it_is_said_and_a_photograph_does()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        Begin(window.Folder);
        var page = window.Page;
        await window.GoAsync("/trace");
        await page.ClickAsync("#camera-open");
        await Assertions.Expect(page.Locator(".camera [role=alert]")).ToContainTextAsync("Type the code");
        using var photo = Picture(Piece.HumanReadable, BarcodeKind.Gs1DataMatrix, 1600, 1200);
        using var jpeg = photo.Encode(SKEncodedImageFormat.Jpeg, 85);
        await page.SetInputFilesAsync("#camera-photo",
            new FilePayload { Name = "bar.jpg", MimeType = "image/jpeg", Buffer = jpeg.ToArray() });
        await Assertions.Expect(page.Locator("#found")).ToContainTextAsync(Lot);
    }

    // What a scanner types that is plugged in as a keyboard: the symbology identifier, the elements without a separator, Enter.
    [Fact]
    public async Task A_scanner_that_types_leads_there_from_any_page_and_types_into_a_field_where_the_cursor_is_in_one()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        Begin(window.Folder);
        var page = window.Page;
        var typed = "]d2" + Piece.Message.Replace(Gs1ElementString.Separator.ToString(), "", StringComparison.Ordinal);
        await window.GoAsync("/recipes");
        await ScanAsync(page, typed);
        await Assertions.Expect(page).ToHaveURLAsync(new Regex($"/trace/{Lot}$"));
        await window.GoAsync("/find");
        await page.FocusAsync("#find");
        await page.Keyboard.TypeAsync(typed);
        await Assertions.Expect(page.Locator("ul.list li")).ToHaveCountAsync(1);
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page).ToHaveURLAsync(new Regex($"/trace/{Lot}$"));
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task Only_the_page_sends_pictures_and_only_pictures()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/find");
        async Task<int> Sent(string size, int bytes) => await page.EvaluateAsync<int>(
            "async ([size, bytes]) => (await fetch('/read-code', { method: 'POST', headers: { 'X-Picture': size }, body: new "
                + "Uint8Array(bytes) })).status", new object[] { size, bytes });
        Assert.Equal(204, await Sent("20x20", 400));
        Assert.All([await Sent("20x20", 399), await Sent("", 400), await Sent("-1x-400", 400), await Sent("99999x99999", 400),
            await Sent("0x0", 0)], s => Assert.Equal(400, s));
    }

    // As fast as a scanner, and from one place: keys sent one by one over a busy machine may come slower than a hand's. Before it the
    // page listens: the frame on every page, and a page that does more with a code after it.
    internal static async Task ScanAsync(IPage page, string typed, bool thePageItself = false)
    {
        await page.WaitForFunctionAsync("least => labelforgeScan.hears >= least", thePageItself ? 2 : 1);
        await page.EvaluateAsync(
            "typed => { for (const key of [...typed, 'Enter']) document.activeElement.dispatchEvent(new KeyboardEvent('keydown', { key, "
                + "bubbles: true, cancelable: true })); }", typed);
    }

    private static void Begin(string folder)
    {
        var workshop = Workshop.Open(folder);
        Production.Start(OpenBooks.Open(folder), FrozenRecipe.Of(workshop, workshop.ProductOf("bramble-bar").Batch, "us", null), Lot, Day,
            "A");
    }

    // One frame, over and over: YUV4MPEG2, all in grey.
    private void Film(string data, BarcodeKind kind)
    {
        const int width = 640, height = 480;
        using var picture = Picture(data, kind, width, height);
        using var film = File.Create(_seen);
        film.Write(System.Text.Encoding.ASCII.GetBytes($"YUV4MPEG2 W{width} H{height} F10:1 Ip A1:1 C420jpeg\nFRAME\n"));
        film.Write([.. picture.Pixels.Select(p => p.Red)]);
        film.Write([.. Enumerable.Repeat((byte)128, width * height / 2)]);
    }

    private static SKBitmap Picture(string data, BarcodeKind kind, int width, int height)
    {
        var drawn = Path.Combine(Path.GetTempPath(), $"labelforge-code-{Guid.NewGuid():N}.png");
        try
        {
            BarcodeFile.Write(drawn, Barcode.Draw(kind, data).Value!, [], 300, new DocumentInfo("code", DateTimeOffset.UnixEpoch));
            using var code = SKImage.FromEncodedData(drawn);
            var picture = new SKBitmap(new SKImageInfo(width, height, SKColorType.Bgra8888, SKAlphaType.Opaque));
            using var canvas = new SKCanvas(picture);
            canvas.Clear(new SKColor(150, 150, 150));
            canvas.Translate(width / 2f, height / 2f);
            canvas.RotateDegrees(6);
            var side = height * 0.55f;
            canvas.DrawImage(code, SKRect.Create(-side / 2, -side / 2 * code.Height / code.Width, side, side * code.Height / code.Width),
                new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
            return picture;
        }
        finally
        {
            File.Delete(drawn);
        }
    }
}
