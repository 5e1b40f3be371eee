using LabelForge.Checks.Reading;
using LabelForge.Checks.Words;

namespace LabelForge.Checks.Subjects;

/// <summary>
/// What was not read on somebody's label, so that nothing passes for right that was not judged: words that belong to no part,
/// words that nobody can see, and labels beside the one that was judged.
/// </summary>
internal static class ReadingChecks
{
    public static void Check(CheckCase label)
    {
        if (label.Label.Own is not null)
            return;
        foreach (var unseen in label.Label.Text.Unseen)
            label.Tell("reading.unseen", $"page {unseen.Page}", Shortened(unseen.Words), unseen.Why);
        if (!label.Label.OtherLists.IsEmpty)
            label.Tell("reading.several-labels/lists", label.Where, label.Label.OtherLists.Length + 1,
                Shortened(string.Join(", ", label.Label.OtherLists[0].Items.Select(i => i.Name))));
        else if (!label.Label.Others.IsEmpty)
            label.Tell("reading.several-labels/each", label.Where, label.Label.Others.Length + 1,
                string.Join("; ", label.Label.Others.Select(Title)));
        foreach (var list in label.Label.Strays.Where(s => s.Kind == StrayKind.Ingredients))
            label.Tell("reading.not-understood/ingredients", Shortened(list.Words), Shortened(list.Words));
        // In the languages that have a grammar claims are judged; of the others the words are shown.
        foreach (var language in label.Label.Strays
            .Where(s => s.Kind == StrayKind.Sentence && SentenceGrammar.All.All(g => g.Language != s.Language)).GroupBy(s => s.Language))
            label.Tell("reading.not-judged", Shortened(language.First().Words), Quoted(language.Select(s => s.Words)), Name(language.Key));
        Unknown(label);
    }

    private static void Unknown(CheckCase label)
    {
        var strays = label.Label.Strays.Where(s => s.Kind is StrayKind.Unknown or StrayKind.OtherLanguage || MayPromise(s)).ToArray();
        var language = strays.Where(s => s.Kind == StrayKind.OtherLanguage).GroupBy(s => s.Language).OrderByDescending(g => g.Count())
            .FirstOrDefault()?.Key;
        if (strays.Length > 0)
            label.Tell("reading.not-understood", Shortened(strays[0].Words), Quoted(strays.Select(s => s.Words)),
                language is null ? "" : $" They seem to be {Name(language)}.");
        var names = label.Label.Strays.Where(s => s.Kind == StrayKind.Name).Select(s => s.Words)
            .Concat(label.Label.Strays.Where(s => s.Kind == StrayKind.Partly && !MayPromise(s)).SelectMany(s => s.Unknown)).ToArray();
        if (names.Length > 0)
            label.Tell("reading.not-understood/few", Shortened(names[0]), Quoted(names), "");
    }

    // Something is done, and what it is done to is not known: "Hilft gegen Zorbitose".
    private static bool MayPromise(StrayWords stray) =>
        stray.Kind == StrayKind.Partly && WordLists.Acts(stray.Words, stray.Language!) is { } act
            && stray.Unknown.Any(w => stray.Words.IndexOf(w, StringComparison.Ordinal) > act.Start);

    private static string Title(LabelStatement of) => of.Identity?.Written ?? of.NetQuantity?.Written ?? "a label without a name";

    private static string Quoted(IEnumerable<string> words) => Shortened(string.Join("; ", words.Select(w => $"\"{w}\"")), 400);

    private static string Shortened(string words, int most = 120) => words.Length <= most ? words : words[..most].TrimEnd() + " ...";

    private static string Name(string? language) => language switch
    {
        "bg" => "Bulgarian",
        "cs" => "Czech",
        "da" => "Danish",
        "de" => "German",
        "el" => "Greek",
        "en" => "English",
        "es" => "Spanish",
        "et" => "Estonian",
        "fi" => "Finnish",
        "fr" => "French",
        "ga" => "Irish",
        "hr" => "Croatian",
        "hu" => "Hungarian",
        "is" => "Icelandic",
        "it" => "Italian",
        "lt" => "Lithuanian",
        "lv" => "Latvian",
        "mt" => "Maltese",
        "nl" => "Dutch",
        "no" => "Norwegian",
        "pl" => "Polish",
        "pt" => "Portuguese",
        "ro" => "Romanian",
        "ru" => "Russian",
        "sk" => "Slovak",
        "sl" => "Slovene",
        "sv" => "Swedish",
        "tr" => "Turkish",
        "uk" => "Ukrainian",
        _ => "of no language known here",
    };
}
