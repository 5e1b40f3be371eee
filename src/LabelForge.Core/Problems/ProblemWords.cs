using System.Collections.Concurrent;
using System.Collections.Frozen;
using System.Text.Json;

namespace LabelForge.Measures;

/// <summary>
/// The words of every problem, in one catalogue: a folder for each language, in it a file for each group of codes. An entry says what
/// is wrong and what to write instead; where the command's advice names a command or an option, <c>page</c> is the page's own.
/// A group that a language has not got yet is told in English.
/// </summary>
/// <remarks>
/// JSON, since problems are what the reader of the workshop's own files speaks in: the words cannot wait for it. A group is read when
/// a problem of it is first told, so that a program without problems reads none.
/// </remarks>
public sealed class ProblemWords
{
    private readonly ConcurrentDictionary<string, FrozenDictionary<string, Entry>> _groups = new(StringComparer.Ordinal);
    private readonly string _language;
    private readonly bool _page;

    private ProblemWords(string language, bool page) => (_language, _page) = (language, page);

    /// <summary>The languages there are, English first.</summary>
    public static IReadOnlyList<string> Languages { get; } = ["en", "fr"];

    /// <summary>The command's words.</summary>
    public static ProblemWords Command { get; } = new(Languages[0], page: false);

    /// <summary>The page's words in each language.</summary>
    private static readonly FrozenDictionary<string, ProblemWords> Pages = Languages.ToFrozenDictionary(l => l,
        l => new ProblemWords(l, page: true), StringComparer.Ordinal);

    /// <summary>The page's words in a language; in English where the catalogue has not got it.</summary>
    public static ProblemWords Page(string language) => Pages.GetValueOrDefault(language) ?? Pages[Languages[0]];

    /// <summary>What is wrong and what to write instead.</summary>
    /// <exception cref="InvalidOperationException">The catalogue has no words for the problem's
    /// code: a mistake that a test finds.</exception>
    public (string Wrong, string Write) Of(Problem problem)
    {
        var entry = Find(problem.Code);
        return (Fill(entry.Wrong, problem), Fill(_page ? entry.Page ?? entry.Write : entry.Write, problem));
    }

    /// <summary>The language in which a problem is told.</summary>
    public string LanguageOf(Problem problem) =>
        problem.Code.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot
            && Group(problem.Code[..dot]).ContainsKey(problem.Code[(dot + 1)..]) ? _language : Languages[0];

    /// <summary>The codes of the catalogue, with all their words in this language.</summary>
    internal IEnumerable<(string Code, string[] Words)> All() => Groups(_language).SelectMany(group => Group(group).Select(e =>
        ($"{group}.{e.Key}", new[] { e.Value.Wrong, e.Value.Write, e.Value.Page }.OfType<string>().ToArray())));

    private Entry Find(string code)
    {
        var dot = code.IndexOf('.', StringComparison.Ordinal);
        if (dot > 0 && Group(code[..dot]).TryGetValue(code[(dot + 1)..], out var entry))
            return entry;
        return _language != Languages[0]
            ? Pages[Languages[0]].Find(code)
            : throw new InvalidOperationException($"The catalogue has no words for {code}.");
    }

    private FrozenDictionary<string, Entry> Group(string group) => _groups.GetOrAdd(group, name =>
    {
        using var stream = typeof(ProblemWords).Assembly.GetManifestResourceStream($"words/{_language}/{name}.json");
        if (stream is null)
            return FrozenDictionary<string, Entry>.Empty;
        using var file = JsonDocument.Parse(stream, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip });
        return file.RootElement.EnumerateObject().ToFrozenDictionary(e => e.Name, e => Read(e.Value), StringComparer.Ordinal);
    });

    private static Entry Read(JsonElement entry) => new(
        entry.GetProperty("wrong").GetString()!, entry.GetProperty("write").GetString()!,
        entry.TryGetProperty("page", out var page) ? page.GetString() : null);

    private static IEnumerable<string> Groups(string language)
    {
        var folder = $"words/{language}/";
        return typeof(ProblemWords).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(folder, StringComparison.Ordinal))
            .Select(n => n[folder.Length..^".json".Length]);
    }

    // "{text}" is a place where the problem has an argument of that name; other braces are the maker's own to write.
    private string Fill(string words, Problem problem)
    {
        var filled = new StringBuilder(words.Length);
        for (var at = 0; at < words.Length;)
        {
            var open = words.IndexOf('{', at);
            var close = open < 0 ? -1 : words.IndexOf('}', open);
            if (close < 0)
                return filled.Append(words, at, words.Length - at).ToString();
            filled.Append(words, at, open - at);
            var place = words[(open + 1)..close];
            if (Value(place, problem) is { } value)
            {
                filled.Append(value);
                at = close + 1;
            }
            else
            {
                filled.Append('{');
                at = open + 1;
            }
        }
        return filled.ToString();
    }

    private string? Value(string place, Problem problem)
    {
        var half = place.EndsWith(".wrong", StringComparison.Ordinal) ? 1 : place.EndsWith(".write", StringComparison.Ordinal) ? 2 : 0;
        var name = half == 0 ? place : place[..^6];
        foreach (var argument in problem.Arguments)
        {
            if (argument.Name != name)
                continue;
            if (half == 0 || argument.Inner is not { } inner)
                return argument.Value;
            var (wrong, write) = Of(inner);
            return half == 1 ? wrong : write;
        }
        return null;
    }

    private sealed record Entry(string Wrong, string Write, string? Page);
}
