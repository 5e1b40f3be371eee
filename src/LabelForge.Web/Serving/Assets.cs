using System.Collections.Frozen;
using System.Security.Cryptography;
using LabelForge.Print;
using LabelForge.Print.Designs;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace LabelForge.Web.Serving;

/// <summary>Styles, scripts, pictures and type of the page, from inside the program. Nothing is fetched from anywhere else.</summary>
internal static class Assets
{
    private const string Root = "assets/";

    private static readonly FrozenDictionary<string, (byte[] Bytes, string Tag)> Files = Load();

    /// <summary>Serves each under its name.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/_framework/blazor.web.js", (HttpContext c) => Send(c, "blazor.web.js"));
        app.MapGet("/assets/{name}", (HttpContext c, string name) => Send(c, name));
        app.MapGet("/favicon.ico", (HttpContext c) => Send(c, "mark.svg"));
    }

    private static IResult Send(HttpContext context, string name)
    {
        if (!Files.TryGetValue(name, out var file))
            return Results.NotFound();
        // Asked for again each time, answered with "unchanged": a new version of the program is never shown with an old style.
        context.Response.Headers.CacheControl = "no-cache";
        return Results.Bytes(file.Bytes, TypeOf(name), entityTag: new EntityTagHeaderValue(file.Tag));
    }

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".ttf" => "font/ttf",
        _ => "application/octet-stream",
    };

    private static FrozenDictionary<string, (byte[] Bytes, string Tag)> Load()
    {
        var assembly = typeof(Assets).Assembly;
        var own = assembly.GetManifestResourceNames().Where(n => n.StartsWith(Root, StringComparison.Ordinal)).Select(n =>
        {
            using var stream = assembly.GetManifestResourceStream(n)!;
            using var copy = new MemoryStream();
            stream.CopyTo(copy);
            return (Name: n[Root.Length..], Bytes: copy.ToArray());
        });
        var type = new[] { "Alegreya-Medium.ttf", "Alegreya-Bold.ttf", "BarlowCondensed-Medium.ttf", "BarlowCondensed-SemiBold.ttf" }
            .Select(f => (Name: f, Bytes: Templates.Bytes($"fonts/{f}")));
        return own.Concat(type)
            .ToFrozenDictionary(f => f.Name, f => (f.Bytes, $"\"{Convert.ToHexString(SHA256.HashData(f.Bytes))[..16]}\""));
    }
}
