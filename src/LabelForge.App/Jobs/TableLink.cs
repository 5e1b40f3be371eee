namespace LabelForge.Print.Jobs;

/// <summary>Where a code on the table leads: the maker's page.</summary>
public static class TableLink
{
    /// <summary>The address: what the look says, else the maker's page of workshop.yaml; null where there is none.</summary>
    public static string? Of(Workshop workshop, Recipe recipe) => recipe.Look.Over(workshop.Business.Look).Link?.Text
        ?? (workshop.Business.Web is { Length: > 0 } web ? web.Contains("://", StringComparison.Ordinal) ? web : $"https://{web}" : null);
}
