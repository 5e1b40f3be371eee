using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using LabelForge.Recipes.Files;

namespace LabelForge.Records.Books;

/// <summary>A material of a frozen recipe: how much was planned, and its file as it stood.</summary>
public sealed record FrozenLine(string Material, string Name, decimal Grams, string File);

/// <summary>The file of a material that another is made from, as it stood.</summary>
public sealed record FrozenPart(string Material, string File);

/// <summary>A recipe as it stood when a batch began: scaled amounts, the declaration, and the files themselves.</summary>
/// <remarks>ISO 22716:2007, 7.2 asks that what is made be documented: formula, and each material
/// with its lot and amount (from memory).</remarks>
public sealed record FrozenRecipe(string Recipe, string Product, decimal TotalGrams, int Pieces, string Market, string? Statement,
    ImmutableArray<FrozenLine> Lines, string RecipeFile)
{
    private static readonly FrozenJson Json = new(new JsonSerializerOptions { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping });

    /// <summary>The variant of the recipe; null for the recipe as it stands.</summary>
    public string? Variant { get; init; }

    /// <summary>By what fraction a weighed amount may be off before it is flagged; null for the usual.</summary>
    public decimal? Tolerance { get; init; }

    /// <summary>What the materials themselves are made from.</summary>
    public ImmutableArray<FrozenPart> Parts { get; init; } = [];

    /// <summary>Freezes a batch.</summary>
    /// <param name="workshop">The workshop, for the files' text.</param>
    /// <param name="batch">The batch at its real size.</param>
    /// <param name="market">The market of the declaration.</param>
    /// <param name="statement">The declaration then; null where none could be made.</param>
    public static FrozenRecipe Of(Workshop workshop, BatchFormula batch, string market, string? statement)
    {
        var lines = batch.Lines.GroupBy(l => l.Material.Id)
            .Select(g => new FrozenLine(g.Key, g.First().Material.Name, g.Sum(l => l.Mass.Grams), Text(workshop, g.First().Material.File)))
            .ToImmutableArray();
        return new(batch.Recipe.Id, batch.Recipe.Name, batch.Total.Grams, batch.Recipe.Pieces, market, statement, lines,
            Text(workshop, batch.Recipe.File))
        {
            Variant = batch.Recipe.VariantName,
            Tolerance = batch.Recipe.Tolerance,
            Parts = [.. PartsOf(workshop, batch.Lines.Select(l => l.Material)).Where(m => lines.All(l => l.Material != m.Id))
                .Select(m => new FrozenPart(m.Id, Text(workshop, m.File)))],
        };
    }

    /// <summary>As text for the books.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Json.FrozenRecipe);

    /// <summary>From the books.</summary>
    /// <exception cref="InputException">The text is no frozen recipe.</exception>
    public static FrozenRecipe FromJson(string json)
    {
        try
        {
            var read = JsonSerializer.Deserialize(json, Json.FrozenRecipe);
            return read is null || read.Lines.IsDefault
                ? throw Unreadable()
                : read with { Parts = read.Parts.IsDefault ? [] : read.Parts };
        }
        catch (JsonException)
        {
            throw Unreadable();
        }
    }

    /// <summary>The workshop with the materials of this batch as their files stood when it began.</summary>
    public Workshop AsItStood(Workshop now) => now.With(
    [
        .. Lines.Where(l => l.File.Length > 0).Select(l => Read(l.Material, l.File)),
        .. Parts.Where(p => p.File.Length > 0).Select(p => Read(p.Material, p.File)),
    ]);

    /// <summary>Whether the recipe, as it stood, had a variant of that name.</summary>
    public bool HasVariant(string name) => RecipeFile.Length > 0
        && LabelForge.Recipes.RecipeFile.Read(Recipe, YamlFile.ReadText(RecipeFile, $"recipes/{Recipe}.yaml")).Variants
            .Any(v => v.Name == name);

    private static Material Read(string id, string text) => MaterialFile.Read(id, YamlFile.ReadText(text, $"materials/{id}.yaml"));

    private static HashSet<Material> PartsOf(Workshop workshop, IEnumerable<Material> materials)
    {
        var found = new HashSet<Material>();
        var open = new Stack<Material>(materials);
        while (open.TryPop(out var material))
        {
            foreach (var part in material.MadeFrom.Select(u => workshop.Material(u.Material, material.File, u.Line)))
            {
                if (found.Add(part))
                    open.Push(part);
            }
        }
        return found;
    }

    private static InputException Unreadable() => new(null, 0, "books.damaged-frozen");

    private static string Text(Workshop workshop, string file)
    {
        var path = Path.Combine(workshop.Folder, file);
        return File.Exists(path) ? File.ReadAllText(path) : "";
    }
}

/// <summary>How a frozen recipe is written, settled when the program is built.</summary>
[JsonSerializable(typeof(FrozenRecipe))]
internal sealed partial class FrozenJson : JsonSerializerContext;
