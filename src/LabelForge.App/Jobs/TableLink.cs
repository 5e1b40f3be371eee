using LabelForge.Print.Barcodes;
using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Fitting;

namespace LabelForge.Print.Jobs;

/// <summary>Where a code on the table leads: the maker's page.</summary>
public static class TableLink
{
    /// <summary>The address: what the look says, else the maker's page of workshop.yaml; null where there is none.</summary>
    public static string? Of(Workshop workshop, Recipe recipe) => recipe.Look.Over(workshop.Business.Look).Link?.Text
        ?? (workshop.Business.Web is { Length: > 0 } web ? web.Contains("://", StringComparison.Ordinal) ? web : $"https://{web}" : null);

    /// <summary>The code that leads there, for a label with a place for it; nothing where there is no address.</summary>
    /// <param name="link">What the code says when it is scanned.</param>
    /// <exception cref="InputException">It is too long for a code.</exception>
    public static LabelExtras Drawn(string? link) => link is null ? LabelExtras.None : LabelExtras.None with
    {
        Symbols = ImmutableDictionary<Role, InkBlock>.Empty
            .Add(Role.Link, Barcode.Draw(BarcodeKind.Qr, link, new BarcodeOptions()).OrRefuse()),
    };
}
