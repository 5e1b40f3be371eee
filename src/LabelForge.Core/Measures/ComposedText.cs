using System.Collections.Frozen;

namespace LabelForge.Checks.Reading;

/// <summary>Text in which a letter and the mark that follows it are one character, and wide letters are plain ones.</summary>
/// <remarks>
/// Some programs write an accent behind its letter (Unicode's form D); names are looked up with both in one (form C). The platform's own
/// normalising does nothing where no culture data is installed, so the letters of European languages stand in a table here
/// (Unicode 15, canonical compositions of Latin, Greek and Cyrillic letters below U+0500).
/// </remarks>
public static class ComposedText
{
    private static readonly FrozenDictionary<(char, char), char> Table = new (char Mark, string Letters, string Composed)[]
    {
        ('\u0300', "AEINOUaeinouИи", "ÀÈÌǸÒÙàèìǹòùЍѝ"),
        ('\u0301', "ACEGILNORSUYZacegilnorsuyzΑΕΗΙΟΥΩαεηιουω", "ÁĆÉǴÍĹŃÓŔŚÚÝŹáćéǵíĺńóŕśúýźΆΈΉΊΌΎΏάέήίόύώ"),
        ('\u0302', "ACEGHIJOSUWYaceghijosuwy", "ÂĈÊĜĤÎĴÔŜÛŴŶâĉêĝĥîĵôŝûŵŷ"),
        ('\u0303', "AINOUainou", "ÃĨÑÕŨãĩñõũ"),
        ('\u0304', "AEIOUYaeiouyИи", "ĀĒĪŌŪȲāēīōūȳӢӣ"),
        ('\u0306', "AEGIOUaegiouИи", "ĂĔĞĬŎŬăĕğĭŏŭЙй"),
        ('\u0307', "ACEGIOZacegoz", "ȦĊĖĠİȮŻȧċėġȯż"),
        ('\u0308', "AEIOUYaeiouyΙΥιυИиІі", "ÄËÏÖÜŸäëïöüÿΪΫϊϋӤӥЇї"),
        ('\u030A', "AUau", "ÅŮåů"),
        ('\u030B', "OUou", "ŐŰőű"),
        ('\u030C', "ACDEGHIKLNORSTUZacdeghijklnorstuz", "ǍČĎĚǦȞǏǨĽŇǑŘŠŤǓŽǎčďěǧȟǐǰǩľňǒřšťǔž"),
        ('\u0326', "STst", "ȘȚșț"),
        ('\u0327', "CEGKLNRSTcegklnrst", "ÇȨĢĶĻŅŖŞŢçȩģķļņŗşţ"),
        ('\u0328', "AEIOUaeiou", "ĄĘĮǪŲąęįǫų"),
    }.SelectMany(r => r.Letters.Zip(r.Composed, (letter, composed) => KeyValuePair.Create((letter, r.Mark), composed)))
        .ToFrozenDictionary();

    /// <summary>The text with its marks on their letters; the same text where it has none apart.</summary>
    public static string Of(string text)
    {
        if (!text.Any(c => c is >= '\u0300' and <= '\u0328' or >= '\uFF01' and <= '\uFF5E'))
            return text;
        var composed = new StringBuilder(text.Length);
        foreach (var sign in text)
        {
            if (composed.Length > 0 && Table.TryGetValue((composed[^1], sign), out var one))
                composed[^1] = one;
            else
                composed.Append(sign is >= '\uFF01' and <= '\uFF5E' ? (char)(sign - 0xFEE0) : sign);
        }
        return composed.ToString();
    }
}
