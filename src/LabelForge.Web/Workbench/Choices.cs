using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>How a recipe's labels were last wanted.</summary>
public sealed record Choice(string? Market = null, string? Design = null, string? Stock = null, string? Printer = null);

/// <summary>What was chosen for each recipe's labels, kept beside the drafts, so that a reload does not forget it.</summary>
public sealed class Choices(OpenDocuments documents) : IDisposable
{
    private readonly PageStateFile<Choice> _kept = new(documents, "choices.json");

    /// <summary>The choice for a recipe.</summary>
    public Choice Of(string recipe) => _kept.TryGet(recipe, out var choice) && choice is not null ? choice : new Choice();

    /// <inheritdoc/>
    public void Dispose() => _kept.Dispose();

    /// <summary>Keeps a choice.</summary>
    public void Keep(string recipe, Choice choice) => _kept.Keep(recipe, choice);
}
