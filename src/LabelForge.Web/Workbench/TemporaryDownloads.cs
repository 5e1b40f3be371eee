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

    private readonly ConcurrentDictionary<string, (byte[] Bytes, string Type)> _kept = [];
    private readonly ConcurrentQueue<string> _order = new();
    private long _bytes;

    /// <summary>Keeps a paper and gives its address. The oldest make room.</summary>
    /// <param name="bytes">The paper.</param>
    /// <param name="type">Its media type.</param>
    /// <param name="name">The name that a saved copy gets; letters, digits, hyphens and a full stop.</param>
    public string Put(byte[] bytes, string type, string name)
    {
        var key = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));
        _kept[key] = (bytes, type);
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
            context.RequestServices.GetRequiredService<TemporaryDownloads>()._kept.TryGetValue(key, out var paper)
                ? Results.Bytes(paper.Bytes, paper.Type)
                : Results.NotFound());
}
