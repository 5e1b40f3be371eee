using System.CommandLine.Completions;
using LabelForge.Print.Jobs;
using LabelForge.Print.Sheets;
using LabelForge.Records.Books;

namespace LabelForge.Cli.Completion;

/// <summary>
/// What may stand at each place of a call, beyond what the place itself says: the recipes, materials, lots, designs and
/// label stock of the workshop named, or of the current folder. Where nothing can be read, nothing is proposed.
/// </summary>
internal static class WordSources
{
    private static readonly Dictionary<string, Func<ParseResult, IEnumerable<string>>> ByName = new(StringComparer.Ordinal)
    {
        ["RECIPE"] = Recipes,
        ["RECIPE[:PIECES]"] = Recipes,
        ["FILE"] = r => r.CommandResult.Command.Name == "check" ? Recipes(r) : [],
        ["WHAT"] = r => r.CommandResult.Command.Name == "cost" ? Recipes(r).Concat(Lots(r)) : [],
        ["MATERIAL"] = Materials,
        ["LOT"] = Lots,
        ["CODE"] = Lots,
        ["FROM"] = r => Lots(r).Concat(Materials(r)),
        ["LIST"] = r => r.CommandResult.Command.Name == "books" ? [.. BookLists.All, "all"] : BookLists.All,
        ["--lot"] = Lots,
        ["--from"] = MaterialLots,
        ["--stock"] = Stock,
        ["--show"] = Stock,
        ["--design"] = r => new DesignShelf(Folder(r)).Ids,
        ["--market"] = _ => Shipped.Markets.Ids,
        ["--names"] = _ => ["market", "dual"],
        ["--product"] = _ => ProductKinds.All.Select(k => k.Id),
        ["--variant"] = Variants,
    };

    /// <summary>Gives every place of the tree its source.</summary>
    public static void AddTo(Command command)
    {
        foreach (var option in command.Options)
        {
            if (ByName.TryGetValue(option.Name, out var words))
                option.CompletionSources.Add(c => Items(words, c));
        }
        foreach (var argument in command.Arguments)
        {
            if (ByName.TryGetValue(argument.Name, out var words))
                argument.CompletionSources.Add(c => Items(words, c));
        }
        foreach (var verb in command.Subcommands)
            AddTo(verb);
    }

    private static IEnumerable<CompletionItem> Items(Func<ParseResult, IEnumerable<string>> words, CompletionContext context)
    {
        try
        {
            return [.. words(context.ParseResult).Select(w => new CompletionItem(w))];
        }
        catch (Exception e) when (e is InputException or IOException or UnauthorizedAccessException)
        {
            // A shell asks at every press of a key; a message here would stand in the middle of the maker's line.
            return [];
        }
    }

    private static string Folder(ParseResult r) => Value(r, "--workshop") ?? Directory.GetCurrentDirectory();

    private static string? Value(ParseResult r, string option) =>
        r.CommandResult.Command.Options.FirstOrDefault(o => o.Name == option) is { } known
            && r.GetResult(known) is { Tokens: [var token, ..] } ? token.Value : null;

    private static IEnumerable<string> Recipes(ParseResult r) => Shipped.Open(Folder(r)).RecipeIds;

    private static IEnumerable<string> Materials(ParseResult r) => Shipped.Open(Folder(r)).Materials.Keys.Order(StringComparer.Ordinal);

    private static IEnumerable<string> Stock(ParseResult r) => StockShelf.Of(Folder(r)).Ids;

    // More than these nobody looks through.
    private const int MostProposed = 500;

    private static IEnumerable<string> Lots(ParseResult r) =>
        Book(r)?.Ask(books => books.LastLots(MostProposed)).Order(StringComparer.Ordinal) ?? Enumerable.Empty<string>();

    private static IEnumerable<string> MaterialLots(ParseResult r) =>
        Book(r)?.Ask(books => books.InStock().Take(MostProposed).Select(s => books.Bottle(s.Receipt.Id)).ToArray()) ?? [];

    // Only books that are there: a press of a key makes no file.
    private static OpenBooks? Book(ParseResult r) => OpenBooks.Exists(Folder(r)) ? OpenBooks.Open(Folder(r)) : null;

    private static IEnumerable<string> Variants(ParseResult r)
    {
        var named = r.CommandResult.Command.Arguments.FirstOrDefault(a => a.Name == "RECIPE") is { } recipe
            && r.GetResult(recipe) is { Tokens: [var token, ..] } ? token.Value : null;
        return named is null ? [] : Shipped.Open(Folder(r)).Recipe(named).Variants.Select(v => v.Name);
    }
}
