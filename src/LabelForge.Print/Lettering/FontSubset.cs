using System.Runtime.InteropServices;
using HarfBuzzSharp;

namespace LabelForge.Print.Lettering;

/// <summary>Cuts a font down to the letters used, with HarfBuzz's own subsetter. Glyphs keep
/// their numbers, so that text already shaped stays right.</summary>
/// <remarks>
/// Skia's build here embeds whole fonts. HarfBuzz's managed layer does not bring the subsetter, but the library it loads does;
/// where one does not, the font is embedded whole, which is larger and no less right.
/// </remarks>
internal static class FontSubset
{
    private const string Library = "libHarfBuzzSharp";

    // hb_subset_flags_t and hb_subset_sets_t, from hb-subset.h.
    private const uint NoHinting = 0x1;
    private const uint RetainGlyphNumbers = 0x2;
    private const int GlyphSet = 0;
    private const int UnicodeSet = 1;
    private const int DropTableSet = 3;

    // Kerning and the like are done: the places of the glyphs are in the shaped text.
    private static readonly string[] NotNeeded = ["GSUB", "GPOS", "GDEF"];

    /// <summary>The bytes of the font with these glyphs alone, or null where it cannot be cut.</summary>
    /// <param name="face">The font.</param>
    /// <param name="glyphs">The glyphs drawn.</param>
    /// <param name="characters">The characters they stand for, so that readers of the file find the text.</param>
    public static byte[]? Of(Face face, IEnumerable<ushort> glyphs, IEnumerable<int> characters)
    {
        try
        {
            var input = hb_subset_input_create_or_fail();
            if (input == IntPtr.Zero)
                return null;
            try
            {
                hb_subset_input_set_flags(input, NoHinting | RetainGlyphNumbers);
                AddAll(hb_subset_input_set(input, GlyphSet), glyphs.Select(g => (uint)g));
                AddAll(hb_subset_input_set(input, UnicodeSet), characters.Select(c => (uint)c));
                AddAll(hb_subset_input_set(input, DropTableSet), NotNeeded.Select(t => (uint)Tag.Parse(t)));
                return Bytes(hb_subset_or_fail(face.Handle, input));
            }
            finally
            {
                hb_subset_input_destroy(input);
            }
        }
        catch (EntryPointNotFoundException)
        {
            return null;
        }
    }

    private static void AddAll(IntPtr set, IEnumerable<uint> values)
    {
        foreach (var value in values)
            hb_set_add(set, value);
    }

    private static byte[]? Bytes(IntPtr cut)
    {
        if (cut == IntPtr.Zero)
            return null;
        var blob = hb_face_reference_blob(cut);
        try
        {
            var data = hb_blob_get_data(blob, out var length);
            var bytes = new byte[length];
            Marshal.Copy(data, bytes, 0, (int)length);
            return bytes;
        }
        finally
        {
            hb_blob_destroy(blob);
            hb_face_destroy(cut);
        }
    }

    [DllImport(Library)]
    private static extern IntPtr hb_subset_input_create_or_fail();

    [DllImport(Library)]
    private static extern void hb_subset_input_destroy(IntPtr input);

    [DllImport(Library)]
    private static extern void hb_subset_input_set_flags(IntPtr input, uint flags);

    [DllImport(Library)]
    private static extern IntPtr hb_subset_input_set(IntPtr input, int which);

    [DllImport(Library)]
    private static extern void hb_set_add(IntPtr set, uint value);

    [DllImport(Library)]
    private static extern IntPtr hb_subset_or_fail(IntPtr face, IntPtr input);

    [DllImport(Library)]
    private static extern IntPtr hb_face_reference_blob(IntPtr face);

    [DllImport(Library)]
    private static extern IntPtr hb_blob_get_data(IntPtr blob, out uint length);

    [DllImport(Library)]
    private static extern void hb_blob_destroy(IntPtr blob);

    [DllImport(Library)]
    private static extern void hb_face_destroy(IntPtr face);
}
