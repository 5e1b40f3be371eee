using LabelForge.Print;
using LabelForge.Print.Designs;
using LabelForge.Recipes.Files;

namespace LabelForge.Starts;

/// <summary>Something that most makers of one trade buy, as a material's file to begin with: from
/// templates/goods, to be held against the wrapper.</summary>
/// <param name="Id">The id that its file will have.</param>
/// <param name="Text">The file's text, which says where its list is from.</param>
/// <param name="Material">What the text says.</param>
public sealed record UsualGood(string Id, string Text, Material Material)
{
    private static readonly Lazy<ImmutableArray<UsualGood>> Read = new(() => [.. Templates.Ids("goods").Select(Of)]);

    /// <summary>All, in the order of their names.</summary>
    public static ImmutableArray<UsualGood> All => Read.Value;

    /// <summary>Those of some kind of material, in the order of their names.</summary>
    public static IEnumerable<UsualGood> OfKind(params MaterialKind[] kinds) => All.Where(g => kinds.Contains(g.Material.Kind));

    /// <summary>The good of an id; null where there is none.</summary>
    public static UsualGood? Named(string id) => All.FirstOrDefault(g => g.Id == id);

    /// <summary>The colourant that a few words mean: <c>green</c>, <c>mica, green</c>; null where
    /// they name no colour known, or two.</summary>
    public static UsualGood? Colour(string words)
    {
        var written = words.ToLowerInvariant().Split([' ', ',', '-', '.'], StringSplitOptions.RemoveEmptyEntries);
        var found = OfKind(MaterialKind.Colourant).Where(g => written.Contains(g.Material.Name.ToLowerInvariant().Split(' ')[0]))
            .ToArray();
        return found is [var one] ? one : null;
    }

    private static UsualGood Of(string id)
    {
        var text = Templates.Text($"goods/{id}.yaml");
        return new(id, text, MaterialFile.Read(id, YamlFile.ReadText(text, $"templates/goods/{id}.yaml")));
    }
}
