using LabelForge.Print.Designs;
using LabelForge.Quantities;

namespace LabelForge.Print.Jobs;

/// <summary>The label designs at hand: the maker's own, in the workshop's folder <c>designs</c>,
/// then those that ship with the tool.</summary>
/// <param name="workshop">The workshop's folder; it need not have one of designs.</param>
public sealed class DesignShelf(string workshop)
{
    private string Folder => Path.Combine(workshop, "designs");

    /// <summary>The ids of all, each once.</summary>
    public IReadOnlyList<string> Ids => [.. Own.Union(LabelDesign.Known, StringComparer.Ordinal)];

    private IEnumerable<string> Own => Directory.Exists(Folder)
        ? Directory.EnumerateFiles(Folder, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)
        : [];

    /// <summary>Whether a design is the maker's own; it goes before a shipped one of the same id.</summary>
    public bool IsOwn(string id) => !id.Contains('/') && !id.Contains('\\') && File.Exists(Path.Combine(Folder, id + ".yaml"));

    /// <summary>A design.</summary>
    /// <param name="id">Its id; a style and a tone may follow: <c>bar-2x4+bookish+dark</c>.</param>
    /// <param name="package">The package it is to fit; null for the one that the design is drawn for.</param>
    /// <exception cref="InputException">There is none of that id, or its file says something that
    /// cannot be used; the message names the line.</exception>
    public LabelDesign Load(string id, Package? package = null)
    {
        var name = id.Split('+')[0];
        return IsOwn(name)
            ? LabelDesign.LoadFile(Path.Combine(Folder, name + ".yaml"), $"designs/{name}.yaml", package, id)
            : LabelDesign.Load(id, package);
    }
}
