using System.Collections.Immutable;
using LabelForge.Ingredients;

namespace LabelForge.Tests.Checks.Claims;

/// <summary>
/// A sentence as labels have them, with what must come of it. Written before the words and the grammar that judge them, by
/// what 21 U.S.C. 321(g)(1) and (i), 21 CFR 701.20, Directive 2001/83/EC Article 1(2), Regulation (EU) No 655/2013 and the
/// Canadian guidance on the line between cosmetics and drugs are understood to say (from memory, but for 701.20).
/// </summary>
/// <param name="Language">The sentence's language.</param>
/// <param name="Text">Its words.</param>
/// <param name="Wanted">What must come of it.</param>
/// <param name="Ingredients">The ingredients beside it.</param>
internal sealed record ClaimSentence(string Language, string Text, ImmutableArray<ClaimWanted> Wanted, ImmutableArray<string> Ingredients)
{
    /// <summary>The languages of the corpus.</summary>
    public static readonly ImmutableArray<string> Languages = ["en", "fr", "de", "es", "it", "nl", "pl"];

    /// <summary>The corpora: that which the grammar was made with, then each as it was written,
    /// measured first and learned from after.</summary>
    public static readonly ImmutableArray<string> Corpora = ["sentences", "later", "last", "fourth", "fifth", "sixth", "seventh", "eighth",
        "ninth", "tenth", "eleventh", "twelfth", "thirteenth", "fourteenth", "fifteenth",
        "sixteenth", "seventeenth", "eighteenth", "nineteenth",
        "twentieth", "twentyfirst", "twentysecond"];

    /// <summary>Whether it belongs to the third that is measured only: nothing was changed for what it showed.</summary>
    public bool HeldOut => Hash(Text) % 3 == 0;

    /// <summary>Whether nothing is to be found.</summary>
    public bool IsInnocent => Wanted.All(w => w.Optional);

    /// <summary>The sentences of a language: those that the grammar was made with, and those written when it stood.</summary>
    /// <param name="language">The language.</param>
    /// <param name="corpus">One of <see cref="Corpora"/>.</param>
    public static ImmutableArray<ClaimSentence> Read(string language, string corpus = "sentences") =>
        Path.Combine(Repository.Folder, "tests", "LabelForge.Tests", "Checks", "Claims", $"{corpus}-{language}.txt") is var file
            && File.Exists(file)
            ? [.. File.ReadLines(file).Where(l => l.Length > 0 && l[0] != '#').Select(l => One(language, l))] : [];

    /// <summary>The ingredients as the checks take them.</summary>
    public IEnumerable<(string Name, Ingredient? Known)> Names => Ingredients.Select(n => (n, IngredientDictionary.Shipped.Find(n)));

    private static ClaimSentence One(string language, string line)
    {
        string[] cells = [.. line.Split('|', StringSplitOptions.TrimEntries), ""];
        var wanted = cells[0] == "-" ? [] : cells[0].Split(' ').Select(ClaimWanted.Parse).ToImmutableArray();
        return new(language, cells[1], wanted,
            [.. cells[2].Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)]);
    }

    // FNV-1a, so that the same sentences are held out wherever and whenever it runs.
    private static uint Hash(string text) => text.Aggregate(2166136261u, (hash, c) => (hash ^ c) * 16777619u);
}

/// <summary>One thing that must, or may, come of a sentence.</summary>
/// <param name="Rules">The rules of which one is to be told.</param>
/// <param name="Markets">Where; empty for wherever the rule binds.</param>
/// <param name="Optional">Whether its absence is right too: people who know the law differ.</param>
internal sealed record ClaimWanted(ImmutableArray<string> Rules, ImmutableArray<string> Markets, bool Optional)
{
    /// <summary>Reads <c>drug</c>, <c>proof@eu,uk</c>, <c>false/doubt</c>, <c>soap?</c>.</summary>
    public static ClaimWanted Parse(string written)
    {
        var optional = written.Contains('?', StringComparison.Ordinal);
        var parts = written.Replace("?", "", StringComparison.Ordinal).Split('@');
        return new([.. parts[0].Split('/').Select(Rule)], parts.Length > 1 ? [.. parts[1].Split(',')] : [], optional);
    }

    /// <summary>Whether it is meant of this market.</summary>
    public bool HoldsIn(string market) => Markets.IsEmpty || Markets.Contains(market);

    private static string Rule(string name) => name switch
    {
        "drug" => "claim.drug",
        "soap" => "claim.makes-soap-a-cosmetic",
        "proof" => "claim.needs-proof",
        "unfair" => "claim.unfair",
        "false" => "claim.contradicted",
        "doubt" => "claim.doubtful",
        _ => throw new InvalidDataException(name),
    };
}
