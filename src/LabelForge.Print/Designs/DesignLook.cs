namespace LabelForge.Print.Designs;

/// <summary>A design's id with what is asked for of its look, as in <c>bar-2x4+bookish+dark</c> or
/// <c>bar-2x4+medallion+soft</c>.</summary>
/// <param name="Design">The design's id.</param>
/// <param name="Style">The style, or with an arrangement the pair of types.</param>
/// <param name="Tone">Light or dark.</param>
public sealed record DesignLook(string Design, string? Style, Tone? Tone)
{
    /// <summary>The arrangement asked for; null where none is.</summary>
    public string? Arrangement { get; init; }

    /// <summary>Whether the design's own plain setting is asked for: a style or a tone, and no arrangement.</summary>
    public bool IsPlain => Arrangement is null && (Style is not null || Tone is not null);

    /// <summary>Reads a design's name.</summary>
    /// <exception cref="InputException">What follows the name is not known.</exception>
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
                _ when Templates.Ids("arrangements").Contains(part) => look with { Arrangement = part },
                _ when DesignStyle.Known.Contains(part) => look with { Style = part },
                _ =>
                    throw new InputException("design.unknown-look", ("part", part),
                        ("list", string.Join(", ", Templates.Ids("arrangements"))), ("list-2", string.Join(", ", DesignStyle.Known))),
            };
        }
        return look;
    }
}
