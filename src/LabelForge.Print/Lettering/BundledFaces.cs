using System.Collections.Concurrent;

namespace LabelForge.Print.Lettering;

/// <summary>
/// The type that ships with the tool, all of it under the SIL Open Font License: Barlow Condensed for what is read
/// closely; Alegreya, Jost, Fraunces, DM Serif Display, Josefin Sans and Caveat Brush for names.
/// The licences lie beside the files in templates/fonts.
/// </summary>
public static class BundledFaces
{
    private static readonly ConcurrentDictionary<string, TypeFace> Loaded = new(StringComparer.Ordinal);

    /// <summary>Regular.</summary>
    public static TypeFace Regular => Named("regular")!;

    /// <summary>Semi-bold.</summary>
    public static TypeFace SemiBold => Named("semibold")!;

    /// <summary>A weight by its name, or null where there is none of that name.</summary>
    public static TypeFace? Named(string name) => name switch
    {
        "regular" => OfFile("BarlowCondensed-Regular"),
        "medium" => OfFile("BarlowCondensed-Medium"),
        "semibold" => OfFile("BarlowCondensed-SemiBold"),
        "bold" => OfFile("BarlowCondensed-Bold"),
        _ => null,
    };

    /// <summary>A face by its file's name in templates/fonts, without the ending. A face is loaded once.</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    public static TypeFace OfFile(string name) => Loaded.GetOrAdd(name, n => TypeFace.FromFile(n, Templates.Bytes($"fonts/{n}.ttf")));
}
