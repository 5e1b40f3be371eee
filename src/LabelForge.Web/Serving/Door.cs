using System.Security.Cryptography;

namespace LabelForge.Web.Serving;

/// <summary>Who is let in: whoever came through the address that the program showed. Others who
/// may log in to the machine do not know it.</summary>
/// <remarks>
/// The first visit turns the key in the address into a cookie, which the browser sends to this page alone (SameSite=Strict) and no
/// script can read. The address that a browser is started with can be seen by everyone in the list of running programs, so that one
/// holds a key of its own that opens once; the key shown on the terminal opens as often as needed.
/// </remarks>
public sealed class Door
{
    /// <summary>Where the key is given: <c>/open/KEY</c>.</summary>
    public const string Path = "/open/";

    private static readonly TimeSpan OnceLasts = TimeSpan.FromMinutes(2);

    private readonly Lock _gate = new();
    private readonly string _key = NewKey();
    private readonly string _inside = NewKey();
    private (string Key, DateTime Until)? _once;

    /// <summary>The port that is served; 0 until it is known.</summary>
    public int Port { get; set; }

    /// <summary>The cookie's name. Cookies know no ports, so the name tells one page from another.</summary>
    public string CookieName => FormattableString.Invariant($"labelforge-{Port}");

    /// <summary>What the cookie holds.</summary>
    public string CookieValue => _inside;

    /// <summary>The address to show: it lets in whoever has it, as long as the page is served.</summary>
    public Uri Entrance => At(_key);

    /// <summary>An address that lets in one browser, once, and soon.</summary>
    public Uri EntranceOnce()
    {
        lock (_gate)
        {
            var key = NewKey();
            _once = (key, DateTime.UtcNow + OnceLasts);
            return At(key);
        }
    }

    /// <summary>Whether a key opens. One that opens once is used up by it.</summary>
    public bool Opens(string key)
    {
        if (Same(key, _key))
            return true;
        lock (_gate)
        {
            if (_once is not { } once || !Same(key, once.Key) || DateTime.UtcNow > once.Until)
                return false;
            _once = null;
            return true;
        }
    }

    /// <summary>Whether a browser has been let in already.</summary>
    public bool Knows(string? cookie) => cookie is not null && Same(cookie, _inside);

    private Uri At(string key) => new($"http://127.0.0.1:{Port}{Path}{key}");

    private static string NewKey() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(24));

    // Takes as long for a wrong key as for a right one.
    private static bool Same(string given, string own) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(given), Encoding.UTF8.GetBytes(own));
}
