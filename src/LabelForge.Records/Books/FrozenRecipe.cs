using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>A material of a frozen recipe: how much was planned, and its file as it stood.</summary>
public sealed record FrozenLine(string Material, string Name, decimal Grams, string File);

/// <summary>A recipe as it stood when a batch began: scaled amounts, the declaration, and the files themselves.</summary>
/// <remarks>ISO 22716:2007, 7.2 asks that what is made be documented: formula, and each material with its lot and amount (from memory).</remarks>
public sealed record FrozenRecipe(string Recipe, string Product, decimal TotalGrams, int Pieces, string Market, string? Statement, ImmutableArray<FrozenLine> Lines, string RecipeFile)
{
    private static readonly JsonSerializerOptions Options = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Freezes a batch.</summary>
    /// <param name="workshop">The workshop, for the files' text.</param>
    /// <param name="batch">The batch at its real size.</param>
    /// <param name="market">The market of the declaration.</param>
    /// <param name="statement">The declaration then; null where none could be made.</param>
    public static FrozenRecipe Of(Workshop workshop, BatchFormula batch, string market, string? statement) => new(
        batch.Recipe.Id, batch.Recipe.Name, batch.Total.Grams, batch.Recipe.Pieces, market, statement,
        [.. batch.Lines.Select(l => new FrozenLine(l.Material.Id, l.Material.Name, l.Mass.Grams, Text(workshop, l.Material.File)))],
        Text(workshop, batch.Recipe.File));

    /// <summary>As text for the books.</summary>
    public string ToJson() => JsonSerializer.Serialize(this, Options);

    /// <summary>From the books.</summary>
    public static FrozenRecipe FromJson(string json) => JsonSerializer.Deserialize<FrozenRecipe>(json, Options)
        ?? throw new InputException(new Problem(null, 0, "A frozen recipe in the books is empty.", "Restore the last backup: labelforge restore BACKUP"));

    private static string Text(Workshop workshop, string file)
    {
        var path = Path.Combine(workshop.Folder, file);
        return File.Exists(path) ? File.ReadAllText(path) : "";
    }
}
