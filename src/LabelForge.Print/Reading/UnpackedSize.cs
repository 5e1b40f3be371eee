using System.IO.Compression;

namespace LabelForge.Print.Reading;

/// <summary>Whether a PDF's packed streams (FlateDecode, ISO 32000-1, 7.4.4) unpack to more than a bound: a small file can hold gigabytes.</summary>
internal static class UnpackedSize
{
    private const int MostStreams = 5_000;
    private const int MostLayers = 3;

    /// <summary>Whether all streams together unpack to more than so many bytes. Nothing unpacked is kept.</summary>
    public static bool Exceeds(byte[] pdf, long most)
    {
        var left = most;
        var at = 0;
        for (var i = 0; i < MostStreams && left >= 0; i++)
        {
            var found = pdf.AsSpan(at).IndexOf("stream"u8);
            if (found < 0)
                return false;
            at += found + "stream"u8.Length;
            var start = at;
            while (start < pdf.Length && pdf[start] is (byte)'\r' or (byte)'\n')
                start++;
            // A zlib stream begins with 0x78 for the usual window (RFC 1950, 2.2).
            if (start < pdf.Length && pdf[start] == 0x78)
                left = Unpack(new MemoryStream(pdf, start, pdf.Length - start, writable: false), left, 1);
        }
        return left < 0;
    }

    // What comes out may be packed again: each layer counts.
    private static long Unpack(Stream packed, long left, int layer)
    {
        try
        {
            using var plain = new ZLibStream(packed, CompressionMode.Decompress);
            var buffer = new byte[64 * 1024];
            var first = plain.ReadAtLeast(buffer, 2, throwOnEndOfStream: false);
            if (layer < MostLayers && first >= 2 && buffer[0] == 0x78)
                return Unpack(new Continued(buffer, first, plain), left - first, layer + 1);
            left -= first;
            while (left >= 0 && plain.Read(buffer) is > 0 and var more)
                left -= more;
        }
        catch (InvalidDataException)
        {
            // Not packed so, or damaged: the reader will say what it makes of it.
        }
        return left;
    }

    // The bytes read so far, and then the rest.
    private sealed class Continued(byte[] head, int length, Stream rest) : Stream
    {
        private int _at;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            if (_at >= length)
                return rest.Read(buffer, offset, count);
            var taken = Math.Min(count, length - _at);
            Array.Copy(head, _at, buffer, offset, taken);
            _at += taken;
            return taken;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
