using LabelForge.Print.Drawing;

namespace LabelForge.Print.Jobs;

/// <summary>Reads a maker's own art for a design: SVG, PNG or JPEG beside the design's file.</summary>
public static class ArtFile
{
    private const long LargestFile = 5_000_000;

    // Decoded, a picture of this many pixels takes 100 MB.
    private const long MostPixels = 25_000_000;

    /// <summary>Reads a picture.</summary>
    /// <param name="folder">The folder of designs; what lies outside it is refused.</param>
    /// <param name="file">The file's name in it.</param>
    /// <exception cref="InputException">The file is not there, too large, or no picture that can be printed.</exception>
    public static ArtBlock Read(string folder, string file)
    {
        if (file.Any(char.IsControl))
            throw Refusal("", "art.unseen-sign-in-name");
        var path = Path.GetFullPath(Path.Combine(folder, file));
        if (!path.StartsWith(Path.GetFullPath(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw Refusal(file, "art.outside-folder");
        if (!File.Exists(path))
            throw Refusal(file, "art.no-such-file");
        // A workshop that somebody sends along must not print what lies elsewhere on this machine.
        if (Linked(path, Path.GetFullPath(folder)))
            throw Refusal(file, "art.link");
        if (new FileInfo(path).Length > LargestFile)
            throw Refusal(file, "art.too-large");
        return Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".svg" => SvgArt.Read(path, file),
            ".png" or ".jpg" or ".jpeg" => Pixels(path, file),
            var other => throw Refusal(file, "art.unknown-format", ("other", other)),
        };
    }

    private static bool Linked(string path, string folder)
    {
        for (FileSystemInfo at = new FileInfo(path); at.FullName.Length > folder.Length; at =
            new DirectoryInfo(Path.GetDirectoryName(at.FullName)!))
        {
            if (at.LinkTarget is not null)
                return true;
        }
        return false;
    }

    internal static InputException Refusal(string file, string code, params ReadOnlySpan<(string Name, object? Value)> arguments) =>
        new($"designs/{file}", 0, code, arguments);

    private static ArtBlock Pixels(string path, string file)
    {
        var bytes = File.ReadAllBytes(path);
        using var decoded = GivenPicture.Decode(bytes, MostPixels, $"designs/{file}").Dots;
        return new ArtBlock(decoded.Width, decoded.Height) { Image = [.. bytes] };
    }
}
