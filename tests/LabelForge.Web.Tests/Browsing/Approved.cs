using SkiaSharp;

namespace LabelForge.Web.Tests.Browsing;

/// <summary>Pictures of pages that somebody looked at and approved; the documentation shows the same files.</summary>
/// <remarks>
/// Compared at a quarter of their size, where a letter drawn a shade otherwise by another version of the browser does not count and
/// a thing moved, missing or recoloured does. <c>LABELFORGE_APPROVE=1</c> writes them anew, to be looked at before they are committed.
/// </remarks>
internal static class Approved
{
    // Of a quarter-size picture's dots, how many may differ by more than a fifth of black to white.
    private const double MostOff = 0.004;

    // And never as many as a button has, however long the page is.
    private const int MostDots = 400;
    private const int Noticeable = 51;

    /// <summary>What is wrong with a picture; null where it is as approved.</summary>
    /// <param name="name">The file's name without its ending.</param>
    /// <param name="received">The picture as PNG.</param>
    public static string? Differs(string name, byte[] received)
    {
        var path = Path.Combine(Folder, name + ".png");
        if (Environment.GetEnvironmentVariable("LABELFORGE_APPROVE") == "1")
        {
            Directory.CreateDirectory(Folder);
            File.WriteAllBytes(path, received);
        }
        if (!File.Exists(path))
            return $"{name}: there is no approved picture {path}";
        using var one = Small(File.ReadAllBytes(path));
        using var other = Small(received);
        var share = (one.Width, one.Height) == (other.Width, other.Height) ? Off(one, other) : 1;
        if (share <= Math.Min(MostOff, (double)MostDots / (one.Width * one.Height)))
            return null;
        var kept = Path.Combine(Path.GetTempPath(), $"labelforge-received-{name}.png");
        File.WriteAllBytes(kept, received);
        return FormattableString.Invariant($"{name}: {share:P1} of the picture differ; compare {path} with {kept}");
    }

    /// <summary>Where they lie.</summary>
    public static string Folder
    {
        get
        {
            var folder = new DirectoryInfo(AppContext.BaseDirectory);
            while (!File.Exists(Path.Combine(folder!.FullName, "LabelForge.sln")))
                folder = folder.Parent;
            return Path.Combine(folder.FullName, "docs", "pages");
        }
    }

    private static SKBitmap Small(byte[] png)
    {
        using var full = SKBitmap.Decode(png);
        return full.Resize(new SKImageInfo((full.Width + 3) / 4, (full.Height + 3) / 4, SKColorType.Rgba8888, SKAlphaType.Opaque),
            new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.Linear));
    }

    private static double Off(SKBitmap one, SKBitmap other)
    {
        var a = one.GetPixelSpan();
        var b = other.GetPixelSpan();
        var off = 0;
        for (var i = 0; i < a.Length; i += 4)
        {
            if (Math.Abs(a[i] - b[i]) > Noticeable
                || Math.Abs(a[i + 1] - b[i + 1]) > Noticeable
                || Math.Abs(a[i + 2] - b[i + 2]) > Noticeable)
                off++;
        }
        return (double)off / (a.Length / 4);
    }
}
