using System.Collections.Immutable;
using System.Text;
using System.Text.RegularExpressions;
using LabelForge.Ingredients;

namespace LabelForge.Checks.Reading;

/// <summary>One name of an ingredient list.</summary>
/// <param name="Name">As it stands on the label, without footnote signs.</param>
/// <param name="Known">What the dictionary knows it as, or null.</param>
/// <param name="MayContain">Whether it stands after "May contain".</param>
public sealed record IngredientRead(string Name, Ingredient? Known, bool MayContain)
{
    /// <summary>Whether it stands as the kitchen calls it (<c>lavender EO</c>), so that what it is was guessed from the name.</summary>
    public bool IsKitchenName { get; init; }
}

/// <summary>An ingredient list as it stands on a label.</summary>
/// <param name="Span">Its place, heading included.</param>
/// <param name="Heading">Its heading, or null where the list was found without one.</param>
/// <param name="Items">Its names in order.</param>
public sealed record IngredientListRead(TextSpan Span, string? Heading, ImmutableArray<IngredientRead> Items);

/// <summary>Finds the ingredient list of a label: with a heading or without, split over lines, by commas, bullets or lines.</summary>
public static partial class IngredientListReader
{
    private const int FewestWithoutHeading = 3;
    private const int LongestList = 8000;

    // More than any label has: they bound what a hostile text can cost.
    private const int MostHeadings = 8;
    private const int MostNames = 300;

    /// <summary>The list, or null where there is none.</summary>
    public static IngredientListRead? Read(string text, IngredientDictionary dictionary) =>
        WithHeading(text, dictionary) ?? WithoutHeading(text, dictionary);

    private static IngredientListRead? WithHeading(string text, IngredientDictionary dictionary)
    {
        // "Contains:" may head a note on allergens: a heading that says ingredients goes first.
        foreach (var heading in Heading().Matches(text).OrderBy(Rank).Take(MostHeadings))
        {
            var start = heading.Index + heading.Length;
            var end = End(text, start, dictionary, isHeaded: true);
            var items = Items(text[start..end], dictionary);
            if (items.Length > 0)
                return new(new TextSpan(heading.Index, end - heading.Index), heading.Groups["word"].Value, items);
        }
        return null;
    }

    // A name that two lines make together. One that is whole already may be known with other words after it too: the two must differ,
    // and a pair parted by a stroke, as CI 77491/CI 77492, is whole where it is known.
    private static bool IsBroken(string tail, string after, IngredientDictionary dictionary)
    {
        var last = (Split(tail).Select(Bare).LastOrDefault() ?? "").Replace('\n', ' ');
        var alone = dictionary.Find(last);
        if (alone is not null && last.Contains('/'))
            return false;
        return dictionary.Find($"{last} {Split(after).Select(Bare).FirstOrDefault()}") is { } whole && whole.Key != alone?.Key;
    }

    private static int Rank(Match heading) => heading.Groups["word"].Value.ToLowerInvariant() switch
    {
        var w when w.StartsWith("active", StringComparison.Ordinal) => 1,
        var w when w.Contains("ingr", StringComparison.Ordinal) || w.Contains("inci", StringComparison.Ordinal) => 0,
        _ => 2,
    };

    // A paragraph of commas whose names are mostly in the dictionary is an ingredient list without its heading.
    private static IngredientListRead? WithoutHeading(string text, IngredientDictionary dictionary)
    {
        IngredientListRead? best = null;
        for (var start = 0; start < text.Length; start = NextLine(text, start))
        {
            var line = LineAt(text, start);
            if (line.Count(c => c is ',' or ';' or '•') < 1 || Split(AfterLabel(line)).Take(3).Count(n => Known(Bare(n), dictionary) is not null) < 1)
                continue;
            var end = End(text, start, dictionary, isHeaded: false);
            var items = Items(AfterLabel(text[start..end]), dictionary);
            var known = items.Count(i => i.Known is not null);
            if (known >= FewestWithoutHeading && known * 10 >= items.Length * 6 && known > (best?.Items.Count(i => i.Known is not null) ?? 0))
                best = new(new TextSpan(start, end - start), null, items);
        }
        return best;
    }

    private static int End(string text, int start, IngredientDictionary dictionary, bool isHeaded)
    {
        var end = start;
        var open = 0;
        var any = false;
        for (; end < text.Length && end - start < LongestList; end++)
        {
            var c = text[end];
            open = c switch { '(' or '[' => open + 1, ')' or ']' => Math.Max(0, open - 1), _ => open };
            if (c == '\n' && any)
            {
                if (LineAt(text, end + 1).Trim().Length == 0)
                    open = 0;
                if (open == 0 && Stops(text, text[start..end], end + 1, dictionary, isHeaded))
                    return end;
            }
            else if (c == '.' && any && EndsSentence(text, end))
            {
                return end + 1;
            }
            else if (open == 0 && any && !char.IsLetterOrDigit(text[end - 1]) && After().IsMatch(text, end))
            {
                return end;
            }
            any |= char.IsLetterOrDigit(c);
        }
        return end;
    }

    // A full stop ends the list where a new sentence or a new line follows; "No. 40" and "C.I. 77491" go on.
    private static bool EndsSentence(string text, int dot)
    {
        var before = text[Math.Max(0, dot - 3)..dot];
        if (before.EndsWith("No", StringComparison.OrdinalIgnoreCase) || before.EndsWith("C.I", StringComparison.OrdinalIgnoreCase) || before.EndsWith(".I", StringComparison.Ordinal)
            || (dot > 0 && before is [.., ' ' or ',', 'C' or 'c']) || before.EndsWith("Ext", StringComparison.OrdinalIgnoreCase))
            return false;
        var rest = text[(dot + 1)..Math.Min(text.Length, dot + 40)];
        return rest.Trim().Length == 0 || rest[0] == '\n' || (rest[0] == ' ' && !MayContain().IsMatch(rest));
    }

    private static bool Stops(string text, string body, int next, IngredientDictionary dictionary, bool isHeaded)
    {
        var tail = body.TrimEnd();
        var goesOn = tail[^1] is ',' or ';' or '/' or '-' or '&' or '•' or '·' or ':' || tail.EndsWith(" and", StringComparison.OrdinalIgnoreCase);
        var line = LineAt(text, next);
        if (line.Trim().Length == 0)
        {
            // Over one empty line, as between columns, a list goes on only from a comma or within a name.
            var after = LineAt(text, NextLine(text, next));
            return !(goesOn || IsBroken(tail, after, dictionary)) || after.Trim().Length == 0 || tail[^1] is ':' || Terminator().IsMatch(after.TrimStart());
        }
        if (Terminator().IsMatch(line.TrimStart()))
            return true;
        if (goesOn)
            return false;
        var first = Split(line).Select(Bare).FirstOrDefault() ?? "";
        // A small letter goes on from the line before; without a heading only where names that are known follow.
        if ((char.IsLower(line.TrimStart()[0]) && (isHeaded || Split(line).Any(n => Known(Bare(n), dictionary) is not null))) || line.TrimStart()[0] is '(' or '[' or ',' or '•' || IsBroken(tail, line, dictionary))
            return false;
        // On a narrow label a long name takes three lines.
        if (IsBroken(tail, $"{line} {LineAt(text, NextLine(text, next))}", dictionary))
            return false;
        // Names on lines of their own.
        if (dictionary.Find(first) is not null && !body.Contains(','))
            return false;
        return Split(line).Skip(1).Count(n => dictionary.Find(Bare(n)) is not null) == 0;
    }

    // Words with a colon before a list that is one by its names: "What's in it: sugar, ...".
    private static string AfterLabel(string body) => OwnHeading().Replace(body, "");

    private static Ingredient? Known(string name, IngredientDictionary dictionary) => dictionary.Find(name) ?? KitchenNames.Find(name, dictionary, ofOils: false);

    private static ImmutableArray<IngredientRead> Items(string body, IngredientDictionary dictionary)
    {
        var may = MayContain().Match(body);
        var main = may.Success ? body[..may.Index] : body;
        var items = Names(main, dictionary).Select(n => (n, May: false));
        if (may.Success)
            items = items.Concat(Names(body[(may.Index + may.Length)..], dictionary).Select(n => (n, May: true)));
        return [.. Named(items.Take(MostNames), dictionary)];
    }

    private static IEnumerable<IngredientRead> Named(IEnumerable<(string Name, bool May)> items, IngredientDictionary dictionary)
    {
        var ofOils = false;
        foreach (var (name, may) in items)
        {
            ofOils |= KitchenNames.BeginsOils(name);
            var known = dictionary.Find(name);
            var kitchen = known is null ? KitchenNames.Find(AndFirst().Replace(KitchenNames.AfterOils(name), ""), dictionary, ofOils) : null;
            yield return new(name, known ?? kitchen, may) { IsKitchenName = kitchen is not null };
        }
    }

    private static IEnumerable<string> Names(string body, IngredientDictionary dictionary)
    {
        var lines = body.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        var byLine = lines.Length > 1 && !body.Contains(',') && !body.Contains(';') && !body.Contains('•')
            && lines.Count(l => dictionary.Find(Bare(l)) is not null) * 2 >= lines.Length;
        var raw = byLine ? lines : Split(Joined(body));
        foreach (var name in raw.SelectMany(r => AndAlso().Split(r)).Select(Bare).Where(n => n.Any(char.IsLetterOrDigit) && !NoName().IsMatch(n)).Select(n => Unbroken(n, dictionary)))
        {
            // A blend named with its parts: "Green Mica (Mica, Titanium Dioxide)".
            if (Blend().Match(name) is { Success: true } blend && dictionary.Find(name) is null && Split(blend.Groups["parts"].Value).Select(Bare).ToArray() is var parts && parts.All(p => dictionary.Find(p) is not null))
            {
                foreach (var part in parts)
                    yield return part;
                continue;
            }
            var pair = And().Split(name);
            if (pair.Length > 1 && dictionary.Find(name) is null && pair.All(p => dictionary.Find(Bare(p)) is not null))
            {
                foreach (var part in pair)
                    yield return Bare(part);
            }
            else
            {
                yield return AndFirst().Replace(name, "") is { Length: > 0 } bare && dictionary.Find(bare) is not null ? bare : name;
            }
        }
    }

    // "PHENOXY-\nETHANOL": the hyphen of a broken line belongs to no name.
    private static string Unbroken(string name, IngredientDictionary dictionary) =>
        name.Contains('-') && dictionary.Find(name) is null && dictionary.Find(name.Replace("-", "")) is not null ? name.Replace("-", "") : name;

    // A hyphen at a line's end joins (PEG-\n100), anything else is parted by a space.
    private static string Joined(string body) => Spaces().Replace(body.Replace("-\n", "-").Replace('\n', ' '), " ");

    /// <summary>Parts a list at commas, semicolons and bullets outside parentheses; the comma of 1,2-Hexanediol stays.</summary>
    private static IEnumerable<string> Split(string list)
    {
        var part = new StringBuilder();
        var open = 0;
        for (var i = 0; i < list.Length; i++)
        {
            var c = list[i];
            open = c switch { '(' or '[' => open + 1, ')' or ']' => Math.Max(0, open - 1), _ => open };
            var parts = (open == 0 && c is ',' or ';' or '•' or '·' or '|') && !(c == ',' && i > 0 && char.IsDigit(list[i - 1]) && i + 1 < list.Length && char.IsDigit(list[i + 1]));
            if (!parts)
            {
                part.Append(c);
                continue;
            }
            yield return part.ToString();
            part.Clear();
        }
        yield return part.ToString();
    }

    /// <summary>A name without footnote signs, percentages, bullets, or the word organic before it.</summary>
    private static string Bare(string name)
    {
        var bare = Percent().Replace(name, "").Trim().TrimStart('-', '*', '+', '–').TrimEnd('.', '*', '†', '‡', '+', ':', ' ', '-').Trim();
        return Organic().Replace(bare, "").Trim();
    }

    private static string LineAt(string text, int start) =>
        start >= text.Length ? "" : text.IndexOf('\n', start) is var end && end < 0 ? text[start..] : text[start..end];

    private static int NextLine(string text, int start) => text.IndexOf('\n', Math.Min(start, text.Length)) is var end && end < 0 ? text.Length : end + 1;

    [GeneratedRegex(@"(?:^|(?<=[\n.|;*#]))[ *#_]*(?<word>(?:active\s+|inactive\s+|all\s+|our\s+)?ingredients?(?:\s*\(inci\))?|inci(?:\s+(?:names?|list))?|ingr?d?s?\.?(?=\s*:)|ingr?\.|ingredients\s*/\s*ingr[ée]dients?|ingr[ée]dients|ingredient(?:es|i|e|er|en)|ingrediënten|inhaltsstoffe|bestandteile|składniki|ainesosat|innehåll|složení|zloženie|összetevők|sastojci|sestavine|sudėtis|sastāvs|съставки|συστατικά|what['’]s\s+in(?:side|\s+it)?|made\s+(?:with|from)|contains)[ *_]*[:\n–—•|-]\s*|(?<![\p{L}])(?<word>ingredients(?:\s*/\s*ingr[ée]dients?)?)\s*[:–—]\s*|^(?<word>ingredients)\s+(?=\p{Lu})", RegexOptions.IgnoreCase | RegexOptions.Multiline)]
    private static partial Regex Heading();

    [GeneratedRegex(@"^[*#_ ]*(?:net\b|ingredients\b|directions?\b|how to\b|to use\b|use[:s]?\b|instructions?\b|warnings?\b|cautions?\b|made\b|hand\s?-?made\b|hand\s?-?crafted\b|manufactured\b|mfg\b|mfd\b|distributed\b|dist\.|packed\b|produced\b|product of\b|lot\b|batch\b|storage\b|store\b|keep\b|for external\b|external use\b|exp\b|best\b|use by\b|www\.|https?:|©|phone\b|tel\b|call\b|contact\b|questions\b|discontinue\b|avoid\b|not tested\b|cruelty\b|vegan\b|free (?:of|from)\b|no\b(?!\.)|\d{1,5} \p{Lu}|p\.?\s?o\.? box\b|l:|#|\*+\s*(?:certified|organic)|size\b|email\b|e-mail\b|visit\b|allergen\b|professional\b|for professional\b|shelf\b|sku\b|upc\b|responsible\b|anwendung\b|warnhinweis|hinweise?\b|achtung\b|hergestellt\b|verantwortlich|charge\b|mindestens\b|mind\.|inhalt\b|nettof|mode d['’]emploi|conseils?\b|utilisation\b|précautions?\b|attention\b|fabriqué|à utiliser\b|éviter\b|personne\b|contenance\b|modo de\b|empleo\b|advertencia|precauci|fabricado\b|lote\b|úsese\b|persona\b|contenido\b|modo d['’]uso|avvertenz|prodotto\b|lotto\b|da usare\b|usare\b|gebruik|waarschuwing|vermijd|gemaakt\b|partij\b|ten\s?minste\b|verantwoordelijk|sposób\b|ostrzeżeni|uwaga\b|wyprodukowano|najlepiej\b|osoba\b|partia\b|zawartość|unikać\b|användning|varning|bäst\b|anvendelse|advarsel|bedst\b|käyttö|varoitus|parasta\b|návod\b|použití|nejlépe\b|pour usage\b|nur zur\b|solo para\b|solo per\b|alleen voor\b|wyłącznie\b)", RegexOptions.IgnoreCase)]
    private static partial Regex Terminator();

    [GeneratedRegex(@"\G(?:net\s*(?:wt|weight|contents)\b|distributed by\b|manufactured (?:by|for)\b|made (?:by|in|for)\b|directions?:|warnings?:|caution:|lot\s*(?:no\.?|#|:|code)|batch\s*(?:no\.?|#|:))", RegexOptions.IgnoreCase)]
    private static partial Regex After();

    [GeneratedRegex(@"[.\s(]*(?:(?:colou?r(?:ant|ing|\s+additive)?s?\s+)?may\s+(?:also\s+)?(?:contain|include)(?:\s*/\s*peut\s+contenir)?|peut\s+contenir|\+/-|±)\s*:?\s*", RegexOptions.IgnoreCase)]
    private static partial Regex MayContain();

    [GeneratedRegex(@"\s+(?:and|&)\s+", RegexOptions.IgnoreCase)]
    private static partial Regex And();

    [GeneratedRegex(@"^[^(\[]+[(\[](?<parts>[^()\[\]]+,[^()\[\]]+)[)\]]?$")]
    private static partial Regex Blend();

    // Suppliers part the members of a blend so: "Phenoxyethanol (and) Caprylyl Glycol".
    [GeneratedRegex(@"\s*\(\s*(?:and|&)\s*\)\s*", RegexOptions.IgnoreCase)]
    private static partial Regex AndAlso();

    [GeneratedRegex(@"^(?:(?:certified\s+)?organic|vegan|natural|ingredients?|none)$", RegexOptions.IgnoreCase)]
    private static partial Regex NoName();

    [GeneratedRegex(@"^[\p{L}'’ ]{3,28}:\s*")]
    private static partial Regex OwnHeading();

    [GeneratedRegex(@"^(?:and|&)\s+", RegexOptions.IgnoreCase)]
    private static partial Regex AndFirst();

    [GeneratedRegex(@"\(?\s*(?:[<>≤]\s*)?\d+(?:\.\d+)?(?:\s*-\s*\d+(?:\.\d+)?)?\s*%\s*\)?")]
    private static partial Regex Percent();

    [GeneratedRegex(@"^(?:certified\s+)?organic\s+|\s*\(organic\)$", RegexOptions.IgnoreCase)]
    private static partial Regex Organic();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
