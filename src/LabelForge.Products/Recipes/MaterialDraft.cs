using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Recipes.Files;

namespace LabelForge.Recipes;

/// <summary>A material's file, written from what was read of its supplier's paper.</summary>
/// <param name="Id">The id it will have.</param>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Kind">What it is bought as; not packaging.</param>
/// <param name="Listed">How far the supplier's order can be trusted.</param>
/// <param name="Matches">The names of the paper, matched.</param>
public sealed partial record MaterialDraft(string Id, string Name, MaterialKind Kind, ListedOrder Listed,
    ImmutableArray<NameMatch> Matches)
{
    private const int LongestName = 500;

    /// <summary>What else the paper says, to be kept as comments: nothing of it is dropped.</summary>
    public ImmutableArray<string> Said { get; init; } = [];

    /// <summary>An id made of a name: small letters, digits and hyphens.</summary>
    /// <exception cref="InputException">Nothing of the name is left, or what is left names a device.</exception>
    public static string IdOf(string name)
    {
        var id = NoLetters().Replace(name.ToLowerInvariant(), "-").Trim('-');
        return id.Length is > 0 and <= 80 && !DeviceNames.Holds(id)
            ? id
            : throw new InputException("material.unnameable", ("name", name));
    }

    /// <summary>The file's text. It can be read back at once; what is unknown is marked for the maker to settle.</summary>
    /// <param name="dictionary">The names known.</param>
    /// <exception cref="InputException">Two names of the paper mean the same ingredient, one is far too long, or nothing surely is
    /// in it.</exception>
    public string ToYaml(IngredientDictionary dictionary)
    {
        RefuseLong();
        RefuseRepeats();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture,
            $"name: {Scalar(Name)}\nkind: {Kind.ToString().ToLowerInvariant()}\nlisted: {Listed.ToString().ToLowerInvariant()}\ncontains:\n");
        foreach (var match in Matches.Where(m => !m.Written.MayContain))
            Append(text, match, "  ");
        var may = Matches.Where(m => m.Written.MayContain).ToArray();
        if (may.Length > 0)
        {
            text.Append("  # The supplier says that it may contain these. Take the # away from those that are in what you bought:\n");
            foreach (var match in may)
                Append(text, match, "  # ");
        }
        AppendAllergens(text, dictionary.Allergens);
        if (!Said.IsEmpty)
        {
            text.Append("# The paper says besides:\n");
            foreach (var said in Said)
                text.Append(CultureInfo.InvariantCulture, $"#   {Comment(said)}\n");
        }
        // What is written must be readable, whatever the supplier wrote.
        MaterialFile.Read(Id, YamlFile.ReadText(text.ToString(), $"materials/{Id}.yaml"));
        return text.ToString();
    }

    // Allergens in a fragrance's brackets are its allergens; how much of each is in it the brackets do not say.
    private void AppendAllergens(StringBuilder text, FragranceAllergens known)
    {
        var scent = Matches.FirstOrDefault(m => !m.Written.MayContain && m.Found?.Us is "Fragrance" or "Flavor");
        var inside = scent?.Written.Text.IndexOfAny(['(', '[']) ?? -1;
        if (inside < 0)
            return;
        string[] allergens = [.. scent!.Written.Text[(inside + 1)..]
            .Split([',', ';', ')', ']'], StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .Select(known.Find).OfType<FragranceAllergen>().Select(a => a.Name)
            .Distinct(StringComparer.Ordinal)];
        if (allergens.Length == 0)
            return;
        text.Append("# Named in the fragrance's brackets; ask the supplier for the shares, and write them in place of the bounds.\nallergens:\n");
        foreach (var allergen in allergens)
            text.Append(CultureInfo.InvariantCulture, $"  {Scalar(allergen)}: <= {Percent(scent.Written.Share.High)} %\n");
    }

    // YAML 1.2.2, 7.4.1: a name with something behind it has at most 1024 characters. No ingredient's name comes near it: signs
    // between names are missing.
    private void RefuseLong()
    {
        if (Matches.FirstOrDefault(m => Key(m).Length > LongestName) is { Written: var written })
            throw new InputException("material.name-too-long", ("position", written.Position), ("name", written.Text[..40]),
                ("most", LongestName));
    }

    private void RefuseRepeats()
    {
        var sure = Matches.Where(m => !m.Written.MayContain).ToArray();
        if (sure.Length == 0)
            throw new InputException("material.may-contain-only");
        var twice = sure.GroupBy(Key, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1);
        if (twice is null)
            return;
        var (first, second) = (twice.First().Written, twice.ElementAt(1).Written);
        throw new InputException("material.same-ingredient-twice", ("first", first.Text), ("position", first.Position),
            ("second", second.Text), ("position-2", second.Position), ("name", twice.Key));
    }

    // The mark of a nanomaterial is no part of the name, and must not be lost with the supplier's spelling.
    private static string Key(NameMatch match) => match.Found is { } found
        ? found.Key + (NanoName.IsMarked(match.Written.Text) ? NanoName.Mark : "")
        : match.Written.Text;

    private static void Append(StringBuilder text, NameMatch match, string indent)
    {
        if (match.Kind == MatchKind.Unknown)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"{indent}# SETTLE THIS: \"{Comment(match.Written.Text)}\" is not in the dictionary. ");
            text.Append(match.Nearest.IsEmpty
                ? "Nothing there is spelt like it.\n"
                : $"Nearest there: {string.Join("; ", match.Nearest.Select(n => n.Key))}.\n");
            text.Append(CultureInfo.InvariantCulture,
                $"{indent}# Write the one that it is in its place; where it is none of them, ask the supplier for its INCI name.\n");
        }
        var remarks = match.Written.Remarks.ToList();
        if (match.Written.Cas is { } cas)
            remarks.Add($"CAS {cas}");
        if (match.Written.Organic)
            remarks.Insert(0, "organic, says the supplier");
        if (match.Found is not null && !string.Equals(Key(match), match.Written.Text, StringComparison.OrdinalIgnoreCase))
            remarks.Insert(0, $"written: {match.Written.Text}");
        var share = match.Written.Share == ShareRange.Unknown ? "" : ": " + InFile(match.Written.Share);
        var comment = remarks.Count == 0 ? "" : "   # " + Comment(string.Join("; ", remarks));
        text.Append(CultureInfo.InvariantCulture, $"{indent}- {Scalar(Key(match))}{share}{comment}\n");
    }

    /// <summary>A share as a material's file has it: <c>5 %</c>, <c>10-30 %</c>, <c>&lt;= 1 %</c>, <c>&gt;= 2 %</c>.</summary>
    public static string Share(ShareRange share) => (share.IsExact, share.Low.Fraction, share.High.Fraction) switch
    {
        (true, _, _) => $"{Percent(share.Low)} %",
        (_, 0, _) => $"<= {Percent(share.High)} %",
        (_, _, 1) => $">= {Percent(share.Low)} %",
        _ => $"{Percent(share.Low)}-{Percent(share.High)} %",
    };

    // YAML takes a > at the front for something else.
    private static string InFile(ShareRange share) => Share(share) is ['>', '=', ..] written ? $"at least{written[2..]}" : Share(share);

    private static string Percent(Share share) => share.Percent.ToString("0.############################", CultureInfo.InvariantCulture);

    private static string Comment(string text) => ControlSigns().Replace(text, " ");

    private static string Scalar(string text) => YamlScalar.Write(Comment(text).Trim());

    [GeneratedRegex(@"[^a-z0-9]+")]
    private static partial Regex NoLetters();

    [GeneratedRegex(@"[\p{C}\u2028\u2029\u0085]")]
    private static partial Regex ControlSigns();
}
