using LabelForge.Print.Barcodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace LabelForge.Web.Serving;

/// <summary>Reads the code in a camera's picture. The page sends it to this program, which keeps nothing of it.</summary>
internal static class CodeReading
{
    /// <summary>Where pictures are sent.</summary>
    public const string Path = "/read-code";

    /// <summary>The header that says how wide and high the picture is: <c>640x480</c>.</summary>
    public const string SizeHeader = "X-Picture";

    // Reading takes a processor for tens of milliseconds; a window more than these waits.
    private static readonly SemaphoreSlim Turns = new(2);

    /// <summary>Answers with what the code says, or with nothing where none is read.</summary>
    public static void Map(IEndpointRouteBuilder app) => app.MapPost(Path, (Delegate)Answer);

    private static async Task<IResult> Answer(HttpContext context)
    {
        if (SizeOf(context.Request.Headers[SizeHeader]) is not var (width, height)
            || context.Request.ContentLength != (long)width * height)
            return Results.BadRequest();
        var grey = new byte[width * height];
        await Turns.WaitAsync(context.RequestAborted);
        try
        {
            await context.Request.Body.ReadExactlyAsync(grey, context.RequestAborted);
            var read = await Task.Run(() => SymbolReader.Read(grey, width, height));
            return read is null ? Results.NoContent() : Results.Text(read);
        }
        finally
        {
            Turns.Release();
        }
    }

    private static (int Width, int Height)? SizeOf(string? written) => written?.Split('x') is [var w, var h]
        && PlainFigure.Whole(w) is { } width
        && PlainFigure.Whole(h) is { } height
        && width > 0 && height > 0 && (long)width * height <= SymbolReader.MostPixels ? (width, height) : null;
}
