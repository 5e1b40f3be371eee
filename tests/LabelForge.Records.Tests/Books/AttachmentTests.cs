using LabelForge.Measures;
using LabelForge.Recipes;
using LabelForge.Records.Books;

namespace LabelForge.Records.Tests.Books;

/// <summary>Papers kept beside the books by their digest: found, checked, copied, put back, imported again.</summary>
public sealed class AttachmentTests : IDisposable
{
    private static readonly byte[] Paper = [37, 80, 68, 70, 45, 1, 2, 255];

    private readonly string _elsewhere = Directory.CreateTempSubdirectory("labelforge-elsewhere-").FullName;

    public void Dispose() => Directory.Delete(_elsewhere, recursive: true);

    private static Attachment Keep(TestShop shop, string about, byte[]? bytes = null, string kind = "certificate",
        DateOnly? until = null) =>
        AttachmentFolder.Keep(shop.Book, shop.Folder, bytes ?? Paper,
            digest => new Attachment
            {
                On = TestShop.Day,
                By = "A",
                About = about,
                Kind = kind,
                FileName = "Certificate 3.PDF",
                Digest = digest,
                Revision = "3",
                BestBefore = until,
            });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_is_attached_is_found_by_what_it_belongs_to_and_told_alike_by_query_and_oracle(bool server)
    {
        using var shop = server ? TestShop.OnServer() : new TestShop();
        shop.Stock();
        var kept = Keep(shop, "material castor-oil");
        Keep(shop, "product bar", [1, 2, 3], "stability");
        Assert.Equal([kept.Id], shop.Book.Ask(b => b.AttachmentsOf("material castor-oil")).Select(a => a.Id));
        Assert.Equal(shop.Book.Read().Attachments().Select(a => a.Digest), shop.Book.Ask(b => b.Attachments()).Select(a => a.Digest));
        var (asked, oracle) = (shop.Book.Ask(b => b.HistoryOf("bar", null)), shop.Book.Read().HistoryOf("bar", null));
        Assert.Equal("stability", Assert.Single(asked.Attachments).Kind);
        Assert.Equal((oracle.Batches, oracle.Last?.Lot, oracle.FirstSale), (asked.Batches, asked.Last?.Lot, asked.FirstSale));
        Assert.Empty(AttachmentFolder.Faults(shop.Book, shop.Folder));
    }

    [Fact]
    public void One_paper_attached_twice_lies_there_once()
    {
        using var shop = new TestShop();
        Keep(shop, "material scent");
        Keep(shop, "material castor-oil");
        Assert.Single(Directory.EnumerateFiles(Path.Combine(shop.Folder, AttachmentFolder.Name)));
        Assert.Equal(2, shop.Book.Ask(b => b.Attachments()).Count);
    }

    [Fact]
    public void A_file_that_was_changed_or_lost_is_told_and_attaching_it_again_puts_it_right()
    {
        using var shop = new TestShop();
        var kept = Keep(shop, "material scent");
        var path = AttachmentFolder.PathOf(shop.Folder, kept);
        Assert.EndsWith(".pdf", path, StringComparison.Ordinal);
        File.WriteAllBytes(path, [9]);
        Assert.Contains("not what its digest says", Assert.Single(AttachmentFolder.Faults(shop.Book, shop.Folder)),
            StringComparison.Ordinal);
        File.Delete(path);
        Assert.Contains("not on this machine", Assert.Single(AttachmentFolder.Faults(shop.Book, shop.Folder)), StringComparison.Ordinal);
        Keep(shop, "material scent");
        Assert.Empty(AttachmentFolder.Faults(shop.Book, shop.Folder));
    }

    [Fact]
    public void A_copy_of_the_workshop_has_the_papers_and_a_copy_that_lacks_one_says_so()
    {
        using var shop = new TestShop();
        shop.Stock();
        var kept = Keep(shop, "business");
        var copy = Path.Combine(_elsewhere, "copy.zip");
        Assert.Empty(WorkshopCopy.Backup(shop.Folder, copy).Differences);
        var fresh = Path.Combine(_elsewhere, "fresh");
        Assert.Empty(WorkshopCopy.Restore(fresh, copy).Differences);
        Assert.Equal(Paper, File.ReadAllBytes(AttachmentFolder.PathOf(fresh, kept)));
        File.Delete(AttachmentFolder.PathOf(shop.Folder, kept));
        Assert.Single(WorkshopCopy.Backup(shop.Folder, copy).Differences);
    }

    [Fact]
    public void The_list_goes_out_and_comes_in_again()
    {
        using var shop = new TestShop();
        Keep(shop, "material scent", until: new DateOnly(2027, 3, 1));
        BookFolder.Write(shop.Book.Read(), _elsewhere);
        using var other = new TestShop();
        Assert.Equal((1, 0), ListImport.ReadFiles(other.Book, [Path.Combine(_elsewhere, "attachment.csv")], TestShop.Day, "B"));
        var back = Assert.Single(other.Book.Ask(b => b.Attachments()));
        Assert.Equal(("material scent", "certificate", "Certificate 3.PDF", "3", new DateOnly(2027, 3, 1)),
            (back.About, back.Kind, back.FileName, back.Revision, back.BestBefore));
        Assert.Equal((0, 1), ListImport.ReadFiles(other.Book, [Path.Combine(_elsewhere, "attachment.csv")], TestShop.Day, "B"));
    }

    [Fact]
    public void A_paper_is_struck_and_never_changed()
    {
        using var shop = new TestShop();
        var kept = Keep(shop, "material scent");
        Correcting.Of(shop.Book, Shipped.Markets, BookLists.Attachment, kept.Id, new Dictionary<string, string> { ["revision"] = "4" },
            "read wrong",
            TestShop.Day, "A");
        Assert.Equal("4", Assert.Single(shop.Book.Ask(b => b.AttachmentsOf("material scent"))).Revision);
    }

    [Theory]
    [InlineData("M1", "M1")]
    [InlineData("castor-oil", "material castor-oil")]
    [InlineData("bar", "product bar")]
    [InlineData(" business ", "business")]
    public void What_a_person_names_is_found(string named, string about)
    {
        using var shop = new TestShop();
        shop.Stock();
        Assert.Equal(about, shop.Book.Ask(b => AttachedTo.Find(shop.Workshop, b, named)));
    }

    [Fact]
    public void What_is_not_there_cannot_have_a_paper()
    {
        using var shop = new TestShop();
        var problem = Assert.Throws<InputException>(() => shop.Book.Ask(b => AttachedTo.Find(shop.Workshop, b, "tallow"))).Problem;
        Assert.Contains("M3", problem.Write, StringComparison.Ordinal);
    }
}
