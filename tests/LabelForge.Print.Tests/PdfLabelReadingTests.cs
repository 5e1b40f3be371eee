using System.Text;
using LabelForge.Checks;
using LabelForge.Checks.Reading;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Markets;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Print.Fitting;
using LabelForge.Print.Output;
using LabelForge.Print.Reading;

namespace LabelForge.Print.Tests;

/// <summary>What a test allocates can only be counted while no other runs.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;

/// <summary>Labels read back out of PDF files, sound ones and hostile ones.</summary>
[Collection(nameof(Alone))]
public sealed class PdfLabelReadingTests
{
    private static readonly DateOnly On = new(2026, 11, 25);

    [Fact]
    public void A_label_drawn_here_is_read_back_whole()
    {
        var reading = Read(Samples.Bar);
        Assert.Equal("Net Wt 3.9 oz (113 g)", reading.NetQuantity?.Written);
        Assert.Equal(Samples.Bar.Ingredients, reading.Names.Select(n => n.Name));
        Assert.Equal("Glycerin bar soap", reading.Identity?.Written);
        Assert.Equal("1 Example Lane, Fairport, ME 00000", reading.Business.Place);
        Assert.Equal("rooksedge.example", reading.Contact.Line);
        Assert.Equal("7MQ4-K", reading.Lot?.Code);
    }

    // The design states how high its letters stand; the reader measures the outlines in the file.
    [Fact]
    public void Letter_heights_are_measured_from_the_outlines()
    {
        var layout = Layout(Samples.Bar);
        var reading = Read(Samples.Bar);
        var words = reading.Text.Heights.Where(h => h.Span.Overlaps(reading.NetQuantity!.Span)).Select(h => h.Lower).OfType<Length>()
            .ToArray();
        Assert.NotEmpty(words);
        var drawn = layout.Lines.Single(l => l.Text.Text.StartsWith("Net Wt", StringComparison.Ordinal)).Text;
        var expected = drawn.LetterHeight.Millimetres;
        Assert.All(words, w => Assert.InRange(w.Millimetres, expected - 0.1m, expected + 0.1m));
    }

    // Up to 5 square inches 1/16 in will do; above 100 it takes 1/4 in (21 CFR 701.13(i)).
    [Theory]
    [InlineData("1x2in", false)]
    [InlineData("10x12in", true)]
    public void Letters_below_the_least_height_for_the_panel_are_found(string panel, bool found)
    {
        var report = LabelCheck.Run(LabelJudgement.Of(Read(Samples.Bar), null, null, Quantities.Panel.Parse(panel).Value, On), Market.Us);
        Assert.Equal(found, report.Findings.Any(f => f.Rule == "net-quantity.type-too-small"));
    }

    [Fact]
    public void Random_bytes_are_refused_at_once()
    {
        var random = new Random(20261125);
        foreach (var size in new[] { 0, 100, 10_000 })
        {
            var bytes = new byte[size];
            random.NextBytes(bytes);
            Refused(bytes);
            Refused([.. "%PDF-1.7\n"u8, .. bytes]);
        }
    }

    [Fact]
    public void A_PDF_cut_short_or_damaged_is_read_or_refused_but_never_breaks()
    {
        var whole = Pdf(Samples.Bar);
        foreach (var part in new[] { 0.4, 0.95 })
            ReadOrRefuse(whole[..(int)(whole.Length * part)]);
        var random = new Random(7);
        for (var i = 0; i < 4; i++)
        {
            var damaged = whole.ToArray();
            for (var k = 0; k < 40; k++)
                damaged[random.Next(damaged.Length)] = (byte)random.Next(256);
            ReadOrRefuse(damaged);
        }
    }

    [Fact]
    public void Deep_nesting_is_refused() => Refused(Encoding.ASCII.GetBytes(
        $"%PDF-1.4\n1 0 obj\n{new string('[', 200_000)}\nendobj\ntrailer << /Root 1 0 R >>\nstartxref\n9\n%%EOF"));

    // A few hundred bytes that unpack to gigabytes, once and twice packed.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void A_packed_bomb_is_refused_before_it_is_unpacked(int layers)
    {
        var packed = Zeros(400);
        for (var i = 1; i < layers; i++)
            packed = Packed(packed);
        RefusedBomb(packed, layers == 1 ? "/FlateDecode" : "[/FlateDecode /FlateDecode]", "");
    }

    [Fact]
    public void A_bomb_behind_five_thousand_times_the_word_stream_is_refused() =>
        RefusedBomb(Zeros(400), "/FlateDecode", string.Concat(Enumerable.Repeat("% stream\n", 5_001)));

    // 0x58 tells of a smaller window (RFC 1950, 2.2); what is packed unpacks all the same.
    [Theory]
    [InlineData(0x58)]
    [InlineData(0x00)]
    public void A_bomb_with_another_header_is_refused(byte first)
    {
        var packed = Zeros(400);
        packed[0] = first;
        RefusedBomb(packed, "/FlateDecode", "");
    }

    [Theory]
    [InlineData("/Fl")]
    [InlineData("[/ASCIIHexDecode /FlateDecode]")]
    public void A_bomb_under_another_name_or_inside_another_packing_is_refused(string filter) =>
        RefusedBomb(filter == "/Fl" ? Zeros(400) : Encoding.ASCII.GetBytes(Convert.ToHexString(Zeros(400)) + ">"), filter, "");

    // LZW: one byte, then ever longer codes, each the one before and its first byte (ISO 32000-1, 7.4.4.2).
    [Fact]
    public void A_bomb_packed_by_LZW_is_refused()
    {
        var codes = new List<(int Code, int Bits)>();
        for (var again = 0; again < 12; again++)
        {
            codes.Add((256, again == 0 ? 9 : 12));
            codes.Add((0, 9));
            for (var code = 258; code < 4094; code++)
                codes.Add((code, (code + 1) switch { >= 2048 => 12, >= 1024 => 11, >= 512 => 10, _ => 9 }));
        }
        RefusedBomb(Bits(codes), "/LZWDecode", "");
    }

    private static byte[] Bits(IEnumerable<(int Code, int Bits)> codes)
    {
        var bits = string.Concat(codes.Select(c => Convert.ToString(c.Code, 2).PadLeft(c.Bits, '0')));
        bits = bits.PadRight((bits.Length + 7) / 8 * 8, '0');
        return [.. Enumerable.Range(0, bits.Length / 8).Select(i => Convert.ToByte(bits.Substring(i * 8, 8), 2))];
    }

    private static void RefusedBomb(byte[] packed, string filter, string before)
    {
        var allocated = GC.GetTotalAllocatedBytes();
        var pdf = new List<byte>(Encoding.ASCII.GetBytes("%PDF-1.4\n" + before));
        var places = new List<int>();
        foreach (var part in (byte[][])["<< /Type /Catalog /Pages 2 0 R >>"u8.ToArray(),
            "<< /Type /Pages /Kids [3 0 R] /Count 1 >>"u8.ToArray(),
            "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 200] /Contents 4 0 R >>"u8.ToArray(),
            [.. Encoding.ASCII.GetBytes($"<< /Length {packed.Length} /Filter {filter} >>\nstream\n"), .. packed, .. "\nendstream"u8]])
        {
            places.Add(pdf.Count);
            pdf.AddRange([.. Encoding.ASCII.GetBytes($"{places.Count} 0 obj\n"), .. part, .. "\nendobj\n"u8]);
        }
        pdf.AddRange(Encoding.ASCII
            .GetBytes(
                $"xref\n0 5\n0000000000 65535 f \n{string.Concat(places.Select(p => $"{p:0000000000} 00000 n \n"))}trailer\n<< /Size 5 "
                    + $"/Root 1 0 R >>\nstartxref\n{pdf.Count}\n%%EOF\n"));
        var refused = Assert.Throws<InputException>(() => PdfLabelReader.Read([.. pdf], "label.pdf"));
        Assert.Contains("unpacks to more", refused.Message);
        Assert.True(GC.GetTotalAllocatedBytes() - allocated < 50_000_000, "A bomb must not be unpacked into memory.");
    }

    private static byte[] Zeros(int megabytes)
    {
        using var packed = new MemoryStream();
        using (var zip = new System.IO.Compression.ZLibStream(packed, System.IO.Compression.CompressionLevel.Optimal, leaveOpen: true))
        {
            var block = new byte[1_000_000];
            for (var i = 0; i < megabytes; i++)
                zip.Write(block);
        }
        return packed.ToArray();
    }

    private static byte[] Packed(byte[] bytes)
    {
        using var packed = new MemoryStream();
        using (var zip = new System.IO.Compression.ZLibStream(packed, System.IO.Compression.CompressionLevel.Optimal, leaveOpen: true))
            zip.Write(bytes);
        return packed.ToArray();
    }

    private static void Refused(byte[] bytes) => Assert.Throws<InputException>(() => PdfLabelReader.Read(bytes, "label.pdf"));

    private static void ReadOrRefuse(byte[] bytes)
    {
        try
        {
            Assert.NotEmpty(PdfLabelReader.Read(bytes, "label.pdf").Text);
        }
        catch (InputException refused)
        {
            Assert.Contains("label.pdf", refused.Message);
        }
    }

    private static LabelStatement Read(LabelContent content) =>
        LabelStatement.Read(PdfLabelReader.Read(Pdf(content), "label.pdf"), IngredientDictionary.Shipped);

    private static Drawing.LabelLayout Layout(LabelContent content) =>
        LabelFitter.Fit(LabelDesign.Load("bar-2x4"), content, Samples.Block()).OrRefuse();

    private static byte[] Pdf(LabelContent content)
    {
        using var stream = new MemoryStream();
        LabelFile.WritePdf(stream, Layout(content), Samples.Info);
        return stream.ToArray();
    }
}
