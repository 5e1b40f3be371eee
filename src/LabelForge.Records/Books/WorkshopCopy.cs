using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using LabelForge.Files;
using Microsoft.Data.Sqlite;

namespace LabelForge.Records.Books;

/// <summary>What a copy of a workshop holds, or what was put back from one.</summary>
/// <param name="Files">How many files beside the books.</param>
/// <param name="Entries">How many entries of the books; 0 where the workshop had none.</param>
/// <param name="Differences">What does not agree in the books, as <see cref="BooksCheck"/> found; empty where all does.</param>
/// <param name="Kept">Where what was replaced lies; null where nothing was.</param>
public sealed record WorkshopCopyReport(int Files, long Entries, IReadOnlyList<string> Differences, string? Kept);

/// <summary>Copies of a whole workshop in one file: its YAML, designs, art, papers and photos, drafts, and its books.</summary>
/// <remarks>
/// A ZIP that any program opens. <c>copy.json</c> in it lists every file with its SHA-256. A copy counts once it was put back
/// into an empty folder and compared, file by file, and its books were read whole.
/// </remarks>
public static class WorkshopCopy
{
    private const string ListName = "copy.json";

    // Where the page keeps what it could not write into a file yet, and what was removed.
    private const string Drafts = ".drafts";

    // More than this is no workshop, whatever says so.
    private const int MostFiles = 100_000;
    private const long MostBytes = 20_000_000_000;

    /// <summary>Whether a file's name says that it is a copy of a whole workshop.</summary>
    public static bool IsNamed(string path) => Path.GetExtension(path).Equals(".zip", StringComparison.OrdinalIgnoreCase);

    /// <summary>Copies a workshop into a file.</summary>
    /// <param name="target">The file to write; an older copy there is written over.</param>
    /// <param name="force">Write over a file that is no such copy.</param>
    /// <exception cref="InputException">The copy cannot be written, or does not pass its check.</exception>
    public static WorkshopCopyReport Backup(string workshopFolder, string target, bool force = false)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        if (!File.Exists(Path.Combine(workshopFolder, "workshop.yaml")))
            throw new InputException(workshopFolder, 0, "backup.no-workshop");
        OutputPath.RefuseUnlessFree(target, [FileKind.WorkshopCopy], force);
        var full = Path.GetFullPath(target);
        var (part, books) = ($"{full}.{Guid.NewGuid():N}.part", $"{full}.{Guid.NewGuid():N}.books");
        try
        {
            if (OpenBooks.Exists(workshopFolder))
                BookCopy.Backup(workshopFolder, books);
            Write(workshopFolder, part, File.Exists(books) ? books : null, [full, part, books]);
            var report = Tried(part);
            File.Move(part, full, overwrite: true);
            return report;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(target, 0, "backup.not-written-there", ("message", e.Message));
        }
        finally
        {
            File.Delete(part);
            File.Delete(books);
        }
    }

    /// <summary>Puts a workshop back from a copy. What is there and differs is kept beside it, in a folder of its own.</summary>
    /// <param name="workshopFolder">The folder to put it into; made where it is not there.</param>
    /// <param name="source">The copy.</param>
    /// <exception cref="InputException">The copy is damaged or none, or the folder cannot be written.</exception>
    public static WorkshopCopyReport Restore(string workshopFolder, string source)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        if (!File.Exists(source))
            throw new InputException(source, 0, "backup.no-such-file");
        var fresh = Directory.CreateTempSubdirectory("labelforge-restore-").FullName;
        try
        {
            // All of it is read and compared before anything in the workshop is touched.
            var (files, _) = Unpack(source, fresh);
            var root = Directory.CreateDirectory(workshopFolder).FullName;
            string? kept = null;
            foreach (var file in files.Where(f => f != OpenBooks.FileName))
            {
                var (from, to) = (Path.Combine(fresh, file), Path.Combine(root, file));
                if (File.Exists(to) && !Digest(to).SequenceEqual(Digest(from)))
                {
                    kept ??= Enumerable.Range(1, 10_000).Select(i => Path.Combine(root, $"before-restore-{i}"))
                        .First(p => !Directory.Exists(p));
                    var aside = Path.Combine(kept, file);
                    Directory.CreateDirectory(Path.GetDirectoryName(aside)!);
                    File.Move(to, aside);
                }
                Directory.CreateDirectory(Path.GetDirectoryName(to)!);
                File.Copy(from, to, overwrite: true);
            }
            var (entries, keptBooks) = files.Contains(OpenBooks.FileName)
                ? BookCopy.Restore(root, Path.Combine(fresh, OpenBooks.FileName))
                : (0, null);
            return new WorkshopCopyReport(files.Count(f => f != OpenBooks.FileName), entries, Differences(root), kept ?? keptBooks);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new InputException(workshopFolder, 0, "backup.not-put-back", ("message", e.Message));
        }
        finally
        {
            Directory.Delete(fresh, recursive: true);
        }
    }

    private static IReadOnlyList<string> Differences(string root)
    {
        if (!OpenBooks.Exists(root))
            return [];
        var books = OpenBooks.Open(root);
        return [.. books.Check().Differences, .. AttachmentFolder.Faults(books, root)];
    }

    private static void Write(string folder, string target, string? books, string[] besides)
    {
        using var file = new FileStream(target, FileMode.CreateNew, FileAccess.ReadWrite);
        var listed = new SortedDictionary<string, string>(StringComparer.Ordinal);
        using (var zip = new ZipArchive(file, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var path in FilesOf(folder).Where(f => !besides.Contains(Path.GetFullPath(f))))
                Add(zip, listed, path, Path.GetRelativePath(folder, path).Replace(Path.DirectorySeparatorChar, '/'));
            if (books is not null)
                Add(zip, listed, books, OpenBooks.FileName);
            using var list = zip.CreateEntry(ListName).Open();
            JsonSerializer.Serialize(list, listed);
        }
        file.Flush(flushToDisk: true);
    }

    private static void Add(ZipArchive zip, SortedDictionary<string, string> listed, string path, string name)
    {
        listed[name] = Convert.ToHexStringLower(Digest(path));
        zip.CreateEntryFromFile(path, name);
    }

    // The maker's files, but not the books as they are written to. What could not be used yet and what was removed is the
    // maker's work too, and is nowhere else.
    private static IEnumerable<string> FilesOf(string folder) => Visible(folder)
        .Where(f => Path.GetRelativePath(folder, f) is var name
            && !name.StartsWith(OpenBooks.FileName, StringComparison.Ordinal)
            && name != ListName)
        .Concat(Visible(Path.Combine(folder, Drafts)))
        .Order(StringComparer.Ordinal);

    // No links, nothing hidden, and not what earlier restores put aside.
    private static IEnumerable<string> Visible(string folder) =>
        new DirectoryInfo(folder) is { Exists: true, LinkTarget: null } ? Directory
            .EnumerateFiles(folder, "*",
                new EnumerationOptions
                {
                    RecurseSubdirectories = true,
                    AttributesToSkip = FileAttributes.ReparsePoint | FileAttributes.Hidden | FileAttributes.System,
                })
            .Where(f => !Path.GetRelativePath(folder, f).Split(Path.DirectorySeparatorChar)
                .Any(p => p.StartsWith('.') || p.StartsWith("before-restore-", StringComparison.Ordinal))) : [];

    private static WorkshopCopyReport Tried(string copy)
    {
        var folder = Directory.CreateTempSubdirectory("labelforge-copy-").FullName;
        try
        {
            var (files, _) = Unpack(copy, folder);
            if (!files.Contains(OpenBooks.FileName))
                return new WorkshopCopyReport(files.Count, 0, [], null);
            var books = OpenBooks.Open(BookPlace.InFile(Path.Combine(folder, OpenBooks.FileName)));
            var check = books.Check();
            return new WorkshopCopyReport(files.Count - 1, check.Entries,
                [.. check.Differences, .. AttachmentFolder.Faults(books, folder)], null);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // Into an empty folder; each file is compared with the list.
    private static (IReadOnlyList<string> Files, long Bytes) Unpack(string source, string folder)
    {
        try
        {
            using var zip = ZipFile.OpenRead(source);
            using var list = (zip.GetEntry(ListName) ?? throw Damaged(source)).Open();
            var listed = JsonSerializer.Deserialize<Dictionary<string, string>>(list) ?? throw Damaged(source);
            var bytes = zip.Entries.Sum(e => e.Length);
            if (listed.Count > MostFiles || bytes > MostBytes)
                throw Damaged(source);
            foreach (var (name, digest) in listed)
            {
                var path = Path.GetFullPath(Path.Combine(folder, name));
                // A name that leads out of the folder is none that was written here.
                if (!path.StartsWith(Path.GetFullPath(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal)
                    || name.Contains('\\', StringComparison.Ordinal))
                    throw Damaged(source);
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                (zip.GetEntry(name) ?? throw Damaged(source)).ExtractToFile(path);
                if (Convert.ToHexStringLower(Digest(path)) != digest)
                    throw Damaged(source);
            }
            return ([.. listed.Keys], bytes);
        }
        catch (Exception e) when (e is InvalidDataException or JsonException or SqliteException)
        {
            throw Damaged(source);
        }
    }

    private static byte[] Digest(string path)
    {
        using var file = File.OpenRead(path);
        return SHA256.HashData(file);
    }

    private static InputException Damaged(string path) => new InputException(path, 0, "backup.unsound-workshop");
}
