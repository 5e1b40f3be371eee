using LabelForge.Measures;

namespace LabelForge.Files;

/// <summary>Whether a file may be written where a person says, before anything is worked out or written.</summary>
/// <remarks>
/// A slip in a name must cost no work: what a workshop consists of is never written over, nor is a file of another kind,
/// nor is a link followed to wherever it leads.
/// </remarks>
public static class OutputPath
{
    private static readonly string[] RoomsOfAWorkshop = ["materials", "recipes", "designs", "stock", "art"];
    private static readonly string[] OtherKinds = [".pdf", ".png", ".svg", ".csv", ".html", ".htm", ".txt", ".md", ".json", ".yaml",
        ".yml"];

    /// <summary>Refuses a place that may not be written to.</summary>
    /// <param name="path">The file to write, as it was given.</param>
    /// <param name="kinds">The kinds that can be written; the path's ending chooses.</param>
    /// <param name="force">Write over a file of another kind, over a link, or among a workshop's
    /// own files. Never over its books or its workshop.yaml.</param>
    /// <exception cref="InputException">The ending is none of them, or something stands there that is not to be lost.</exception>
    public static void RefuseUnlessFree(string path, ImmutableArray<FileKind> kinds, bool force)
    {
        var kind = KindOf(path, kinds);
        var full = Path.GetFullPath(path);
        var folder = Path.GetDirectoryName(full);
        if (folder is null || Directory.Exists(full))
            throw new InputException(path, 0, "output.folder");
        var file = new FileInfo(full);
        if (file.LinkTarget is { } target && !force)
            throw new InputException(path, 0, "output.link", ("target", target));
        if (BelongsTo(Path.Combine(Real(folder), file.Name)) is var (workshop, never) && (never || !force))
            throw new InputException(path, 0, never ? "output.workshop-file-never" : "output.workshop-file", ("workshop", workshop));
        if (!force && file is { Exists: true, LinkTarget: null } && Head(full) is { Length: > 0 } head && !kind.IsOne(head))
            throw new InputException(path, 0, "output.would-be-lost", ("kind", kind.Name));
    }

    private static FileKind KindOf(string path, ImmutableArray<FileKind> kinds)
    {
        var ending = Path.GetExtension(path).ToLowerInvariant();
        if (kinds.FirstOrDefault(k => k.Endings.IsEmpty ? !OtherKinds.Contains(ending) : k.Endings.Contains(ending)) is { } kind)
            return kind;
        var endings = kinds.SelectMany(k => k.Endings).ToArray();
        var what = kinds is [var one] ? one.Name[..1].ToUpperInvariant() + one.Name[1..] : "This";
        var written = ending.Length == 0 ? "to a name without an ending" : $"as \"{ending}\"";
        throw endings switch
        {
            [] => new InputException(path, 0, "output.file-kind-db", ("what", what), ("written", written)),
            [var only] => new InputException(path, 0, "output.file-kind", ("what", what), ("written", written), ("ending", only)),
            _ =>
                new InputException(path, 0, "output.file-kind-of", ("what", what), ("written", written), ("endings", string.Join(", ", endings[..^1])),
                    ("last", endings[^1])),
        };
    }

    // The workshop that a file is part of, and whether it is one that nothing may be written over.
    private static (string Workshop, bool Never)? BelongsTo(string full)
    {
        for (var folder = Path.GetDirectoryName(full); folder is not null; folder = Path.GetDirectoryName(folder))
        {
            if (!File.Exists(Path.Combine(folder, "workshop.yaml")))
                continue;
            var inside = Path.GetRelativePath(folder, full).Split(Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar);
            if (inside.Length > 1)
            {
                if (RoomsOfAWorkshop.Contains(inside[0], StringComparer.OrdinalIgnoreCase) || inside[0].StartsWith('.'))
                    return (folder, false);
            }
            else if (inside[0].StartsWith("records.db", StringComparison.OrdinalIgnoreCase)
                || inside[0].Equals("workshop.yaml", StringComparison.OrdinalIgnoreCase))
            {
                return (folder, true);
            }
            else if (inside[0].StartsWith('.') || inside[0].EndsWith(".yaml", StringComparison.OrdinalIgnoreCase))
            {
                return (folder, false);
            }
        }
        return null;
    }

    // The folder without links in its name, as far as it is there.
    private static string Real(string folder)
    {
        if (Path.GetDirectoryName(folder) is not { } above)
            return folder;
        var whole = Path.Combine(Real(above), Path.GetFileName(folder));
        return new DirectoryInfo(whole) is { Exists: true, LinkTarget: not null } link
            && link.ResolveLinkTarget(returnFinalTarget: true) is { } target ? target.FullName : whole;
    }

    private static byte[] Head(string path)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            var head = new byte[FileKind.Head];
            return head[..stream.ReadAtLeast(head, head.Length, throwOnEndOfStream: false)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(path, 0, "output.unreadable-there", ("message", e.Message));
        }
    }
}
