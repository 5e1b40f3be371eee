using Microsoft.AspNetCore.Http;

namespace LabelForge.Web.Serving;

/// <summary>What every answer tells the browser to refuse: scripts and styles that are not ours,
/// frames, guesses at content, sending our address on.</summary>
public sealed class PageHeaders(RequestDelegate next)
{
    /// <summary>Writes the headers and hands on.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        context.Response.OnStarting(() =>
        {
            var headers = context.Response.Headers;
            var host = context.Request.Host.Value;
            // A PDF is shown by the browser's own viewer, which a policy for pages would stop from working; it holds no script of ours.
            if (context.Response.ContentType != "application/pdf")
            {
                headers.ContentSecurityPolicy =
                    $"default-src 'self'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' data: blob:; connect-src "
                        + $"'self' ws://{host}; object-src 'none'; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";
            }
            headers.XContentTypeOptions = "nosniff";
            headers.XFrameOptions = "DENY";
            headers["Referrer-Policy"] = "no-referrer";
            headers["Cross-Origin-Opener-Policy"] = "same-origin";
            headers["Cross-Origin-Resource-Policy"] = "same-origin";
            headers["Permissions-Policy"] = "camera=(self), microphone=(), geolocation=(), usb=()";
            if (headers.CacheControl.Count == 0)
                headers.CacheControl = "no-store";
            return Task.CompletedTask;
        });
        return next(context);
    }
}
