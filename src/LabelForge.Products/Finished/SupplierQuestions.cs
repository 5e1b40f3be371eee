using LabelForge.Composition;
using LabelForge.Composition.Asking;
using LabelForge.Ingredients;
using LabelForge.Recipes;

namespace LabelForge.Declarations;

/// <summary>One question to a supplier, and where the answer goes.</summary>
/// <param name="Material">The material it is about.</param>
/// <param name="Constituent">The name as the supplier wrote it; null where the question is of the whole list.</param>
/// <param name="Over">The line that the list is parted by; null where the question is another.</param>
/// <param name="Settles">How many open pairs the answer is expected to settle, after the questions before it.</param>
/// <param name="Line">The line of the material's file where the answer goes.</param>
public sealed record SupplierQuestion(Material Material, string? Constituent, ShareLine? Over, double Settles, int Line)
{
    /// <summary>The fragrance allergens that are asked about, as far as such a material is known
    /// to hold them; null where the question is another.</summary>
    public ImmutableArray<string>? Allergens { get; init; }

    /// <summary>Whether the question is in which of <see cref="ShareBands"/> each of the list lies.</summary>
    public bool IsBands => Allergens is null && Constituent is null && Over is null;

    /// <summary>The question itself, as it stands in the message.</summary>
    public string Asked => AskedIn(LetterWords.English);

    internal string AskedIn(LetterWords words) =>
        Allergens is { } known ? words["allergens", Material.Name, known.IsEmpty ? "" : words["allergens-known", string.Join(", ", known)]]
        : Constituent is { } name ? words["share", Material.Name, name]
        : IsBands ? words["bands", Material.Name, Bands(words)]
        : Over is { } line && line.AtMost != line.AtLeast ? words["line-apart", Material.Name, Percent(line.AtLeast), Percent(line.AtMost)]
        : words["line", Material.Name, Percent(Over!.Value.AtMost)];

    /// <summary>What to write where, once the answer is here.</summary>
    public string Answer => Allergens is not null
        ? $"{Material.File}: under allergens: each with its figure or range, for example {{ Linalool: 20-45 % }}"
        : Constituent is { } name
        ? $"{Material.File}, line {Line}: - {name}: the figure or range, for example 5-10 %"
        : IsBands
        ? $"{Material.File}, line {Line} and below: beside each its band, for example 5-10 %; beside "
            + $"the least, <= {Percent(ShareBands.Edges[0])}"
        : $"{Material.File}, line {Line} and below: beside each that is at or over "
            + $"it, at least {Percent(Over!.Value.AtLeast)}; beside the others, <= {Percent(Over.Value.AtMost)}";

    // "1 % or less, 1-2 %, ... above 40 %".
    private static string Bands(LetterWords words) => string.Join(", ",
        [words["band-first", Percent(ShareBands.Edges[0])],
            .. ShareBands.Edges.Zip(ShareBands.Edges.Skip(1), (from, to) => $"{from * 100:0.##}-{Percent(to)}"),
            words["band-last", Percent(ShareBands.Edges[^1])]]);

    private static string Percent(decimal fraction) => (fraction * 100).ToString("0.########", CultureInfo.InvariantCulture) + " %";
}

/// <summary>One message to a supplier.</summary>
/// <param name="To">The supplier as the materials name it; null where they name none.</param>
/// <param name="Questions">At most three about the order of ingredients, the most useful first; then those about allergens.</param>
public sealed record SupplierLetter(string? To, ImmutableArray<SupplierQuestion> Questions)
{
    /// <summary>How many open pairs the answers are expected to settle.</summary>
    public double Settles => Questions.Sum(q => q.Settles);

    /// <summary>Whom it goes to, in words.</summary>
    public string Addressed => In("en").Addressed;

    /// <summary>The subject line.</summary>
    public string Subject => In("en").Subject;

    /// <summary>The text, ready to copy.</summary>
    public string Text => In("en").Text;

    /// <summary>A link that opens the message in a mail program; the address is for the maker to fill in.</summary>
    public string Mailto => In("en").Mailto;

    /// <summary>The message in a language; in English where there are no words in it.</summary>
    /// <param name="language">The language's code, as <c>fr</c>.</param>
    public LetterText In(string language)
    {
        var words = LetterWords.In(language);
        var why = (Questions.Any(q => q.Allergens is null), Questions.Any(q => q.Allergens is not null)) switch
        {
            (true, false) => "why-order",
            (false, true) => "why-allergens",
            _ => "why-both",
        };
        var numbered = Questions.Select((q, at) => Invariant($"{at + 1}. {q.AskedIn(words)}"));
        return new(
            To ?? words["supplier-of", Questions[0].Material.Name],
            words[Questions.Length <= 3 ? $"subject-{Questions.Length}" : "subject-many",
                string.Join(words["and"], Questions.Select(q => q.Material.Name).Distinct())],
            $"{words["greeting"]}\n\n{words["could", words[why]]}\n\n{string.Join('\n', numbered)}\n\n{words["thanks"]}");
    }
}

/// <summary>A message to a supplier in one language.</summary>
/// <param name="Addressed">Whom it goes to, in words.</param>
/// <param name="Subject">The subject line.</param>
/// <param name="Text">The text, ready to copy.</param>
public sealed record LetterText(string Addressed, string Subject, string Text)
{
    /// <summary>A link that opens the message in a mail program; the address is for the maker to fill in.</summary>
    public string Mailto => $"mailto:?subject={Uri.EscapeDataString(Subject)}&body={Uri.EscapeDataString(Text)}";
}

/// <summary>What to ask of which supplier: the fewest facts that settle most.</summary>
/// <param name="Letters">One message a supplier, the most useful first.</param>
/// <param name="Open">How many pairs are open over the products asked about.</param>
/// <param name="Settled">How many of them all answers together are expected to settle.</param>
public sealed record SupplierQuestions(ImmutableArray<SupplierLetter> Letters, int Open, double Settled)
{
    /// <summary>Finds the questions for some products; an answer counts in every one of them that uses the material.</summary>
    /// <param name="rules">The law of their labels, which says where the order by weight ends.</param>
    /// <exception cref="InputException">The suppliers' data contradict themselves.</exception>
    public static SupplierQuestions For(ImmutableArray<Product> products, RulesOf rules)
    {
        if (products is not [{ Workshop.Dictionary: var dictionary }, ..])
            return new SupplierQuestions([], 0, 0);
        var materials = products.SelectMany(p => ExplodedFormula.Of(p.Workshop, p.Batch)).Select(f => f.Material).DistinctBy(m => m.Id)
            .ToArray();
        var named = materials.GroupBy(m => m.Name).ToDictionary(g => g.Key, g => g.First());
        var asked = Facts.Best(
            Product.Each(products, p => BatchComposition.Prove(p.Workshop, p.Batch, dictionary, rules)),
            material => named.TryGetValue(material, out var known) ? Supplier(known) : null);
        var letters = asked.Facts
            .Select(f => Question(named[f.Material], f, dictionary))
            .Concat(rules.FigureIfAny("allergens.list-new-products") is { Word: not "none" }
                ? materials.Select(m => AllergensOf(m, products[0].Workshop)).OfType<SupplierQuestion>()
                : [])
            .GroupBy(q => Supplier(q.Material))
            .Select(g => new SupplierLetter(g.First().Material.Supplier, [.. g]))
            .OrderByDescending(l => l.Settles)
            .ToImmutableArray();
        return new SupplierQuestions(letters, asked.Open, letters.Sum(l => l.Settles));
    }

    /// <summary>The questions for every product of the workshop, by the law of a market on a day.</summary>
    /// <param name="market">The market; null for the workshop's own.</param>
    /// <exception cref="InputException">A recipe or a material cannot be read.</exception>
    public static SupplierQuestions ForAll(Workshop workshop, DateOnly on, Market? market = null) =>
        For([.. workshop.RecipeIds.SelectMany(id => workshop.ProductsOf(id))], (market ?? workshop.Market).On(on));

    // A scent without a certificate, or what holds an essential oil without one.
    private static SupplierQuestion? AllergensOf(Material material, Workshop workshop)
    {
        if (!material.Allergens.IsEmpty)
            return null;
        var oils = PossibleAllergens.In(material, workshop).ToArray();
        return oils.Length == 0 && material.Kind != MaterialKind.Fragrance ? null
            : new SupplierQuestion(material, null, null, 0, 1)
            {
                Allergens = [.. oils.SelectMany(o => o.Holds).Select(h => h.Allergen.Name).Distinct()],
            };
    }

    // Whom a material comes from; where nothing says so, the material stands for its supplier.
    private static string Supplier(Material material) => material.Supplier ?? $"\0{material.Id}";

    private static SupplierQuestion Question(Material material, SupplierFact fact, IngredientDictionary dictionary)
    {
        if (fact.Constituent is null)
            return new SupplierQuestion(material, null, fact.Line, fact.Settles,
                material.Contains.Select(c => c.Line).DefaultIfEmpty(1).First());
        var line = material.Contains.FirstOrDefault(c => Key(c.Name) == NanoName.Bare(fact.Constituent))
            ?? material.Contains.FirstOrDefault();
        return new SupplierQuestion(material, line?.Name ?? fact.Constituent, null, fact.Settles, line?.Line ?? 1);

        string Key(string written) => dictionary.Find(NanoName.Bare(written))?.Key ?? NanoName.Bare(written);
    }
}
