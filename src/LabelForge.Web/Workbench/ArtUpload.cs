using LabelForge.Print;
using LabelForge.Print.Designs;
using LabelForge.Print.Jobs;
using LabelForge.Print.Output;
using LabelForge.Recipes.Files;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>Puts a maker's picture on a design: the picture beside the workshop's own designs,
/// and a design of the maker's own that shows it.</summary>
internal static class ArtUpload
{
    /// <summary>The largest picture that is taken.</summary>
    public const long MostBytes = 5_000_000;

    /// <summary>Puts a picture on a design's front. A shipped design is copied first; one of the maker's own is changed.</summary>
    /// <param name="workshop">The workshop's folder.</param>
    /// <param name="design">The design's id.</param>
    /// <param name="fileName">The picture's name as the person knows it.</param>
    /// <param name="bytes">The picture.</param>
    /// <param name="width">How wide it is shown: "10 mm".</param>
    /// <returns>The id of the design that shows it.</returns>
    /// <exception cref="InputException">The picture or the width cannot be used; nothing was written then.</exception>
    public static string Place(string workshop, string design, string fileName, byte[] bytes, string width)
    {
        var picture = NameOf(fileName);
        // Judged where it does no harm: only a picture that can be printed comes into the workshop.
        var aside = Directory.CreateTempSubdirectory("labelforge-art-");
        try
        {
            File.WriteAllBytes(Path.Combine(aside.FullName, picture), bytes);
            ArtFile.Read(aside.FullName, picture);
        }
        finally
        {
            aside.Delete(recursive: true);
        }
        var folder = Path.Combine(workshop, "designs");
        var isOwn = new DesignShelf(workshop).IsOwn(design);
        var id = isOwn ? design : Free(folder, design);
        var before = isOwn ? File.ReadAllText(Path.Combine(folder, design + ".yaml")) : Templates.Text($"designs/{design}.yaml");
        var after = Shown(before, picture, width.Trim());
        Directory.CreateDirectory(folder);
        AtomicFile.Write(Path.Combine(folder, picture), stream => stream.Write(bytes));
        // The design is read as it would be for printing; a width that is none is told by its line.
        var path = Path.Combine(folder, id + ".yaml");
        AtomicFile.Write(path, after);
        try
        {
            new DesignShelf(workshop).Load(id);
        }
        catch (InputException)
        {
            if (isOwn)
                AtomicFile.Write(path, before);
            else
                File.Delete(path);
            throw;
        }
        return id;
    }

    private static string Shown(string text, string picture, string width)
    {
        var panels = YamlEdit.Keys(text, "panels");
        var front = panels.FirstOrDefault(p => YamlEdit.Get(text, "panels", p, "principal") == "true") ?? panels[0];
        var art = Enumerable.Range(0, YamlEdit.Count(text, "panels", front, "elements"))
            .FirstOrDefault(i => YamlEdit.Get(text, "panels", front, "elements", i, "role") == "art", -1);
        if (art >= 0)
            return YamlEdit.Set(YamlEdit.Set(text, ["panels", front, "elements", art, "file"], picture),
                ["panels", front, "elements", art, "length"], width);
        return YamlEdit.Add(text, ["panels", front, "elements"],
            $"{{ role: art, file: {YamlScalar.Write(picture)}, place: top, align: "
                + $"centre, length: {YamlScalar.Write(width)}, gap: 1.5 mm }}");
    }

    private static string Free(string folder, string design)
    {
        var id = design + "-own";
        for (var i = 2; File.Exists(Path.Combine(folder, id + ".yaml")); i++)
            id = $"{design}-own-{i}";
        return id;
    }

    private static string NameOf(string fileName)
    {
        var ending = Path.GetExtension(fileName).ToLowerInvariant();
        if (ending is not (".svg" or ".png" or ".jpg" or ".jpeg"))
            throw new InputException("form.not-a-picture");
        return MaterialDraft.IdOf(Path.GetFileNameWithoutExtension(fileName)) + ending;
    }
}
