using LabelForge.Print.Designs;
using LabelForge.Print.Ornaments;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Looks;

/// <summary>What a word says of a look.</summary>
/// <param name="Word">The word, small letters.</param>
/// <param name="Hue">Degrees of Oklch.</param>
/// <param name="Strength">How colourful.</param>
/// <param name="Scent">The kind of scent; null where a colour's word says nothing of it.</param>
/// <param name="Ornament">The ornament, or null.</param>
public sealed record ScentWord(string Word, double Hue, double Strength, ScentFamily? Scent, OrnamentFamily? Ornament);

/// <summary>Words in names, and what they say of a look: data in templates/scents.yaml, by eye.</summary>
public static class ScentWords
{
    private static readonly Lazy<(ImmutableArray<ScentWord> Words, ImmutableArray<ScentWord> Colours,
        ImmutableDictionary<ScentFamily, ScentWord> Scents)> Loaded = new(Read);

    /// <summary>The first word of a name that is known; null where none is.</summary>
    public static ScentWord? In(string name) => First(Loaded.Value.Words, name);

    /// <summary>The first colour that a colourant's name says; null where it says none.</summary>
    public static ScentWord? ColourIn(string name) => First(Loaded.Value.Colours, name);

    /// <summary>The usual hue of a kind of scent.</summary>
    public static ScentWord Of(ScentFamily scent) => Loaded.Value.Scents[scent];

    private static ScentWord? First(ImmutableArray<ScentWord> words, string name)
    {
        var small = name.ToLowerInvariant();
        return words.Select(w => (Word: w, At: small.IndexOf(w.Word, StringComparison.Ordinal)))
            .Where(f => f.At >= 0 && (f.At == 0 || !char.IsLetter(small[f.At - 1])))
            .OrderByDescending(f => f.Word.Word.Length).ThenBy(f => f.At).Select(f => f.Word).FirstOrDefault();
    }

    private static (ImmutableArray<ScentWord>, ImmutableArray<ScentWord>, ImmutableDictionary<ScentFamily, ScentWord>) Read()
    {
        var file = YamlFile.ReadText(Templates.Text("scents.yaml"), "scents.yaml")
            .OnlyKeys("The words of scents", "words", "colours", "scents");
        var scents = file.OptionalMap("scents")!;
        return ([.. file.Items("words").Select(n => One((MapNode)n))], [.. file.Items("colours").Select(n => One((MapNode)n))],
            scents.Entries.ToImmutableDictionary(e => Enum.Parse<ScentFamily>(e.Key, ignoreCase: true), e => One((MapNode)e.Value)));
    }

    private static ScentWord One(MapNode map) => new(
        map.OptionalText("word")?.Text ?? "", map.NumberOr("hue", 0), map.NumberOr("strength", 1),
        map.OptionalText("scent") is { } scent ? Enum.Parse<ScentFamily>(scent.Text, ignoreCase: true) : null,
        map.OptionalText("ornament") is { } ornament
            ? OrnamentFamily.Named(ornament.Text) ?? throw ornament.Refuse("look.no-such-ornament", ("ornament", ornament.Text))
            : null);
}
