using System.CommandLine.Parsing;
using LabelForge.Recipes.Files;

namespace LabelForge.Cli.Help;

/// <summary>What is wrong with a call, in a sentence, and what was probably meant.</summary>
internal static class CallMessages
{
    /// <summary>Whether a call can be done as it is written: a word that looks like an option is
    /// one, unless it stands behind --.</summary>
    public static bool IsWrong(ParseResult call) => call.Errors.Count > 0 || TakenForAValue(call) is not null;

    /// <summary>The first thing that is wrong with a call that could not be read.</summary>
    public static string Of(ParseResult call)
    {
        var verb = call.CommandResult.Command;
        var path = VerbExamples.PathOf(verb);
        var wrong = Unknown(call, verb, path) ?? Missing(call, verb, path) ?? Value(call) ?? call.Errors[0].Message;
        return $"{wrong} See: labelforge {(path.Length == 0 ? "" : $"{path} ")}--help";
    }

    private static string? Unknown(ParseResult call, Command verb, string path)
    {
        if ((TakenForAValue(call) ?? call.UnmatchedTokens.FirstOrDefault()) is not { } word)
            return null;
        if (word.StartsWith('-') && word.Length > 1 && !char.IsAsciiDigit(word[1]))
        {
            var name = word.Split('=')[0];
            if (verb.Options.FirstOrDefault(o => !o.Hidden && o.Name == name) is { } early)
                return $"{name} stands behind the verb: labelforge {path} {ValueNames.Of(early)}.";
            if (name == "--format" && path.Length > 0)
                return $"{path} takes no --format: it answers in words alone.";
            return $"{(path.Length == 0 ? "labelforge" : path)} takes no {name}.{Meant(Spelling.NearestOfFew(name, verb.Options.Where(o => !o.Hidden).Select(o => o.Name)))}";
        }
        if (verb.Subcommands.Count > 0)
        {
            var names = verb.Subcommands.Where(v => !v.Hidden).Select(v => v.Name);
            return $"\"{word}\" is not something {(path.Length == 0 ? "labelforge" : path)} does.{Meant(Spelling.NearestOfFew(word, names))}";
        }
        // Most often a figure whose option was forgotten, or a name of several words.
        var named = verb.Options.Where(o => o is { Hidden: false, Required: true }).Select(o => $" {o.Name} {word}?").ToArray();
        return $"{path} has no place for \"{word}\".{(named.Length == 1 ? $" Did you mean{named[0]}" : "")} "
            + "Put a name of several words in quotation marks.";
    }

    // An option that the verb does not have would else be the name of a folder or of a recipe.
    private static string? TakenForAValue(ParseResult call) => call.Tokens.Any(t => t.Type == TokenType.DoubleDash) ? null
        : call.CommandResult.Children.OfType<ArgumentResult>().SelectMany(a => a.Tokens).Select(t => t.Value)
            .FirstOrDefault(v => v.Length > 2 && v.StartsWith("--", StringComparison.Ordinal));

    private static string? Missing(ParseResult call, Command verb, string path)
    {
        if (verb.Arguments
            .FirstOrDefault(a => a.Arity.MinimumNumberOfValues > 0
                && !a.HasDefaultValue
                && call.GetResult(a) is null or { Tokens.Count: 0 }) is { } argument)
            return $"{path} needs {ValueNames.Of(argument)}: {FirstClause(argument.Description)}.";
        if (verb.Options.FirstOrDefault(o => o.Required && (call.GetResult(o) is null or { IdentifierToken: null })) is { } option)
            return $"{path} needs {ValueNames.Of(option)}: {FirstClause(option.Description)}.";
        return verb.Action is null && verb.Subcommands.Count > 0
            ? $"{path} does several things: {string.Join(", ", verb.Subcommands.Where(v => !v.Hidden).Select(v => $"{path} {v.Name}"))}."
            : null;
    }

    private static string? Value(ParseResult call)
    {
        var at = call.Errors[0].SymbolResult;
        var option = at as OptionResult ?? at?.Parent as OptionResult;
        if (option is null)
            return null;
        if (option.Tokens is not [var token, ..])
            return $"{option.Option.Name} needs a value: {ValueNames.Of(option.Option)}.";
        return ValueNames.IsNumber(option.Option.ValueType)
            ? $"\"{token.Value}\" is not a number that {option.Option.Name} can use. Write figures with a decimal point."
            : $"{option.Option.Name} does not know \"{token.Value}\".{Known(option.Option)}";
    }

    private static string Known(Option option)
    {
        var words = option.GetCompletions(System.CommandLine.Completions.CompletionContext.Empty).Select(c => c.Label).ToArray();
        return words.Length == 0 ? "" : $" Write one of: {string.Join(", ", words)}.";
    }

    private static string Meant(string? near) => near is null ? "" : $" Did you mean {near}?";

    private static string FirstClause(string? description) => (description ?? "").Split([';', '('], 2)[0].TrimEnd('.', ' ');
}
