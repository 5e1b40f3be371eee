using LabelForge.Records.Books;
using Microsoft.Playwright;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Papers that go with a product, and papers that are kept, on the page.</summary>
public sealed class PapersPageTests(Chromium chromium)
{
    [Fact]
    public async Task A_notification_is_made_of_a_product_and_says_what_is_missing()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/papers");
        await page.SelectOptionAsync("#market", "ca");
        await page.SelectOptionAsync("#of-product", "lip-balm");
        await Assertions.Expect(page.Locator("#paper-title")).ToHaveTextAsync("Data for the cosmetic notification");
        await Assertions.Expect(page.Locator(".notice.should").First).ToContainTextAsync("missing");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("over 30, up to 40 %");
        // What was chosen is there again after a reload.
        await window.GoAsync("/papers");
        await Assertions.Expect(page.Locator("#paper-title")).ToBeVisibleAsync();
        Assert.Empty(window.Complaints);
    }

    [Fact]
    public async Task A_certificate_is_kept_under_the_name_at_the_foot_of_the_page()
    {
        await using var window = await Window.OpenAsync(chromium, example: true);
        var page = window.Page;
        await window.GoAsync("/papers/kept");
        await page.FillAsync("#who", "Ines");
        await page.Locator("#who").BlurAsync();
        await page.Locator("#file")
            .SetInputFilesAsync(new FilePayload
            {
                Name = "castor.pdf",
                MimeType = "application/pdf",
                Buffer = "%PDF-1.7 as it were"u8.ToArray(),
            });
        await page.FillAsync("#about", "castor-oil");
        await page.FillAsync("#revision", "4");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep it", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("main table")).ToContainTextAsync("material castor-oil");
        var kept = Assert.Single(OpenBooks.Open(window.Folder).Ask(b => b.Attachments()));
        Assert.Equal(("Ines", "castor.pdf", "4"), (kept.By, kept.FileName, kept.Revision));
        Assert.Null(AttachmentFolder.Fault(window.Folder, kept));
        // What belongs to nothing is refused, and nothing is written.
        await page.Locator("#file")
            .SetInputFilesAsync(new FilePayload { Name = "x.pdf", MimeType = "application/pdf", Buffer = "%PDF-1.7"u8.ToArray() });
        await page.FillAsync("#about", "tallow");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep it", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("[role=alert]").First).ToContainTextAsync("tallow");
        Assert.Single(OpenBooks.Open(window.Folder).Ask(b => b.Attachments()));
    }
}
