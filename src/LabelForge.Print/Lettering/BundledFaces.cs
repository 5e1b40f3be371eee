using LabelForge.Print.Designs;

namespace LabelForge.Print.Lettering;

/// <summary>The type that ships with the tool: Barlow Condensed, SIL Open Font License, four weights.</summary>
public static class BundledFaces
{
    private static readonly Dictionary<string, Lazy<TypeFace>> Faces = new[] { "Regular", "Medium", "SemiBold", "Bold" }
        .ToDictionary(w => w.ToLowerInvariant(), w => new Lazy<TypeFace>(() => Load($"BarlowCondensed-{w}")));

    /// <summary>The weights by the names that designs use: regular, medium, semibold, bold.</summary>
    public static IReadOnlyCollection<string> Names => Faces.Keys;

    /// <summary>Regular.</summary>
    public static TypeFace Regular => Faces["regular"].Value;

    /// <summary>Semi-bold.</summary>
    public static TypeFace SemiBold => Faces["semibold"].Value;

    /// <summary>A weight by its name, or null where there is none of that name.</summary>
    public static TypeFace? Named(string name) => Faces.TryGetValue(name, out var face) ? face.Value : null;

    private static TypeFace Load(string name) => TypeFace.FromFile(name, Templates.Bytes($"fonts/{name}.ttf"));
}
