using System.Globalization;
using LabelForge.Measures;
using LabelForge.Print.Designs;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Looks;

/// <summary>Reads the values of a look; each refusal names the file and the line.</summary>
internal static class LookText
{
    public static string? Known(TextNode? node, string what, IReadOnlyList<string> known) => node is null ? null
        : known.Contains(node.Text) ? node.Text
        : throw node.Refuse($"No {what} is named \"{node.Text}\".", Spelling.Nearest(node.Text, known) is { } near ? $"Did you mean \"{near}\"? Known: {string.Join(", ", known)}." : $"Known: {string.Join(", ", known)}.");

    public static double? Number(TextNode? node, string what, double least, double most) => node is null ? null
        : double.TryParse(node.Text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most ? value
        : throw node.Refuse($"\"{what}: {node.Text}\" is no number from {Written(least)} to {Written(most)}.", $"Write, for example, {what}: {Written(Math.Min(most, Math.Max(least, 1)))}");

    public static Colour? Colour(TextNode? node) => node is null ? null
        : Print.Colour.Parse(node.Text) ?? throw node.Refuse($"\"{node.Text}\" is not a colour.", "Write # and six hexadecimal digits in quotation marks: \"#c9a77c\".");

    private static string Written(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
