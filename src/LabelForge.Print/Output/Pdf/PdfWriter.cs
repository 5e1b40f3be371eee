using System.IO.Compression;

namespace LabelForge.Print.Output.Pdf;

/// <summary>
/// Writes a PDF's objects one after the other (ISO 32000-1, 7.5). What has been written is not kept: of a document of
/// any length, the places of its objects alone stay in memory, eight bytes each.
/// </summary>
internal sealed class PdfWriter
{
    // Deflating a few operators makes them no shorter, and costs a short document the start of the compressor.
    private const int WorthDeflating = 400;

    private readonly Stream _stream;
    private readonly List<long> _places = [0];
    private readonly Fingerprint _fingerprint = new();
    private readonly PdfText _out = new();
    private readonly MemoryStream _deflated = new();
    private long _written;

    /// <summary>Begins a document.</summary>
    public PdfWriter(Stream stream)
    {
        _stream = stream;
        // The second line tells programs that move files that this one is not text (7.5.2).
        _out.Add("%PDF-1.7\n%"u8).Add([0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);
    }

    /// <summary>A number for an object that is written later.</summary>
    public int Reserve()
    {
        _places.Add(0);
        return _places.Count - 1;
    }

    /// <summary>Writes an object under a number reserved for it.</summary>
    public void Write(int number, ReadOnlySpan<byte> body)
    {
        Begin(number);
        _out.Add(body).Add("\nendobj\n"u8);
        Flush();
    }

    /// <summary>Writes an object under a number reserved for it.</summary>
    public void Write(int number, string body) => Write(number, Encoding.Latin1.GetBytes(body));

    /// <summary>Writes a stream whose dictionary holds these entries besides its length.</summary>
    /// <param name="number">A number reserved for it.</param>
    /// <param name="entries">The other entries, without the brackets.</param>
    /// <param name="data">What the stream holds, filtered as the entries say.</param>
    public void WriteStream(int number, string entries, ReadOnlySpan<byte> data)
    {
        Begin(number);
        _out.Add("<<"u8).Add(Encoding.Latin1.GetBytes(entries)).Add("/Length "u8).Add(data.Length).Add(">>\nstream\n"u8).Add(data)
            .Add("\nendstream\nendobj\n"u8);
        Flush();
    }

    /// <summary>Writes a stream whose dictionary is written out already, its length in it.</summary>
    public void WriteStreamAsItIs(int number, ReadOnlySpan<byte> dictionary, ReadOnlySpan<byte> data)
    {
        Begin(number);
        _out.Add(dictionary).Add("\nstream\n"u8).Add(data).Add("\nendstream\nendobj\n"u8);
        Flush();
    }

    /// <summary>Writes what a page draws, deflated where that makes it shorter.</summary>
    public void WriteContent(int number, ReadOnlySpan<byte> operators)
    {
        if (operators.Length < WorthDeflating)
        {
            WriteStream(number, "", operators);
            return;
        }
        _deflated.SetLength(0);
        using (var deflating = new ZLibStream(_deflated, CompressionLevel.Fastest, leaveOpen: true))
            deflating.Write(operators);
        WriteStream(number, "/Filter/FlateDecode", _deflated.GetBuffer().AsSpan(0, (int)_deflated.Length));
    }

    /// <summary>Ends the document: the places of its objects, and an id that differs where its content does (14.4).</summary>
    /// <param name="catalog">The catalogue's number.</param>
    /// <param name="info">The information dictionary's number.</param>
    public void Finish(int catalog, int info)
    {
        var at = _written;
        _out.Add("xref\n0 "u8).Add(_places.Count).Add("\n0000000000 65535 f \n"u8);
        foreach (var place in _places.Skip(1))
        {
            _out.AddPadded(place, 10).Add(" 00000 n \n"u8);
            FlushWhenLong();
        }
        var id = _fingerprint.ToString();
        _out.Add(Encoding.ASCII.GetBytes(Invariant($"trailer\n<</Size {_places.Count}/Root {catalog} 0 R/Info {info} 0 R/ID[<{id}><{id}>]>>\nstartxref\n{at}\n%%EOF\n")));
        Flush();
    }

    private void Begin(int number)
    {
        if (_places[number] != 0)
            throw new InvalidOperationException($"Object {number} is written twice.");
        _places[number] = _written + _out.Length;
        _out.Add(number).Add(" 0 obj\n"u8);
    }

    private void FlushWhenLong()
    {
        if (_out.Length > 32_768)
            Flush();
    }

    private void Flush()
    {
        _fingerprint.Add(_out.Written);
        _stream.Write(_out.Written);
        _written += _out.Length;
        _out.Clear();
    }
}
