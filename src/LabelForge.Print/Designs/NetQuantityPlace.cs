using LabelForge.Recipes.Files;

namespace LabelForge.Print.Designs;

/// <summary>Where the net quantity statement has to stand (21 CFR 701.13(f)); the figures come from templates/rules.</summary>
/// <param name="BottomShare">The part of the panel, from the bottom, that holds it.</param>
/// <param name="ExemptSquareInches">The area of panel up to which that does not apply.</param>
/// <param name="ClearAbove">Clear space above and below, in heights of its lettering.</param>
/// <param name="ClearBeside">Clear space at the sides, in widths of its letter N.</param>
public sealed record NetQuantityPlace(double BottomShare, decimal ExemptSquareInches, double ClearAbove, double ClearBeside)
{
    /// <summary>The citation, for messages.</summary>
    public const string Source = "21 CFR 701.13(f)";

    private static readonly Lazy<NetQuantityPlace> Read = new(() =>
    {
        var file = YamlFile.ReadText(Templates.Text("rules/net-quantity-place.yaml"), "rules/net-quantity-place.yaml");
        return new NetQuantityPlace(Figure(file, "bottom-share"), (decimal)Figure(file, "exempt-area"),
            Figure(file, "clear-above-below"), Figure(file, "clear-sides"));
    });

    /// <summary>The figures.</summary>
    public static NetQuantityPlace Current => Read.Value;

    private static double Figure(MapNode file, string id)
    {
        var entry = file.OptionalMap($"us.net-quantity.{id}") ?? throw file.Refuse($"\"{id}\" is missing.", "Write the entry.");
        entry.OnlyKeys("An entry", "what", "value", "source", "checked", "from memory");
        entry.Required("source", Source);
        entry.Required("checked", "2026-11-25");
        entry.Required("value", "1");
        return entry.NumberOr("value", 0);
    }
}
