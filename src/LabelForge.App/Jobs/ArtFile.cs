using LabelForge.Measures;
using LabelForge.Print.Drawing;
using SkiaSharp;

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
            throw Refusal("", "The name of a file of art holds a sign that cannot be seen.", "Put it beside the design and write its name: file: leaf.svg");
        var path = Path.GetFullPath(Path.Combine(folder, file));
        if (!path.StartsWith(Path.GetFullPath(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw Refusal(file, "The file lies outside the folder of designs.", "Put it beside the design and write its name: file: leaf.svg");
        if (!File.Exists(path))
            throw Refusal(file, "The file is not there.", "Put it beside the design and write its name: file: leaf.svg");
        // A workshop that somebody sends along must not print what lies elsewhere on this machine.
        if (Linked(path, Path.GetFullPath(folder)))
            throw Refusal(file, "The file is a link to one elsewhere.", "Put the file itself beside the design.");
        if (new FileInfo(path).Length > LargestFile)
            throw Refusal(file, "The file is larger than 5 MB.", "Save it smaller: a label needs 600 dots to the inch at most.");
        return Path.GetExtension(path).ToLowerInvariant() switch
        {
            ".svg" => SvgArt.Read(path, file),
            ".png" or ".jpg" or ".jpeg" => Pixels(path, file),
            var other => throw Refusal(file, $"Art cannot be read from \"{other}\".", "Save it as SVG, PNG or JPEG."),
        };
    }

    private static bool Linked(string path, string folder)
    {
        for (FileSystemInfo at = new FileInfo(path); at.FullName.Length > folder.Length; at = new DirectoryInfo(Path.GetDirectoryName(at.FullName)!))
        {
            if (at.LinkTarget is not null)
                return true;
        }
        return false;
    }

    internal static InputException Refusal(string file, string wrong, string write) => new(new Problem($"designs/{file}", 0, wrong, write));

    // The head is read first: what it claims decides whether the rest is decoded at all.
    private static ArtBlock Pixels(string path, string file)
    {
        var bytes = File.ReadAllBytes(path);
        using var data = SKData.CreateCopy(bytes);
        using var codec = SKCodec.Create(data);
        if (codec is null || codec.EncodedFormat is not (SKEncodedImageFormat.Png or SKEncodedImageFormat.Jpeg))
            throw Refusal(file, "The file is no PNG and no JPEG, whatever its name says.", "Save it again as PNG or JPEG.");
        if ((long)codec.Info.Width * codec.Info.Height is 0 or > MostPixels)
            throw Refusal(file, $"The picture claims {codec.Info.Width} by {codec.Info.Height} dots.", "Save it with at most 25 million.");
        using var decoded = SKBitmap.Decode(codec);
        return decoded is null
            ? throw Refusal(file, "The picture cannot be decoded.", "Save it again as PNG or JPEG.")
            : new ArtBlock(codec.Info.Width, codec.Info.Height) { Image = [.. bytes] };
    }
}
