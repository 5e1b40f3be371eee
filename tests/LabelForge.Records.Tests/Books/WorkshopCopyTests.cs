using System.IO.Compression;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>A copy of a whole workshop, and what is put back from it.</summary>
public sealed class WorkshopCopyTests : IDisposable
{
    private readonly string _elsewhere = Directory.CreateTempSubdirectory("labelforge-elsewhere-").FullName;

    private string Copy => Path.Combine(_elsewhere, "copy.zip");

    public void Dispose() => Directory.Delete(_elsewhere, recursive: true);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_workshop_is_put_back_whole_papers_photos_and_books(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Stock();
        var lot = shop.Finish("26R02-01X");
        File.WriteAllBytes(Path.Combine(shop.Folder, "certificate.pdf"), [37, 80, 68, 70, 0, 1, 2, 255]);
        shop.Write("photos/2026/bar.txt", "a picture, as it were");
        var made = WorkshopCopy.Backup(shop.Folder, Copy);
        Assert.Empty(made.Differences);
        Assert.Equal(8L, made.Entries);
        var fresh = Path.Combine(_elsewhere, "fresh");
        if (server)
        {
            // The server's books go into a file, where the copy names no server of its own.
            using var zip = ZipFile.OpenRead(Copy);
            zip.GetEntry("records.db")!.ExtractToFile(Path.Combine(_elsewhere, "records.db"));
            Assert.Equal(8,
                OpenBooks.Open(BookPlace.InFile(Path.Combine(_elsewhere, "records.db"))).Ask(b => b.PiecesLeft(b.BatchOf(lot))));
            return;
        }
        var back = WorkshopCopy.Restore(fresh, Copy);
        Assert.Equal((made.Files, made.Entries, (string?)null), (back.Files, back.Entries, back.Kept));
        foreach (var file in Directory.EnumerateFiles(shop.Folder, "*", SearchOption.AllDirectories)
            .Select(f => Path.GetRelativePath(shop.Folder, f)).Where(f => !f.StartsWith("records.db", StringComparison.Ordinal)))
            Assert.Equal(File.ReadAllBytes(Path.Combine(shop.Folder, file)), File.ReadAllBytes(Path.Combine(fresh, file)));
        Assert.Equal(8, OpenBooks.Open(fresh).Ask(b => b.PiecesLeft(b.BatchOf(lot))));
    }

    [Fact]
    public void What_a_copy_replaces_is_kept_and_what_is_the_same_is_left_alone()
    {
        using var shop = new TestShop();
        shop.Stock();
        WorkshopCopy.Backup(shop.Folder, Copy);
        shop.Write("recipes/bar.yaml", "name: Spoilt\n");
        shop.Receive("base", 1, 1);
        var back = WorkshopCopy.Restore(shop.Folder, Copy);
        Assert.Equal("name: Spoilt\n", File.ReadAllText(Path.Combine(back.Kept!, "recipes/bar.yaml")));
        Assert.Single(Directory.EnumerateFiles(back.Kept!, "*", SearchOption.AllDirectories));
        Assert.StartsWith("name: Bar", File.ReadAllText(Path.Combine(shop.Folder, "recipes/bar.yaml")), StringComparison.Ordinal);
        Assert.Equal(3, OpenBooks.Open(shop.Folder).Read().AllReceipts.Count);
        // The next copy does not take in what was put aside.
        Assert.DoesNotContain("before-restore", string.Join(' ', Names(WorkshopCopyAgain(shop.Folder))), StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_half_written_or_removed_on_the_page_is_in_the_copy_and_locks_are_not()
    {
        using var shop = new TestShop();
        shop.Stock();
        shop.Write(".drafts/recipes/bar.draft", "name: Half\n");
        shop.Write(".drafts/removed/recipes-2026-11-20-old.yaml", "name: Old\n");
        shop.Write(".labelforge-page", "1");
        shop.Write(".drafts/.unfinished", "1");
        WorkshopCopy.Backup(shop.Folder, Copy);
        var fresh = Path.Combine(_elsewhere, "fresh");
        WorkshopCopy.Restore(fresh, Copy);
        Assert.Equal("name: Half\n", File.ReadAllText(Path.Combine(fresh, ".drafts/recipes/bar.draft")));
        Assert.Equal("name: Old\n", File.ReadAllText(Path.Combine(fresh, ".drafts/removed/recipes-2026-11-20-old.yaml")));
        Assert.DoesNotContain(Names(Copy), n => n is ".labelforge-page" or ".drafts/.unfinished");
    }

    [Fact]
    public void A_copy_that_is_damaged_or_made_to_do_harm_changes_nothing()
    {
        using var shop = new TestShop();
        shop.Stock();
        WorkshopCopy.Backup(shop.Folder, Copy);
        var bytes = File.ReadAllBytes(Copy);
        var before = File.ReadAllText(Path.Combine(shop.Folder, "recipes/bar.yaml"));
        foreach (var at in new[] { 60, bytes.Length / 2, bytes.Length - 30 })
        {
            var torn = (byte[])bytes.Clone();
            torn[at] ^= 0x55;
            File.WriteAllBytes(Path.Combine(_elsewhere, "torn.zip"), torn);
            Assert.Contains("not a sound copy",
                TestShop.Refusal(() => WorkshopCopy.Restore(shop.Folder, Path.Combine(_elsewhere, "torn.zip"))), StringComparison.Ordinal);
        }
        var evil = Path.Combine(_elsewhere, "evil.zip");
        using (var zip = ZipFile.Open(evil, ZipArchiveMode.Create))
        {
            using (var file = new StreamWriter(zip.CreateEntry("../outside.txt").Open()))
                file.Write("x");
            using var list = new StreamWriter(zip.CreateEntry("copy.json").Open());
            list.Write("{\"../outside.txt\":\"2d711642b726b04401627ca9fbac32f5c8530fb1903cc4db02258717921a4881\"}");
        }
        Assert.Contains("not a sound copy", TestShop.Refusal(() => WorkshopCopy.Restore(shop.Folder, evil)), StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(Path.Combine(shop.Folder, "recipes/bar.yaml")));
        Assert.False(Directory.EnumerateDirectories(shop.Folder, "before-restore*").Any());
    }

    private static IReadOnlyList<string> Names(string copy)
    {
        using var zip = ZipFile.OpenRead(copy);
        return [.. zip.Entries.Select(e => e.FullName)];
    }

    private string WorkshopCopyAgain(string folder)
    {
        WorkshopCopy.Backup(folder, Copy);
        return Copy;
    }
}
