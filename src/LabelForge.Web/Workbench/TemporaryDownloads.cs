using System.Collections.Concurrent;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;

namespace LabelForge.Web.Workbench;

/// <summary>Pictures and documents made for a page, kept in memory for a while under addresses that cannot be guessed.</summary>
public sealed class TemporaryDownloads
{
    private const int MostKept = 400;
    private const long MostBytes = 60_000_000;

    private const string Svg = "image/svg+xml";

    private readonly ConcurrentDictionary<string, (byte[] Bytes, string Type)> _kept = [];
    private readonly ConcurrentQueue<string> _order = new();
    private long _bytes;

    /// <summary>Keeps a paper and gives its address. The oldest make room.</summary>
    /// <param name="bytes">The paper.</param>
    /// <param name="type">Its media type.</param>
    /// <param name="name">The name that a saved copy gets; letters, digits, hyphens and a full stop.</param>
    public string Put(byte[] bytes, string type, string name)
    {
        // The address of a picture is made of what is in it: the same label, opened again, is not fetched again.
        var key = Convert.ToHexStringLower(type == Svg ? SHA256.HashData(bytes).AsSpan(0, 16) : RandomNumberGenerator.GetBytes(16));
        if (!_kept.TryAdd(key, (bytes, type)))
            return $"/papers/{key}/{name}";
        _order.Enqueue(key);
        Interlocked.Add(ref _bytes, bytes.Length);
        while ((_order.Count > MostKept || Interlocked.Read(ref _bytes) > MostBytes) && _order.Count > 1 && _order.TryDequeue(out var old))
        {
            if (_kept.TryRemove(old, out var gone))
                Interlocked.Add(ref _bytes, -gone.Bytes.Length);
        }
        return $"/papers/{key}/{name}";
    }

    internal static void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/papers/{key}/{name}", (HttpContext context, string key, string name) =>
        {
            if (!context.RequestServices.GetRequiredService<TemporaryDownloads>()._kept.TryGetValue(key, out var paper))
                return Results.NotFound();
            if (paper.Type == Svg)
                context.Response.Headers.CacheControl = "private, max-age=86400, immutable";
            return Results.Bytes(paper.Bytes, paper.Type);
        });

    /// <summary>Whether what was put under an address is still kept.</summary>
    public bool Has(string address) => address.Split('/') is [_, _, var key, _] && _kept.ContainsKey(key);
}
