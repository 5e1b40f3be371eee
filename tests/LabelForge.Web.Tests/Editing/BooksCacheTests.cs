using LabelForge.Measures;
using LabelForge.Records.Books;
using LabelForge.Web.Editing;
using LabelForge.Web.Serving;
using LabelForge.Web.Workbench;

namespace LabelForge.Web.Tests.Editing;

/// <summary>The books are put away after the last who looks into them.</summary>
public sealed class BooksCacheTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-books-").FullName;
    private readonly OpenDocuments _documents;
    private readonly BooksCache _books;

    public BooksCacheTests()
    {
        Browsing.Window.WriteExample(_folder);
        OpenBooks.Open(_folder).Ask(b => b);
        _documents = new OpenDocuments(new ServeOptions(_folder, 0) { Today = () => new DateOnly(2026, 11, 25) });
        _books = new BooksCache(_documents);
    }

    public void Dispose()
    {
        _documents.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [Fact]
    public async Task What_looks_into_the_books_is_waited_for_before_they_are_put_away_and_nothing_looks_into_them_after()
    {
        using var asked = new SemaphoreSlim(0);
        using var goOn = new SemaphoreSlim(0);
        var question = Task.Run(() => _books.Ask(_ =>
        {
            asked.Release();
            goOn.Wait();
            return "answered";
        }));
        await asked.WaitAsync(TestContext.Current.CancellationToken);
        var away = Task.Run(_books.Dispose);
        // Nobody is let in once it began, though one is still inside.
        await Browsing.Window.UntilAsync(() => _books.Asked(_ => false, otherwise: true), "the books are put away");
        Assert.False(away.IsCompleted);
        goOn.Release();
        Assert.Equal("answered", await question);
        await away;
        await Assert.ThrowsAsync<OperationCanceledException>(() => _books.WriteAsync(_ => 0));
        Assert.Throws<OperationCanceledException>(() => _books.Ask(_ => 0));
        _books.Dispose();
    }

    [Theory]
    [InlineData("books.busy")]
    [InlineData("books.disk-error")]
    public async Task What_could_not_be_asked_is_asked_again_though_nothing_was_written(string trouble)
    {
        var before = _books.Version;
        Assert.Equal(7, _books.Asked<int>(_ => throw new InputException(trouble), otherwise: 7));
        Assert.Equal(trouble, _books.Trouble?.Code);
        await Browsing.Window.UntilAsync(() => _books.Version > before, "pages are told to ask again");
        Assert.Equal(8, _books.Asked(_ => 8, otherwise: 7));
        Assert.Null(_books.Trouble);
        _books.Dispose();
    }
}
