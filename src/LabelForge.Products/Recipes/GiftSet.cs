using LabelForge.Quantities;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>What is in a gift set.</summary>
/// <param name="Named">The product, as it is named where a recipe is asked for.</param>
/// <param name="Pieces">How many of it.</param>
/// <param name="Line">The line of the file; 0 where it is of none.</param>
public sealed record SetItem(string Named, int Pieces, int Line);

/// <summary>Several products in one package: <c>sets/ID.yaml</c>, or as the command names it.</summary>
/// <param name="Id">The file's name without its ending; the set's name where it has no file.</param>
/// <param name="Name">The name on its label.</param>
/// <param name="Holds">What is in it.</param>
public sealed record GiftSet(string Id, string Name, ImmutableArray<SetItem> Holds)
{
    /// <summary>The folder in a workshop that holds sets.</summary>
    public const string Folder = "sets";

    /// <summary>What it is, in plain words; null for a set of so many pieces.</summary>
    public string? Identity { get; init; }

    /// <summary>What a set is sold for, in the workshop's currency; null where the maker has set no price.</summary>
    public decimal? Price { get; init; }

    /// <summary>How its label is to look; what is not written is proposed from its name and what is in it.</summary>
    public LookWish Look { get; init; } = LookWish.None;

    /// <summary>Its box or bag; null where nothing says, and the label's front is taken for the whole front.</summary>
    public Package? Package { get; init; }

    /// <summary>The file, as the maker knows it; null where it has none.</summary>
    public string? File { get; init; }

    /// <summary>How many pieces are in it.</summary>
    public int Pieces => Holds.Sum(h => h.Pieces);

    /// <summary>The ids of a workshop's sets, in order.</summary>
    public static ImmutableArray<string> Ids(Workshop workshop) => Directory.Exists(Path.Combine(workshop.Folder, Folder))
        ? [.. Directory.EnumerateFiles(Path.Combine(workshop.Folder, Folder), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f))
            .Order(StringComparer.Ordinal)] : [];

    /// <summary>The set that a person names: by its id, or by its file; null where it is none, and the name may be a recipe's.</summary>
    /// <exception cref="InputException">Its file cannot be used.</exception>
    public static GiftSet? Named(Workshop workshop, string named)
    {
        var id = named.EndsWith(".yaml", StringComparison.OrdinalIgnoreCase)
            && Path.GetFileName(Path.GetDirectoryName(Path.GetFullPath(named, workshop.Folder))) == Folder
            ? Path.GetFileNameWithoutExtension(named)
            : named.StartsWith(Folder + "/", StringComparison.Ordinal)
            ? named[(Folder.Length + 1)..]
            : named;
        return Ids(workshop).Contains(id) && (id != named || !workshop.RecipeIds.Contains(id))
            ? Read(id, YamlFile.Read(Path.Combine(workshop.Folder, Folder, $"{id}.yaml"), $"{Folder}/{id}.yaml")) : null;
    }

    /// <summary>Reads a set's file.</summary>
    /// <exception cref="InputException">Something in it is wrong.</exception>
    public static GiftSet Read(string id, MapNode file)
    {
        file.OnlyKeys("A set", "name", "identity", "holds", "price", "package", "look");
        return Whole(new GiftSet(id, file.Required("name", "the set's own name").Text,
        [
            .. file.Items("holds").Select(node =>
            {
                var map = (node as MapNode ?? throw node.Refuse("set.not-a-product", ("kind", node.Kind)))
                    .OnlyKeys("A product in a set", "use", "count");
                var use = map.Required("use", "bramble-bar");
                return new SetItem(use.Text, map.OptionalText("count") is { } count ? Count(count) : 1, use.Line);
            }),
        ])
        {
            Identity = file.OptionalText("identity")?.Text,
            Price = RecipeFile.ReadPrice(file),
            Look = LookWish.Read(file),
            Package = file.OptionalMap("package") is { } package ? PackageFile.Read(package) : null,
            File = file.File,
        });
    }

    /// <summary>The set, where it holds at least two pieces.</summary>
    /// <exception cref="InputException">It does not.</exception>
    public static GiftSet Whole(GiftSet set) => set.Pieces >= 2 ? set
        : throw new InputException(set.File, 0, "set.too-small");

    /// <summary>The products in it, in the order in which they stand on its label, each with its number.</summary>
    /// <exception cref="InputException">There is no such product, or a name stands for several.</exception>
    public ImmutableArray<(Product Product, int Pieces)> Products(Workshop workshop) =>
        [.. Holds.GroupBy(h => h.Named).Select(g => (One(workshop, g.First()), g.Sum(h => h.Pieces)))];

    private Product One(Workshop workshop, SetItem held)
    {
        try
        {
            return workshop.ProductOf(held.Named);
        }
        catch (InputException e) when (File is not null && e.Problem.File is null)
        {
            throw new InputException(e.Problem with { File = File, Line = held.Line });
        }
    }

    private static int Count(TextNode node) =>
        PlainFigure.Whole(node.Text) is > 0 and <= 1000 and var count
            ? count : throw node.Refuse("set.not-a-count", ("text", node.Text));
}
