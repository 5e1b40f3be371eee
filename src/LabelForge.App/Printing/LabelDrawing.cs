using System.Security.Cryptography;
using LabelForge.Print.Drawing;
using LabelForge.Print.Output;

namespace LabelForge.UseCases;

/// <summary>What a label looks like, as one figure: two labels with the same figure are drawn alike, to the last letter.</summary>
public static class LabelDrawing
{
    /// <summary>The SHA-256 of the label's drawing, in hexadecimal.</summary>
    public static string Of(LabelLayout layout)
    {
        using var drawing = new MemoryStream();
        LabelFile.WriteSvg(drawing, layout, "");
        return Convert.ToHexStringLower(SHA256.HashData(drawing.GetBuffer().AsSpan(0, (int)drawing.Length)));
    }
}
