using LabelForge.Quantities;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>Reads <c>package: { shape: bar, size: 3.25x2.25x1 in }</c>.</summary>
public static class PackageFile
{
    /// <summary>Reads a package.</summary>
    /// <exception cref="InputException">Shape or size is missing or cannot be used; the message names the line.</exception>
    public static Package Read(MapNode map)
    {
        map.OnlyKeys("A package", "shape", "size");
        var (shape, size) = (map.Required("shape", "bar"), map.Required("size", "3.25x2.25x1 in"));
        var read = Package.Parse(shape.Text, size.Text);
        return read.IsValue ? read.Value : throw (Package.ShapeWords.Contains(shape.Text) ? size : shape).Refuse(read.Problem);
    }
}
