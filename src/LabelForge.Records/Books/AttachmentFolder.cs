using System.Security.Cryptography;
using LabelForge.Print.Output;

namespace LabelForge.Records.Books;

/// <summary>The folder beside the books in which attached files lie, each once, named by the SHA-256 of its bytes.</summary>
public static class AttachmentFolder
{
    /// <summary>The folder's name in the workshop.</summary>
    public const string Name = "attachments";

    /// <summary>The largest file that is kept.</summary>
    public const long MostBytes = 50_000_000;

    /// <summary>Where an attached file lies.</summary>
    public static string PathOf(string workshopFolder, Attachment attachment) =>
        PathOf(workshopFolder, attachment.Digest, attachment.FileName);

    /// <summary>Keeps a file and writes it into the books. The file is on the disk before the entry is in the books.</summary>
    /// <param name="source">The file's bytes.</param>
    /// <param name="entry">The entry, given the bytes' digest.</param>
    /// <exception cref="InputException">The file is empty or too large, or cannot be kept.</exception>
    public static Attachment Keep(OpenBooks book, string workshopFolder, byte[] source, Func<string, Attachment> entry)
    {
        if (source.Length is 0 or > (int)MostBytes)
            throw (source.Length == 0
                ? new InputException("attachment.file-empty")
                : new InputException("attachment.too-large", ("most-bytes", MostBytes / 1_000_000)));
        var attachment = entry(Convert.ToHexStringLower(SHA256.HashData(source)));
        EntryValidation.Check(attachment);
        var path = PathOf(workshopFolder, attachment);
        if (Fault(workshopFolder, attachment) is not null)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            AtomicFile.Write(path, stream => stream.Write(source));
        }
        return book.Write((_, context) =>
        {
            context.Attachments.Add(attachment);
            return attachment;
        });
    }

    /// <summary>What is wrong with an attached file where it lies; null where nothing is.</summary>
    public static string? Fault(string workshopFolder, Attachment attachment)
    {
        var path = PathOf(workshopFolder, attachment);
        if (!File.Exists(path))
            return $"Attachment {attachment.Id} ({attachment.FileName}) is not on this machine: {Path.GetFileName(path)} in the folder {Name}.";
        using var file = File.OpenRead(path);
        return Convert.ToHexStringLower(SHA256.HashData(file)) == attachment.Digest
            ? null
            : $"Attachment {attachment.Id} ({attachment.FileName}) is not what its digest says.";
    }

    /// <summary>What is wrong with any attached file, a sentence each; empty where every one is there and whole.</summary>
    public static IReadOnlyList<string> Faults(OpenBooks book, string workshopFolder) =>
        [.. book.Ask(books => books.Attachments()).DistinctBy(a => PathOf(workshopFolder, a)).Select(a => Fault(workshopFolder, a))
            .OfType<string>()];

    // The ending is kept, so that other programs know what they open; nothing else of the name is.
    private static string PathOf(string workshopFolder, string digest, string fileName)
    {
        var ending = Path.GetExtension(fileName).ToLowerInvariant();
        return Path.Combine(workshopFolder, Name,
            digest + (ending.Length is > 1 and < 8 && ending.Skip(1).All(char.IsAsciiLetterOrDigit) ? ending : ""));
    }
}
