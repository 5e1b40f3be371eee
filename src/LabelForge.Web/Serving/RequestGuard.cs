using Microsoft.AspNetCore.Http;

namespace LabelForge.Web.Serving;

/// <summary>Lets in only what comes from the page itself, in a browser that came through its address.</summary>
/// <remarks>
/// A page elsewhere on the web may send this address requests from the maker's own browser. It cannot choose what the browser
/// writes into Host and Origin: a name of its own that points here fails by its Host, a form or a socket by its Origin. Another
/// user of the machine can write whatever he likes into both; he lacks the cookie.
/// </remarks>
public sealed class RequestGuard(RequestDelegate next, Door door)
{
    private const string Hub = "/_blazor";

    // Not an answer that sends on: a browser that was led here from elsewhere would not take a strict cookie along.
    private const string Entered = """
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><title>LabelForge</title><meta http-equiv="refresh" content="0;url=/"></head>
        <body><p><a href="/">Go to the workshop</a></p></body></html>
        """;

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
        if (request.Headers["Sec-Fetch-Site"] is ["cross-site" or "same-site"]
            && request.Path.StartsWithSegments(Hub, StringComparison.Ordinal))
            return Refuse(context, "Requests from other pages are refused.");
        if (!changes && request.Path.Value is { } path && path.StartsWith(Door.Path, StringComparison.Ordinal))
            return Enter(context, path[Door.Path.Length..]);
        if (!door.Knows(request.Cookies[door.CookieName]))
            return Refuse(context,
                "Open the page by the whole address that \"labelforge serve\" shows; this browser has not come through it yet.");
        return next(context);
    }

    private Task Enter(HttpContext context, string key)
    {
        if (!door.Opens(key))
            return Refuse(context,
                "This address does not open the page: it was used before, or the page was started anew. Open the one that \"labelforge "
                    + "serve\" shows on its terminal.");
        context.Response.Cookies
            .Append(door.CookieName, door.CookieValue,
                new CookieOptions { HttpOnly = true, SameSite = SameSiteMode.Strict, Path = "/", IsEssential = true });
        context.Response.ContentType = "text/html; charset=utf-8";
        return context.Response.WriteAsync(Entered);
    }

    private static Task Refuse(HttpContext context, string why)
    {
        context.Response.StatusCode = StatusCodes.Status403Forbidden;
        context.Response.ContentType = "text/plain; charset=utf-8";
        context.Response.Headers.XContentTypeOptions = "nosniff";
        return context.Response.WriteAsync(why);
    }
}
