using Microsoft.AspNetCore.Components.Forms;

namespace LabelForge.Web.Workbench;

/// <summary>Files that a person gives to the page: bounded in size, and taken for what is in them, whatever their names say.</summary>
internal static class Upload
{
    /// <summary>A file's bytes.</summary>
    /// <param name="file">The file.</param>
    /// <param name="most">The largest that is taken.</param>
    /// <param name="what">What it should be, for the message.</param>
    /// <exception cref="InputException">It is larger, or could not be read to its end.</exception>
    public static async Task<byte[]> Bytes(IBrowserFile file, long most, string what)
    {
        if (file.Size > most)
            throw new InputException("form.upload-too-large", ("what", what), ("most", most / 1_000_000));
        try
        {
            using var copy = new MemoryStream();
            await using (var stream = file.OpenReadStream(most))
                await stream.CopyToAsync(copy);
            return copy.ToArray();
        }
        catch (IOException)
        {
            throw new InputException("form.upload-broken");
        }
    }

    /// <summary>Whether the bytes are those of a PDF (ISO 32000-1, 7.5.2).</summary>
    public static bool IsPdf(byte[] bytes) => bytes.AsSpan().StartsWith("%PDF-"u8);

    /// <summary>The bytes as text.</summary>
    /// <exception cref="InputException">They are none, or more than so many characters.</exception>
    public static string Text(byte[] bytes, int mostCharacters)
    {
        if (Array.IndexOf(bytes, (byte)0) >= 0)
            throw new InputException("form.neither-pdf-nor-text");
        if (bytes.Length > mostCharacters * 4L)
            throw new InputException("form.text-too-long");
        // The mark that some editors set at the beginning is no letter.
        return Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF');
    }
}
