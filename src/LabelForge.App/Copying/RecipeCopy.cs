using LabelForge.Recipes.Files;

namespace LabelForge.Copying;

/// <summary>What is to be a new product by another's recipe.</summary>
/// <param name="From">The product to copy: a recipe, or one of its variants.</param>
/// <param name="Name">The new product's name.</param>
/// <param name="Scent">The id of the fragrance that takes the place of the old one; null for the same.</param>
/// <param name="Hue">The hue of its label, in degrees; null for one that is proposed by its scent and name.</param>
/// <param name="Line">What it smells of, in a few words on the front; null keeps the old words, but never beside another scent.</param>
/// <param name="Item">Its own item number; null for none: an item number is one product's.</param>
/// <param name="Price">What a piece is sold for; null for the old one's price.</param>
public sealed record RecipeCopyWish(string From, string Name, string? Scent = null, int? Hue = null, string? Line = null,
    string? Item = null, string? Price = null);

/// <summary>A new product in one step: another's recipe, label and price under a new name, with another scent and hue.</summary>
/// <remarks>The maker's own text is copied line by line, so that comments and the way it is written stay.</remarks>
public static partial class RecipeCopy
{
    /// <summary>Writes it: a new variant where the copied product is one, else a new recipe.</summary>
    /// <param name="wish">What is to be.</param>
    /// <returns>The new product's name, as it is asked for, and the file.</returns>
    /// <exception cref="InputException">Something in it cannot be; nothing is written.</exception>
    public static (string Product, string File) Write(Workshop workshop, RecipeCopyWish wish)
    {
        if (string.IsNullOrWhiteSpace(wish.Name))
            throw new InputException("copy.no-name");
        if (wish.Hue is < 0 or > 360)
            throw new InputException("copy.not-a-hue", ("hue", wish.Hue));
        if (wish.Scent is { } scent && workshop.Material(scent, "the call", 0).Kind != MaterialKind.Fragrance)
            throw new InputException("copy.not-a-fragrance", ("scent", scent),
                ("list",
                    string.Join(", ",
                        workshop.Materials.Values.Where(m => m.Kind == MaterialKind.Fragrance).Select(m => m.Id)
                            .Order(StringComparer.Ordinal))));
        var product = workshop.ProductOf(wish.From);
        var path = Path.Combine(workshop.Folder, "recipes", product.Recipe.Id + ".yaml");
        var lines = File.ReadAllLines(path);
        var (id, text) = product.Recipe.VariantName is { } variant
            ? (product.Recipe.Id, WithVariant(workshop, product, variant, lines, wish))
            : (NewId(workshop, wish.Name), Renamed(workshop, product, lines, wish));
        var file = $"recipes/{id}.yaml";
        var name = product.Recipe.VariantName is null ? id : $"{id}/{wish.Name.Trim()}";
        Proved(workshop, id, YamlFile.ReadText(text, file), product, wish);
        Print.Output.AtomicFile.Write(Path.Combine(workshop.Folder, file), text);
        return (name, file);
    }

    // What was written is read back before it counts: the copy must be what was asked for.
    private static void Proved(Workshop workshop, string id, MapNode tree, Product from, RecipeCopyWish wish)
    {
        var read = RecipeFile.Read(id, tree);
        var copy = from.Recipe.VariantName is null ? read : read.Variant(wish.Name);
        BatchFormula.Of(workshop, copy);
        var scent = wish.Scent ?? ScentOf(workshop, from.Recipe);
        if (copy.Name != wish.Name.Trim()
            || (scent is not null && copy.Materials.All(m => m.Material != scent))
            || copy.Materials.Length != from.Recipe.Materials.Length
            || (wish.Scent is not null && wish.Line is null && copy.Look.Line is not null)
            || (wish.Line is { } line && copy.Look.Line?.Text != line)
            || (wish.Hue is { } hue && copy.Look.Hue?.Text != hue.ToString(CultureInfo.InvariantCulture)))
            throw new InputException("copy.other-form", ("recipe", from.Recipe.Id));
    }

    private static string Renamed(Workshop workshop, Product product, string[] lines, RecipeCopyWish wish)
    {
        var kept =
            lines.Where(l => !TopKey("item").IsMatch(l)
                && !TopKey("on the market since").IsMatch(l)
                && !(wish.Price is not null && TopKey("price").IsMatch(l))).ToList();
        var at = kept.FindIndex(l => TopKey("name").IsMatch(l));
        if (at < 0)
            throw new InputException("copy.no-name-line", ("recipe", product.Recipe.Id));
        kept[at] = $"name: {YamlScalar.QuotedLine(wish.Name.Trim())}";
        if (wish.Item is { } item)
            kept.Insert(at + 1, $"item: {YamlScalar.QuotedLine(item)}");
        if (wish.Price is { } price)
            kept.Insert(at + 1, $"price: {price}");
        var text = WithScent(workshop, product.Recipe, string.Join('\n', kept), wish);
        if (wish.Hue is { } hue)
            text = WithHue(text, hue) ?? LookLine().Replace(text, $"${{1}}palette: {hue}, ", 1) switch
            {
                var looked when looked != text => looked,
                _ => $"{text.TrimEnd()}\nlook: {{ palette: {hue} }}",
            };
        return text.TrimEnd() + "\n";
    }

    private static string WithVariant(Workshop workshop, Product product, string variant, string[] lines, RecipeCopyWish wish)
    {
        var recipe = workshop.Recipe(product.Recipe.Id);
        if (recipe.Variants.Any(v => v.Name.Equals(wish.Name.Trim(), StringComparison.OrdinalIgnoreCase)))
            throw new InputException("copy.name-taken", ("recipe", product.Recipe.Id), ("wish", wish.Name.Trim()));
        var from = recipe.Variants.First(v => v.Name == variant);
        var end = recipe.Variants.Where(v => v.Line > from.Line).Select(v => v.Line).DefaultIfEmpty(EndOfList(lines, from.Line)).Min();
        var block = string.Join('\n', lines[(from.Line - 1)..(end - 1)]).TrimEnd();
        var text = ItemInside().Replace(block, "", 1);
        text = NameInside().Replace(text, m => $"{m.Groups[1].Value}{YamlScalar.QuotedLine(wish.Name.Trim())}", 1);
        if (wish.Item is { } item)
            text = NameInside().Replace(text, m => $"{m.Value}, item: {YamlScalar.QuotedLine(item)}", 1);
        var scented = WithScent(workshop, product.Recipe, text, wish);
        if (wish.Scent is { } scent && ScentOf(workshop, recipe) is { } usual && !scented.Contains(scent, StringComparison.Ordinal))
        {
            // The variant took the recipe's own scent: from now on it says what takes its place.
            scented = scented.Contains("replace: {", StringComparison.Ordinal)
                ? scented.Replace("replace: {", $"replace: {{ {usual}: {scent},", StringComparison.Ordinal)
                : NameInside().Replace(scented, m => $"{m.Value}, replace: {{ {usual}: {scent} }}", 1);
        }
        if (wish.Price is { } price)
            scented = NameInside().Replace(PriceInside().Replace(scented, "", 1), m => $"{m.Value}, price: {price}", 1);
        if (wish.Hue is { } hue)
            scented = WithHue(scented, hue)
                ?? (LookInside().IsMatch(scented)
                    ? LookInside().Replace(scented, $"${{0}} palette: {hue},", 1)
                    : NameInside().Replace(scented, m => $"{m.Value}, look: {{ palette: {hue} }}", 1));
        return string.Join('\n', [.. lines[..(EndOfList(lines, from.Line) - 1)], scented, .. lines[(EndOfList(lines, from.Line) - 1)..]])
            .TrimEnd() + "\n";
    }

    // The line, from 1, behind the last one of the list that a line belongs to.
    private static int EndOfList(string[] lines, int inside)
    {
        for (var line = inside; line < lines.Length; line++)
        {
            if (lines[line].Length > 0 && !char.IsWhiteSpace(lines[line][0]) && lines[line][0] is not ('-' or '#'))
                return line + 1;
        }
        return lines.Length + 1;
    }

    // What the old one smells of is not said of another scent.
    private static string WithScent(Workshop workshop, Recipe recipe, string text, RecipeCopyWish wish)
    {
        if (wish.Line is { } line)
            text = ScentLine().Replace(text, $"line: {YamlScalar.QuotedLine(line).Replace("$", "$$", StringComparison.Ordinal)}", 1);
        else if (wish.Scent is not null)
            text = EmptyLook().Replace(ScentLineAndComma().Replace(text, "", 1), "");
        return wish.Scent is { } scent && ScentOf(workshop, recipe) is { } old
            ? Regex.Replace(text, $@"(?<![\w-]){Regex.Escape(old)}(?![\w-])", scent)
            : text;
    }

    private static string? ScentOf(Workshop workshop, Recipe recipe) =>
        recipe.Materials.Select(m => m.Material)
            .FirstOrDefault(m => workshop.Materials.GetValueOrDefault(m)?.Kind == MaterialKind.Fragrance);

    private static string? WithHue(string text, int hue) =>
        Hue().IsMatch(text) ? Hue().Replace(text, m => $"{m.Groups[1].Value}{hue}", 1) : null;

    private static string NewId(Workshop workshop, string name)
    {
        var id = new string([.. name.Trim().ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]);
        id = Dashes().Replace(id, "-").Trim('-');
        return id.Length == 0 || workshop.RecipeIds.Contains(id, StringComparer.OrdinalIgnoreCase)
            ? throw new InputException("copy.recipe-there", ("id", id))
            : id;
    }

    private static Regex TopKey(string key) => new($"^{key}\\s*:");

    [GeneratedRegex(@"((?:palette|hue):\s*)[0-9]+")]
    private static partial Regex Hue();

    [GeneratedRegex(@"(?m)^(look:\s*\{\s*)")]
    private static partial Regex LookLine();

    [GeneratedRegex(@"look:\s*\{")]
    private static partial Regex LookInside();

    [GeneratedRegex("""(?:^|(?<=[\s{,]))item:\s*("[^"]*"|[^,}\s]+)\s*,?\s*""")]
    private static partial Regex ItemInside();

    [GeneratedRegex("""(?:^|(?<=[\s{,]))price:\s*[0-9.]+\s*,?\s*""")]
    private static partial Regex PriceInside();

    [GeneratedRegex("""((?:^|(?<=[\s{]))name:\s*)("[^"]*"|[^,}\n]+?)(?=\s*[,}\n]|$)""")]
    private static partial Regex NameInside();

    [GeneratedRegex("""(?<=[\s{])line:\s*("[^"]*"|[^,}\n]+)""")]
    private static partial Regex ScentLine();

    [GeneratedRegex("""(?<=[\s{])line:\s*("[^"]*"|[^,}\n]+)\s*,?\s*""")]
    private static partial Regex ScentLineAndComma();

    [GeneratedRegex(@",?\s*look:\s*\{\s*\}")]
    private static partial Regex EmptyLook();

    [GeneratedRegex("-+")]
    private static partial Regex Dashes();
}
