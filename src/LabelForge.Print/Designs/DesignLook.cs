using LabelForge.Measures;

namespace LabelForge.Print.Designs;

/// <summary>A design's id with the style and the tone asked for, as in <c>bar-2x4+bookish+dark</c>.</summary>
internal sealed record DesignLook(string Design, string? Style, Tone? Tone)
{
    public static DesignLook Of(string text)
    {
        var parts = text.Split('+', StringSplitOptions.TrimEntries);
        var look = new DesignLook(parts[0], null, null);
        foreach (var part in parts.Skip(1))
        {
            look = part switch
            {
                "light" => look with { Tone = Designs.Tone.Light },
                "dark" => look with { Tone = Designs.Tone.Dark },
                _ when DesignStyle.Known.Contains(part) => look with { Style = part },
                _ => throw new InputException(new Problem(null, 0, $"\"{part}\" is neither a style nor a tone.",
                    $"Write a style ({string.Join(", ", DesignStyle.Known)}) or light or dark after the design: bar-2x4+bookish+dark.")),
            };
        }
        return look;
    }
}
