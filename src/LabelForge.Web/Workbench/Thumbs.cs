using System.Collections.Concurrent;
using System.Security.Cryptography;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Web.Editing;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace LabelForge.Web.Workbench;

/// <summary>The front of each product's label, small, for lists: drawn once for the files as they
/// stand, away from the thread that draws pages.</summary>
public sealed class Thumbs
{
    // Two dots to a pixel of the page's largest: as sharp on a fine screen, and on paper.
    private const int Longest = 2 * 148;
    private const int MostKept = 300;

    private readonly ConcurrentDictionary<string, Thumb> _of = [];
    private readonly ConcurrentDictionary<string, byte[]> _png = [];
    private readonly SemaphoreSlim _one = new(1);
    private readonly OpenDocuments _documents;
    private readonly WorkshopCache _cache;
    private readonly LabelViews _views;
    private readonly Choices _choices;
    private int _version;

    /// <summary>Thumbs of the workshop whose files are open.</summary>
    public Thumbs(OpenDocuments documents, WorkshopCache shelf, LabelViews views, Choices choices)
    {
        (_documents, _cache, _views, _choices) = (documents, shelf, views, choices);
        documents.Changed += () => Interlocked.Increment(ref _version);
    }

    /// <summary>Told when one was drawn, on any thread.</summary>
    public event Action? Drawn;

    /// <summary>A front.</summary>
    /// <param name="Address">Where it is served; null where the label cannot be drawn.</param>
    /// <param name="Wide">How wide it is in proportion.</param>
    /// <param name="High">How high.</param>
    public sealed record Picture(string? Address, decimal Wide, decimal High);

    private sealed record Thumb(int Version, Picture? Picture);

    /// <summary>The picture of a product's front; null until it is drawn. An older one is shown while a newer is made.</summary>
    /// <param name="product">The product, as <see cref="ProductChoices"/> names it.</param>
    public Picture? Of(string product)
    {
        var version = Volatile.Read(ref _version);
        var known = _of.GetValueOrDefault(product);
        if (known?.Version != version)
        {
            // Claimed, so that it is drawn once; a second page waits for the same.
            _of[product] = new Thumb(version, known?.Picture);
            _ = Task.Run(() => Make(product, version));
        }
        return known?.Picture;
    }

    internal static void Map(IEndpointRouteBuilder app) => app.MapGet("/thumbs/{key}.png", (HttpContext context, string key) =>
    {
        if (!context.RequestServices.GetRequiredService<Thumbs>()._png.TryGetValue(key, out var png))
            return Results.NotFound();
        // The address is made of what is in it: it never changes.
        context.Response.Headers.CacheControl = "private, max-age=86400, immutable";
        return Results.Bytes(png, "image/png");
    });

    private async Task Make(string product, int version)
    {
        await _one.WaitAsync();
        try
        {
            var picture = Draw(product);
            if (_of.TryGetValue(product, out var now) && now.Version == version)
                _of[product] = new Thumb(version, picture);
        }
        finally
        {
            _one.Release();
        }
        Drawn?.Invoke();
    }

    private Picture Draw(string product)
    {
        var at = product.IndexOf('/');
        var (id, variant) = at < 0 ? (product, null) : (product[..at], product[(at + 1)..]);
        try
        {
            if (_cache.Read().Workshop is not { } workshop || _documents.Open(OpenDocuments.Recipes, id) is not { Problem: null } file)
                return new Picture(null, 1, 1);
            var job = _views.Prepare(workshop, id, file.Text, new LabelWish(Design: _choices.Of(id).Design, Variant: variant), out _);
            return job.Fit is Fit.Fits fits ? Front(fits.Layout) : new Picture(null, 1, 1);
        }
        catch (InputException)
        {
            // What is wrong is told where it is edited.
            return new Picture(null, 1, 1);
        }
    }

    private Picture Front(LabelLayout layout)
    {
        var part = FrontPicture.Panel(layout.Design);
        using var png = new MemoryStream();
        LabelFile.WriteSmallPng(png, layout.OnStock(), part, Longest);
        var bytes = png.ToArray();
        var key = Convert.ToHexStringLower(SHA256.HashData(bytes))[..32];
        if (_png.Count > MostKept)
            _png.Clear();
        _png[key] = bytes;
        return new Picture($"/thumbs/{key}.png", (part?.Width ?? layout.Design.Width).Millimetres,
            (part?.Height ?? layout.Design.Height).Millimetres);
    }
}
