using System.Collections;
using System.Text.Json.Nodes;
using LabelForge.Measures;

namespace LabelForge.Files;

/// <summary>Plain values as JSON, by their own types and without looking at them as objects: what is compiled
/// ahead of time knows no others.</summary>
public static class PlainJson
{
    /// <summary>A text, a number, yes or no, a day, a time or a list of these as JSON; null stays null.</summary>
    /// <exception cref="ArgumentException">The value is of another type.</exception>
    public static JsonNode? Of(object? value) => value switch
    {
        null => null,
        string text => text,
        bool yes => yes,
        int whole => whole,
        long whole => whole,
        decimal figure => figure,
        double figure => figure,
        DateOnly day => day.ToIso(),
        DateTime at => at,
        IEnumerable list => new JsonArray([.. list.Cast<object?>().Select(Of)]),
        _ => throw new ArgumentException($"{value.GetType().Name} is no plain value.", nameof(value)),
    };
}
