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

    private const string Style = "page.css";
    private const string Framework = "blazor.web.js";

    /// <summary>The faces that the page is set in, each a file. Every page has words in each.</summary>
    public static ImmutableArray<string> Faces { get; } =
        ["Alegreya-Medium.ttf", "Alegreya-Bold.ttf", "BarlowCondensed-Medium.ttf", "BarlowCondensed-SemiBold.ttf"];

    private static readonly FrozenDictionary<string, (byte[] Bytes, string Tag)> Files = Load();

    /// <summary>The address of a file as it is in this version of the program: what it answers never changes, so a browser asks for it
    /// once.</summary>
    /// <param name="name">The file's name.</param>
    public static string Address(string name) =>
        $"{(name == Framework ? "/_framework/" : "/assets/")}{name}?v={Files[name].Tag}";

    /// <summary>Serves each under its name.</summary>
    public static void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/_framework/" + Framework, (HttpContext c) => Send(c, Framework));
        app.MapGet("/assets/{name}", (HttpContext c, string name) => Send(c, name));
        app.MapGet("/favicon.ico", (HttpContext c) => Send(c, "mark.svg"));
    }

    private static IResult Send(HttpContext context, string name)
    {
        if (!Files.TryGetValue(name, out var file))
            return Results.NotFound();
        // By its whole address it is fetched once. By its name alone it is asked for again each time and answered with "unchanged": a
        // new version of the program is never shown with an old style.
        context.Response.Headers.CacheControl =
            context.Request.Query["v"] == file.Tag ? "private, max-age=31536000, immutable" : "no-cache";
        return Results.Bytes(file.Bytes, TypeOf(name), entityTag: new EntityTagHeaderValue($"\"{file.Tag}\""));
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
        var type = Faces.Select(f => (Name: f, Bytes: Templates.Bytes($"fonts/{f}")));
        var files = own.Concat(type).ToDictionary(f => f.Name, f => (f.Bytes, Tag: TagOf(f.Bytes)));
        // The style names the letters by their whole addresses.
        var style = Encoding.UTF8.GetBytes(Faces.Aggregate(Encoding.UTF8.GetString(files[Style].Bytes),
            (text, face) => text.Replace(face, $"{face}?v={files[face].Tag}", StringComparison.Ordinal)));
        files[Style] = (style, TagOf(style));
        return files.ToFrozenDictionary();
    }

    private static string TagOf(byte[] bytes) => Convert.ToHexString(SHA256.HashData(bytes))[..16];
}
