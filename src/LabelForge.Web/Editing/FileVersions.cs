using LabelForge.Print.Output;

namespace LabelForge.Web.Editing;

/// <summary>How a file of the workshop read earlier: one text for each bout of work on it, the text that the bout began with.</summary>
/// <param name="folder">Where they are kept, under <c>.drafts/versions</c>; it need not be there yet.</param>
public sealed class FileVersions(string folder)
{
    /// <summary>The most that are kept; the oldest go first.</summary>
    public const int Most = 200;

    private const string Time = "yyyyMMddHHmmss";

    /// <summary>An earlier text.</summary>
    /// <param name="At">Until when it stood, in universal time.</param>
    /// <param name="Text">The text.</param>
    public sealed record Version(DateTime At, string Text);

    /// <summary>All that are kept, the latest first. One that cannot be read is left out.</summary>
    public IReadOnlyList<Version> All => [.. Files().Reverse().Select(Read).OfType<Version>()];

    /// <summary>Keeps a text, unless it is the one that was kept last.</summary>
    /// <exception cref="IOException">It cannot be written.</exception>
    public void Keep(string text, DateTime at)
    {
        var files = Files();
        if (files.Length > 0 && Read(files[^1])?.Text == text)
            return;
        Directory.CreateDirectory(folder);
        // Two in one second: the second is dated a second later.
        while (File.Exists(PathOf(at)))
            at = at.AddSeconds(1);
        AtomicFile.Write(PathOf(at), text);
        foreach (var old in files.Take(Math.Max(0, files.Length + 1 - Most)))
            File.Delete(old);
    }

    private string PathOf(DateTime at) => Path.Combine(folder, at.ToString(Time, CultureInfo.InvariantCulture) + ".version");

    private string[] Files() =>
        Directory.Exists(folder) ? [.. Directory.EnumerateFiles(folder, "*.version").Order(StringComparer.Ordinal)] : [];

    private static Version? Read(string file)
    {
        try
        {
            return DateTime.TryParseExact(Path.GetFileNameWithoutExtension(file), Time, CultureInfo.InvariantCulture,
                DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var at)
                ? new Version(at, File.ReadAllText(file))
                : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
