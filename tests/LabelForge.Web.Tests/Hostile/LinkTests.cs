using LabelForge.Measures;
using LabelForge.Web.Serving;

namespace LabelForge.Web.Tests.Hostile;

/// <summary>A workshop from elsewhere, with links in the place of the page's own files.</summary>
public sealed class LinkTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-web-").FullName;
    private readonly string _outside = Directory.CreateTempSubdirectory("labelforge-outside-").FullName;

    public void Dispose()
    {
        Directory.Delete(_folder, recursive: true);
        Directory.Delete(_outside, recursive: true);
    }

    [Fact]
    public async Task A_link_in_the_place_of_the_address_is_taken_away_and_its_target_is_not_touched()
    {
        var diary = Path.Combine(_outside, "diary.txt");
        await File.WriteAllTextAsync(diary, "Dear diary");
        var link = Path.Combine(_folder, WorkshopLock.FileName + "-address");
        File.CreateSymbolicLink(link, diary);
        await using (var page = await PageServer.StartAsync(new ServeOptions(_folder, 0)))
        {
            Assert.Null(new FileInfo(link).LinkTarget);
            Assert.Equal("Dear diary", await File.ReadAllTextAsync(diary));
        }
        Assert.Equal("Dear diary", await File.ReadAllTextAsync(diary));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_link_in_the_place_of_the_hold_is_refused(bool isThere)
    {
        var diary = Path.Combine(_outside, "diary.txt");
        if (isThere)
            await File.WriteAllTextAsync(diary, "Dear diary");
        File.CreateSymbolicLink(Path.Combine(_folder, WorkshopLock.FileName), diary);
        var refused = await Assert.ThrowsAsync<InputException>(() => PageServer.StartAsync(new ServeOptions(_folder, 0)));
        Assert.Contains("is a link to", refused.Message, StringComparison.Ordinal);
        Assert.Equal(isThere, File.Exists(diary));
    }

    [Fact]
    public void The_hold_is_never_taken_away_so_that_two_pages_cannot_hold_one_workshop()
    {
        var path = Path.Combine(_folder, WorkshopLock.FileName);
        var first = WorkshopLock.Take(_folder);
        first.Dispose();
        Assert.True(File.Exists(path));
        using var second = WorkshopLock.Take(_folder);
        Assert.Throws<InputException>(() => WorkshopLock.Take(_folder));
    }
}
