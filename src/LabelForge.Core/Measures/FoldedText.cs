namespace LabelForge.Checks.Reading;

/// <summary>Text in small letters without accents, each letter where it stood, so that places in it are places in the text.</summary>
/// <remarks>
/// The letters of the official languages of the European Union with the marks they carry, and Turkish (Unicode, Latin-1
/// Supplement, Latin Extended-A and B, Greek, Cyrillic). A table, since no culture data is installed beside the program.
/// </remarks>
public static class FoldedText
{
    private const string Marked =
        "àáâãäåāăąçćĉċčďđðèéêëēĕėęěĝğġģĥħìíîïĩīĭįıĵķĺļľŀłñńņňòóôõöøōŏőŕŗřśŝşšșţťŧțùúûüũūŭůűųŵýÿŷźżžάέήίόύώϊϋΐΰςѝѐёї’‘ʼ´`";
    private const string Plain =
        "aaaaaaaaacccccdddeeeeeeeeegggghhiiiiiiiiijklllllnnnnooooooooorrrsssssttttuuuuuuuuuuwyyyzzzαεηιουωιυιυσиееі'''''";

    private static readonly Dictionary<char, char> Table = Marked.Zip(Plain).ToDictionary(p => p.First, p => p.Second);

    /// <summary>The text without accents in its own capitals and small letters, its spaces and hyphens plain; as long as it was.</summary>
    public static string KeepingCase(string text) =>
        text.All(char.IsAscii) ? text : string.Create(text.Length, text, static (plain, from) =>
        {
            for (var i = 0; i < from.Length; i++)
            {
                var small = char.ToLowerInvariant(from[i]);
                var letter = Table.GetValueOrDefault(small, small);
                plain[i] = from[i] switch
                {
                    '\u00A0' or '\u202F' or '\u2009' => ' ',
                    '\u2010' or '\u2011' => '-',
                    _ when small != from[i] => char.ToUpperInvariant(letter),
                    _ => letter,
                };
            }
        });

    /// <summary>The folded text, as long as the text.</summary>
    public static string Of(string text) => string.Create(text.Length, text, static (folded, from) =>
    {
        for (var i = 0; i < from.Length; i++)
        {
            var small = char.ToLowerInvariant(from[i]);
            folded[i] = Table.GetValueOrDefault(small, small);
        }
    });
}
