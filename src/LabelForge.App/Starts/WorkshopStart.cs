using LabelForge.Composition;
using LabelForge.Ingredients;
using LabelForge.Ingredients.Supplied;
using LabelForge.Recipes.Files;

namespace LabelForge.Starts;

/// <summary>A file that a start writes into the workshop's folder.</summary>
/// <param name="Room">The folder in it: <c>materials</c>, <c>recipes</c>, or nothing for the folder itself.</param>
/// <param name="Id">The file's name without its ending.</param>
/// <param name="Text">What it says.</param>
public sealed record StartFile(string Room, string Id, string Text);

/// <summary>Four answers made into a workshop: its business, its materials, and one recipe with its scents.</summary>
/// <remarks>What nobody answered is not written: no price, no weight, no list that is said to be the wrapper's.</remarks>
public static class WorkshopStart
{
    /// <summary>The id of a base whose wrapper was copied.</summary>
    public const string OwnBase = "base";

    /// <summary>The key of the fragrance's amount, which is the same for all scents.</summary>
    public const string Fragrance = "fragrance";

    /// <summary>The key of the colour's amount.</summary>
    public const string Colour = "colour";

    /// <summary>What amounts are asked for: the key of each, and what to call it.</summary>
    public static ImmutableArray<(string Key, string Name)> Asked(StartAnswers answers)
    {
        var scents = ScentLine.Read(answers.Scents);
        var asked = ImmutableArray.CreateBuilder<(string, string)>();
        if (answers.Wrapper.Trim().Length > 0)
            asked.Add((OwnBase, "Base"));
        asked.AddRange(Goods(answers).Select(g => (g.Id, g.Material.Name)));
        if (scents.Any(s => s.Fragrance is not null))
            asked.Add((Fragrance, scents.Length == 1 ? scents[0].Fragrance! : "Fragrance of each"));
        if (scents.Any(s => s.ColourGood is not null))
            asked.Add((Colour, scents.Length == 1 ? scents[0].ColourGood!.Material.Name : "Colour of each"));
        return asked.ToImmutable();
    }

    /// <summary>The name of the product where the answers give none: what the base is, until it is called something.</summary>
    public static string ProposedName(StartAnswers answers) =>
        Goods(answers).Select(g => g.Material).FirstOrDefault(m => m.Kind == MaterialKind.Base)?.Name is { } name
            ? $"{name.Replace(" base", "", StringComparison.OrdinalIgnoreCase)} bar" : "My first bar";

    /// <summary>The business's file.</summary>
    /// <param name="markets">The markets known.</param>
    /// <exception cref="InputException">The name is missing, or something cannot be used.</exception>
    public static StartFile Business(StartAnswers answers, MarketBook markets)
    {
        if (string.IsNullOrWhiteSpace(answers.Shop))
            throw new InputException("start.name-missing");
        var place = EnvelopeAddress.Read(answers.Address);
        var country = Country.Find(place?.Country ?? "US");
        var contact = answers.Contact.Trim().Length == 0 ? null : ContactWay.Parse(answers.Contact).OrRefuse();
        string Of(ContactKind kind) => contact?.Kind == kind ? contact.Text : "";
        return new("", "workshop",
            new BusinessDraft(answers.Shop, "maker", place?.Street ?? "", place?.City ?? "", place?.Region ?? "", place?.Postcode ?? "",
            country?.Code ?? "US", Of(ContactKind.Phone), Of(ContactKind.Web), Of(ContactKind.Email), MarketOf(country, markets),
            country?.Currency ?? "USD").ToYaml(markets));
    }

    /// <summary>All the files, the business's last, so that a folder is a workshop once all of it is there.</summary>
    /// <exception cref="InputException">Something is missing or cannot be used; the message says what to write.</exception>
    public static ImmutableArray<StartFile> Files(StartAnswers answers, IngredientDictionary dictionary, MarketBook markets)
    {
        var (materials, recipe) = Made(answers, dictionary);
        return [.. materials, recipe, Business(answers, markets)];
    }

    /// <summary>Writes the files of a start into a folder that may hold others, for a picture
    /// before anything is in the workshop.</summary>
    public static void WriteTo(string folder, IEnumerable<StartFile> files)
    {
        foreach (var file in files)
        {
            Directory.CreateDirectory(Path.Combine(folder, file.Room));
            File.WriteAllText(Path.Combine(folder, file.Room, file.Id + ".yaml"), file.Text);
        }
    }

    /// <summary>The id of the recipe, and its products' names.</summary>
    public static (string Recipe, ImmutableArray<string> Products) Products(StartAnswers answers)
    {
        var scents = ScentLine.Read(answers.Scents);
        var names = scents.IsEmpty ? [ProposedName(answers)] : scents.Select(s => s.Name).ToImmutableArray();
        return (MaterialDraft.IdOf(names.Length == 1 ? names[0] : $"{names[0]} and others"), names);
    }

    /// <summary>The market where a business of a country sells first: its own, where its rules are known.</summary>
    public static string MarketOf(Country? country, MarketBook markets) =>
        (markets.All.FirstOrDefault(m => country is not null && m.Ways.Countries.Contains(country.Code)) ?? markets.Usual).Id;

    private static IEnumerable<UsualGood> Goods(StartAnswers answers) =>
        answers.Goods.Select(UsualGood.Named).OfType<UsualGood>().OrderBy(g => g.Material.Kind)
            .ThenBy(g => g.Material.Name, StringComparer.Ordinal);

    private static (ImmutableArray<StartFile> Materials, StartFile Recipe) Made(StartAnswers answers, IngredientDictionary dictionary)
    {
        var names = new NameMatcher(dictionary);
        var scents = ScentLine.Read(answers.Scents);
        if (ScentLine.Wrong(scents) is { } wrong)
            throw new InputException(wrong);
        var materials = Goods(answers).Select(g => new StartFile("materials", g.Id, g.Text)).ToList();
        if (answers.Wrapper.Trim().Length > 0)
            materials.Insert(0,
                new("materials", OwnBase,
                    new MaterialDraft(OwnBase, "Base", MaterialKind.Base, ListedOrder.Label,
                        names.Match(SuppliedText.Read(answers.Wrapper, names.Knows))).ToYaml(dictionary)));
        if (materials.Count == 0)
            throw new InputException("start.nothing-says-what-you");
        foreach (var scent in scents)
        {
            if (scent.Fragrance is { } fragrance && materials.All(m => m.Id != FragranceId(fragrance)))
                materials.Add(new("materials", FragranceId(fragrance), FragranceText(fragrance)));
            if (scent.ColourGood is { } colour && materials.All(m => m.Id != colour.Id))
                materials.Add(new("materials", colour.Id, colour.Text));
        }
        return ([.. materials], RecipeOf(answers, scents));
    }

    private static StartFile RecipeOf(StartAnswers answers, ImmutableArray<ScentLine> scents)
    {
        var (id, names) = Products(answers);
        var main = scents.OrderByDescending(s => (s.Fragrance is null ? 0 : 1) + (s.ColourGood is null ? 0 : 1)).FirstOrDefault();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"name: {YamlScalar.Line(names[0])}\nidentity: Bar soap\nproduct: soap-bar\nmaterials:\n");
        foreach (var (key, name) in Asked(answers))
        {
            var use = key == Fragrance ? main?.Fragrance is { } f ? FragranceId(f) : null : key == Colour ? main?.ColourGood?.Id : key;
            if (use is null)
                continue;
            var amount = answers.Amounts.GetValueOrDefault(key) is { Length: > 0 } written
                ? written
                : throw new InputException("start.how-much-goes", ("name", name));
            text.Append(CultureInfo.InvariantCulture, $"  - {{ use: {use}, amount: {YamlScalar.Line(amount)} }}\n");
        }
        if (answers.Pieces.Trim().Length > 0)
            text.Append(CultureInfo.InvariantCulture, $"pieces: {YamlScalar.Line(answers.Pieces.Trim())}\n");
        if (answers.Net.Trim().Length > 0)
            text.Append(CultureInfo.InvariantCulture, $"net: {YamlScalar.Line(answers.Net.Trim())}\n");
        if (scents.Length > 1)
        {
            text.Append("variants:\n");
            foreach (var scent in scents)
                text.Append(CultureInfo.InvariantCulture, $"  - {{ name: {YamlScalar.Line(scent.Name)}{Otherwise(scent, main!, answers)} }}\n");
        }
        RecipeFile.Read(id, YamlFile.ReadText(text.ToString(), $"recipes/{id}.yaml"));
        return new("recipes", id, text.ToString());
    }

    // What a scent has instead of the first one's fragrance and colour.
    private static string Otherwise(ScentLine scent, ScentLine main, StartAnswers answers)
    {
        var (replace, gone, add) = (new List<string>(), new List<string>(), new List<string>());
        void One(string? own, string? first, string key)
        {
            if (own == first)
                return;
            if (first is null)
                add.Add($"{{ use: {own}, amount: {YamlScalar.Line(answers.Amounts.GetValueOrDefault(key) ?? "")} }}");
            else if (own is null)
                gone.Add(first);
            else
                replace.Add($"{first}: {own}");
        }
        One(scent.Fragrance is { } f ? FragranceId(f) : null, main.Fragrance is { } g ? FragranceId(g) : null, Fragrance);
        One(scent.ColourGood?.Id, main.ColourGood?.Id, Colour);
        return (replace.Count > 0 ? $", replace: {{ {string.Join(", ", replace)} }}" : "")
            + (gone.Count > 0 ? $", leave out: [ {string.Join(", ", gone)} ]" : "")
            + (add.Count > 0 ? $", add: [ {string.Join(", ", add)} ]" : "");
    }

    private static string FragranceId(string name) =>
        MaterialDraft.IdOf(name.Contains("fragrance", StringComparison.OrdinalIgnoreCase)
            || name.Contains("oil", StringComparison.OrdinalIgnoreCase) ? name : name + " fragrance");

    // Its limits and allergens are on its certificate; until they are copied the checks say that they are not known.
    private static string FragranceText(string name) =>
        $"# Copy the limits and the allergens from the certificates that came with the "
            + $"bottle.\nname: {YamlScalar.Line(char.ToUpperInvariant(name[0]) + name[1..])}\nkind: fragrance\ncontains: Fragrance\n";
}
