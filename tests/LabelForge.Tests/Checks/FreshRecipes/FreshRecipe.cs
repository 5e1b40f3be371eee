using System.Collections.Immutable;
using LabelForge.Tests.Recipes;

namespace LabelForge.Tests.Checks.FreshRecipes;

/// <summary>A recipe of a set and what must be told of it.</summary>
/// <param name="Id">The recipe's id.</param>
/// <param name="Wanted">What must, or may, be told.</param>
internal sealed record FreshRecipe(string Id, ImmutableArray<RuleWanted> Wanted)
{
    /// <summary>Writes a set's files into a folder; <c>== file</c> begins a file and <c>-- recipe: us rule, rule; eu rule</c>
    /// says what is wanted of a recipe.</summary>
    /// <param name="set">The set's name.</param>
    /// <param name="folder">Where its workshop goes.</param>
    public static ImmutableArray<FreshRecipe> Write(string set, BenchFolder folder)
    {
        var file = Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "FreshRecipes", set + ".txt");
        var lines = File.ReadAllLines(file);
        foreach (var part in string.Join('\n', lines.Where(l => !l.StartsWith("-- ", StringComparison.Ordinal))).Split("\n== ").Skip(1))
            folder.Write(part[..part.IndexOf('\n')], part[(part.IndexOf('\n') + 1)..] + "\n");
        return [.. lines.Where(l => l.StartsWith("-- ", StringComparison.Ordinal)).Select(l => One(l[3..]))];
    }

    private static FreshRecipe One(string line)
    {
        var (id, wanted) = (line[..line.IndexOf(':')], line[(line.IndexOf(':') + 1)..]);
        return new(id, [.. wanted.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).SelectMany(Market)]);
    }

    private static IEnumerable<RuleWanted> Market(string wanted)
    {
        var (market, rules) = (wanted[..wanted.IndexOf(' ')], wanted[(wanted.IndexOf(' ') + 1)..]);
        return rules.Split(", ").Select(r => new RuleWanted(market, [.. r.TrimStart('?').Split('/')], r[0] == '?'));
    }
}

/// <summary>One of some rules that must be told in a market, or, where optional, may be.</summary>
internal sealed record RuleWanted(string Market, ImmutableArray<string> Rules, bool Optional);
