namespace LabelForge.Web.Serving;

/// <summary>A made-up workshop to play in: a page of its own on a folder of its own, which is gone when the program ends.</summary>
public sealed class SampleWorkshop(ServeOptions options) : IAsyncDisposable
{
    private readonly SemaphoreSlim _one = new(1);
    private PageServer? _page;
    private string? _folder;

    /// <summary>Whether one comes with the program.</summary>
    public bool IsThere => options.WriteSample is not null;

    /// <summary>Opens it, once, and gives an address that lets in.</summary>
    public async Task<Uri> OpenAsync()
    {
        await _one.WaitAsync();
        try
        {
            if (_page is null)
            {
                _folder = Directory.CreateTempSubdirectory("labelforge-made-up-").FullName;
                options.WriteSample!(_folder);
                _page = await PageServer.StartAsync(new ServeOptions(_folder, 0) { Today = options.Today, IsSample = true });
            }
            return _page.Entrance;
        }
        finally
        {
            _one.Release();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (_page is not null)
            await _page.DisposeAsync();
        if (_folder is not null)
            Directory.Delete(_folder, recursive: true);
        _one.Dispose();
    }
}
