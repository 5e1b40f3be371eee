using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;
using LabelForge.Measures;
using LabelForge.Print.Jobs;

namespace LabelForge.Print.Tests.Hostile;

/// <summary>Art that somebody sends, made to do harm.</summary>
public sealed class HostileArtTests : IDisposable
{
    private const string Svg =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 10 10\">{0}</svg>";

    private readonly string _folder = Directory.CreateTempSubdirectory("labelforge-art-").FullName;

    [Fact]
    public void A_small_file_that_decodes_to_ten_gigabytes_is_refused_by_its_head()
    {
        var bomb = Png(50_000, 50_000);
        Assert.True(bomb.Length < 100_000);
        Put("leaf.png", bomb);
        var before = GC.GetTotalAllocatedBytes();
        Assert.Contains("50000 by 50000", Refused("leaf.png"));
        Assert.True(GC.GetTotalAllocatedBytes() - before < 10_000_000, "Nothing of it is decoded.");
    }

    [Fact]
    public void A_picture_cut_short_is_refused_or_drawn_but_never_breaks()
    {
        var whole = Png(40, 40);
        for (var length = 0; length < whole.Length; length += 5)
        {
            Put("leaf.png", whole[..length]);
            try
            {
                Assert.NotNull(ArtFile.Read(_folder, "leaf.png"));
            }
            catch (InputException)
            {
            }
        }
    }

    [Fact]
    public void A_drawing_of_a_hundred_thousand_shapes_is_refused()
    {
        Put("leaf.svg", string.Format(null, Svg, string.Concat(Enumerable.Repeat("<rect width=\"1\" height=\"1\"/>", 100_000))));
        Assert.Contains("more than 5000 shapes", Refused("leaf.svg"));
    }

    [Fact]
    public void A_drawing_of_groups_in_groups_without_end_is_refused()
    {
        Put("leaf.svg",
            string.Format(null, Svg, string.Concat(Enumerable.Repeat("<g>", 20_000)) + string.Concat(Enumerable.Repeat("</g>", 20_000))));
        Assert.Contains("too deeply", Refused("leaf.svg"));
    }

    [Theory]
    [InlineData("<!DOCTYPE svg [<!ENTITY a \"aaaa\"><!ENTITY b \"&a;&a;&a;\">]><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 "
        + "1\"><desc>&b;</desc></svg>")]
    [InlineData("<!DOCTYPE svg SYSTEM \"file:///etc/passwd\"><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 1\"/>")]
    public void A_drawing_with_a_document_type_is_refused_unread(string drawing)
    {
        Put("leaf.svg", drawing);
        Assert.Contains("without a document type", Refused("leaf.svg"));
    }

    [Theory]
    [InlineData("<image xlink:href=\"file:///etc/passwd\" width=\"1\" height=\"1\"/>")]
    [InlineData("<use href=\"http://example.com/a.svg#x\"/>")]
    [InlineData("<script>alert(1)</script>")]
    [InlineData("<style>@import url(http://example.com/a.css)</style>")]
    [InlineData("<foreignObject><p>text</p></foreignObject>")]
    [InlineData("<path d=\"M0 0h1\" style=\"fill:url(http://example.com/a)\"/>")]
    [InlineData("<rect width=\"1\" height=\"1\" filter=\"url(#f)\"/>")]
    [InlineData("<rect width=\"1e9\" height=\"1\"/>")]
    [InlineData("<rect width=\"NaN\" height=\"1\"/>")]
    [InlineData("<rect width=\"1\" height=\"1\" fill=\"url(http://example.com/a)\"/>")]
    public void A_drawing_that_reaches_outside_its_file_is_refused(string part)
    {
        Put("leaf.svg", string.Format(null, Svg, part));
        Assert.NotEmpty(Refused("leaf.svg"));
    }

    [Theory]
    [InlineData("../workshop.yaml")]
    [InlineData("/etc/passwd")]
    [InlineData("../../../../../../etc/hostname")]
    [InlineData("nul\0.png")]
    [InlineData("leaf\n.png")]
    [InlineData("")]
    [InlineData(".")]
    public void Art_named_by_a_way_out_of_the_folder_is_refused(string name) => Assert.NotEmpty(Refused(name));

    [Fact]
    public void Art_that_is_a_link_to_a_file_elsewhere_is_refused()
    {
        var elsewhere = Path.Combine(Path.GetTempPath(), $"labelforge-elsewhere-{Guid.NewGuid():N}.png");
        File.WriteAllBytes(elsewhere, Png(4, 4));
        try
        {
            File.CreateSymbolicLink(Path.Combine(_folder, "leaf.png"), elsewhere);
            Assert.Contains("link", Refused("leaf.png"));
        }
        finally
        {
            File.Delete(elsewhere);
        }
    }

    [Fact]
    public void Art_larger_than_five_megabytes_is_refused_unread()
    {
        Put("leaf.svg", new string(' ', 5_000_001));
        Assert.Contains("larger than 5 MB", Refused("leaf.svg"));
    }

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    private void Put(string name, string text) => Put(name, Encoding.UTF8.GetBytes(text));

    private void Put(string name, byte[] bytes) => File.WriteAllBytes(Path.Combine(_folder, name), bytes);

    private string Refused(string name) => Assert.Throws<InputException>(() => ArtFile.Read(_folder, name)).Message;

    // A grey picture of one byte a dot, written by hand (PNG, ISO/IEC 15948, clause 5); a large one holds a few rows alone.
    private static byte[] Png(int width, int height)
    {
        using var packed = new MemoryStream();
        using (var zip = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            for (var row = 0; row < Math.Min(height, 100); row++)
                zip.Write(new byte[width + 1]);
        }
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        head[8] = 8;
        return [137, 80, 78, 71, 13, 10, 26, 10, .. Chunk("IHDR", head), .. Chunk("IDAT", packed.ToArray()), .. Chunk("IEND", [])];
    }

    private static byte[] Chunk(string kind, byte[] data)
    {
        byte[] named = [.. Encoding.ASCII.GetBytes(kind), .. data];
        var (length, sum) = (new byte[4], new byte[4]);
        BinaryPrimitives.WriteInt32BigEndian(length, data.Length);
        BinaryPrimitives.WriteUInt32BigEndian(sum, Sum(named));
        return [.. length, .. named, .. sum];
    }

    // CRC-32 as PNG has it (Annex D).
    private static uint Sum(byte[] bytes)
    {
        var sum = uint.MaxValue;
        foreach (var b in bytes)
        {
            sum ^= b;
            for (var i = 0; i < 8; i++)
                sum = (sum & 1) != 0 ? (sum >> 1) ^ 0xEDB88320 : sum >> 1;
        }
        return ~sum;
    }
}
