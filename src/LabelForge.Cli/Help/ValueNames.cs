using System.CommandLine.Help;
using Argument = System.CommandLine.Argument;

namespace LabelForge.Cli.Help;

/// <summary>What stands for a value in help: a word for its kind, never the values themselves,
/// which may be many and are a workshop's own.</summary>
internal static class ValueNames
{
    private static readonly Dictionary<string, string> ByOption = new(StringComparer.Ordinal)
    {
        ["--on"] = "date",
        ["--since"] = "date",
        ["--best"] = "date",
        ["--out"] = "file",
        ["--csv"] = "file",
        ["--paper"] = "file",
        ["--sheet"] = "file",
        ["--report"] = "file",
        ["--workshop"] = "folder",
        ["--declaration"] = "text",
        ["--note"] = "text",
        ["--reason"] = "text",
        ["--by"] = "person",
        ["--to"] = "person",
        ["--despite"] = "rule",
        ["--show"] = "stock",
    };

    /// <summary>The options of a verb that are told of; that help can be asked for is said once.</summary>
    public static IEnumerable<Option> Shown(Command verb) => verb.Options.Where(o => !o.Hidden && o is not HelpOption);

    /// <summary>An option with the word for its value: <c>--out &lt;file&gt;</c>.</summary>
    public static string Of(Option option) => option.ValueType == typeof(bool) ? option.Name : $"{option.Name} <{ValueOf(option)}>";

    /// <summary>An argument: <c>&lt;recipe&gt;</c>.</summary>
    public static string Of(Argument argument) =>
        $"<{argument.Name.ToLowerInvariant()}>{(argument.Arity.MaximumNumberOfValues > 1 ? "..." : "")}";

    /// <summary>What an option says, with what it is where it is left out.</summary>
    public static string Says(Option option) =>
        Usual(option.Description, option.HasDefaultValue && option.ValueType != typeof(bool) ? option.GetDefaultValue() : null);

    /// <summary>What an argument says, with what it is where it is left out.</summary>
    public static string Says(Argument argument) =>
        Usual(argument.Description, argument.HasDefaultValue ? argument.GetDefaultValue() : null);

    private static string Usual(string? description, object? usual) =>
        usual is null ? description ?? "" : Invariant($"{description} (default: {usual})");

    private static string ValueOf(Option option) =>
        option.HelpName is { } named ? named
            : ByOption.TryGetValue(option.Name, out var kind) ? kind
            : IsNumber(option.ValueType) ? "number"
            : option.Name.TrimStart('-');

    /// <summary>Whether a value of this type is written in figures.</summary>
    public static bool IsNumber(Type type) =>
        (Nullable.GetUnderlyingType(type) ?? type) is var t
            && (t == typeof(int) || t == typeof(decimal) || t == typeof(double) || t == typeof(long));
}
