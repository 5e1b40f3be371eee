using System.Collections.Frozen;

namespace LabelForge.Checks.Words;

/// <summary>Words without their accents, letter for letter, so that a place in one is the same place in the other: labels in capitals leave accents out.</summary>
internal static class FoldedText
{
    // By letter: the program runs without the system's tables of letters, and normalization leaves accents where they are then.
    private const string Accented = "àáâãäåāăąçćčďèéêëēėęěìíîïīįłñńňòóôõöøōőřśšșťțùúûüūůűųýÿźżž"
        + "ÀÁÂÃÄÅĀĂĄÇĆČĎÈÉÊËĒĖĘĚÌÍÎÏĪĮŁÑŃŇÒÓÔÕÖØŌŐŘŚŠȘŤȚÙÚÛÜŪŮŰŲÝŸŹŻŽ";

    private const string Plain = "aaaaaaaaacccdeeeeeeeeiiiiiilnnnoooooooorsssttuuuuuuuuyyzzz"
        + "AAAAAAAAACCCDEEEEEEEEIIIIIILNNNOOOOOOOORSSSTTUUUUUUUUYYZZZ";

    private static readonly FrozenDictionary<char, char> Letters = Accented.Zip(Plain)
        .Concat([('’', '\''), ('ʼ', '\''), ('`', '\''), ('\u00A0', ' '), ('\u202F', ' '), ('\u2009', ' '), ('\u2010', '-'), ('\u2011', '-')])
        .ToFrozenDictionary(p => p.Item1, p => p.Item2);

    /// <summary>The text with plain letters; as long as it was.</summary>
    public static string Of(string text) => text.All(char.IsAscii) ? text : string.Create(text.Length, text, static (plain, text) =>
    {
        for (var i = 0; i < text.Length; i++)
            plain[i] = Letters.GetValueOrDefault(text[i], text[i]);
    });
}
