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

    private sealed record Paper(string Key, byte[] Bytes, string Type);

    private readonly Lock _gate = new();
    private readonly Dictionary<string, LinkedListNode<Paper>> _kept = [];
    // The one that was wanted last stands last.
    private readonly LinkedList<Paper> _order = new();
    private long _bytes;

    /// <summary>Keeps a paper and gives its address. Those that nobody wanted for longest make room.</summary>
    /// <param name="bytes">The paper.</param>
    /// <param name="type">Its media type.</param>
    /// <param name="name">The name that a saved copy gets; letters, digits, hyphens and a full stop.</param>
    public string Put(byte[] bytes, string type, string name)
    {
        // The address of a picture is made of what is in it: the same label, opened again, is not fetched again.
        var key = Convert.ToHexStringLower(type == Svg ? SHA256.HashData(bytes).AsSpan(0, 16) : RandomNumberGenerator.GetBytes(16));
        lock (_gate)
        {
            if (Wanted(key) is null)
            {
                _kept[key] = _order.AddLast(new Paper(key, bytes, type));
                _bytes += bytes.Length;
                while ((_order.Count > MostKept || _bytes > MostBytes) && _order is { Count: > 1, First: { } oldest })
                {
                    _order.Remove(oldest);
                    _kept.Remove(oldest.Value.Key);
                    _bytes -= oldest.Value.Bytes.Length;
                }
            }
        }
        return $"/papers/{key}/{name}";
    }

    internal static void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/papers/{key}/{name}", (HttpContext context, string key, string name) =>
        {
            if (context.RequestServices.GetRequiredService<TemporaryDownloads>().Of(key) is not { } paper)
                return Results.NotFound();
            if (paper.Type == Svg)
                context.Response.Headers.CacheControl = "private, max-age=86400, immutable";
            return Results.Bytes(paper.Bytes, paper.Type);
        });

    /// <summary>Whether what was put under an address is still kept; it is wanted again then.</summary>
    public bool Has(string address) => address.Split('/') is [_, _, var key, _] && Of(key) is not null;

    private Paper? Of(string key)
    {
        lock (_gate)
            return Wanted(key);
    }

    private Paper? Wanted(string key)
    {
        if (!_kept.TryGetValue(key, out var paper))
            return null;
        _order.Remove(paper);
        _order.AddLast(paper);
        return paper.Value;
    }
}
