using LabelForge.Checks.Reading;
using LabelForge.Print.Reading;

namespace LabelForge.Cli.Verbs;

/// <summary>A label made elsewhere as the command line names it: a text file, a PDF, or standard input.</summary>
internal static class LabelInput
{
    private const long MostTextBytes = 1_000_000;

    /// <summary>Whether this names a label and not a recipe.</summary>
    public static bool IsLabel(string file) =>
        file == "-" || Path.GetExtension(file).ToLowerInvariant() is ".txt" or ".md" or ".pdf" or ".text";

    /// <summary>Reads its words.</summary>
    /// <exception cref="InputException">There is no such file, or it holds no label.</exception>
    public static LabelText Read(string file)
    {
        if (file != "-" && !File.Exists(file))
            throw new InputException(file, 0, "call.no-such-file");
        if (Path.GetExtension(file).Equals(".pdf", StringComparison.OrdinalIgnoreCase))
            return Pdf(file);
        using var stream = file == "-" ? Console.OpenStandardInput() : File.OpenRead(file);
        return LabelText.Of(Text(stream, file == "-" ? "standard input" : file), file == "-" ? "standard input" : file);
    }

    private static LabelText Pdf(string file) => new FileInfo(file).Length > PdfLabelReader.MostBytes
        ? throw new InputException(file, 0, "call.pdf-too-large")
        : PdfLabelReader.Read(File.ReadAllBytes(file), file);

    // No more than a label's size is ever read, however much there is.
    private static string Text(Stream stream, string name)
    {
        var bytes = new byte[MostTextBytes + 1];
        var read = 0;
        while (read < bytes.Length && stream.Read(bytes, read, bytes.Length - read) is > 0 and var more)
            read += more;
        if (read == bytes.Length)
            throw new InputException(name, 0, "call.text-too-long");
        return Encoding.UTF8.GetString(bytes, 0, read);
    }
}
