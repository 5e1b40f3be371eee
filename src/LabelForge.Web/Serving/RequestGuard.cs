using Microsoft.AspNetCore.Http;

namespace LabelForge.Web.Serving;

/// <summary>Lets in only what comes from the page itself.</summary>
/// <remarks>
/// A page elsewhere on the web may send this address requests from the maker's own browser. It cannot choose what the browser
/// writes into Host and Origin: a name of its own that points here fails by its Host, a form or a socket by its Origin.
/// </remarks>
public sealed class RequestGuard(RequestDelegate next, RequestGuard.Door door)
{
    private const string Hub = "/_blazor";

    /// <summary>The port that is served; 0 until it is known.</summary>
    public sealed class Door
    {
        /// <summary>The port.</summary>
        public int Port { get; set; }
    }

    /// <summary>Refuses what does not come from the page, and hands on the rest.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        var request = context.Request;
        var host = request.Host;
        if (host.Host is not ("127.0.0.1" or "localhost") || host.Port != door.Port)
            return Refuse(context, "This page answers to 127.0.0.1 and localhost on its own port only.");
        var origin = request.Headers.Origin;
        if (origin.Count > 1 || (origin.Count == 1 && origin[0] != $"http://{host.Value}"))
            return Refuse(context, "Requests from other pages are refused.");
        var changes = !(HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method));
        if (origin.Count == 0 && (changes || context.WebSockets.IsWebSocketRequest || request.Headers.Upgrade.Count > 0))
            return Refuse(context, "Requests that do not say where they come from are refused.");
        if (request.Headers["Sec-Fetch-Site"] is ["cross-site" or "same-site"] && request.Path.StartsWithSegments(Hub, StringComparison.Ordinal))
            return Refuse(context, "Requests from other pages are refused.");
        return next(context);
    }

    private static Task Refuse(HttpContext context, string why)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return context.Response.WriteAsync(why);
    }
}
