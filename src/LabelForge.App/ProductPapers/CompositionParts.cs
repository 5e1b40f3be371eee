using LabelForge.Composition;
using LabelForge.Declarations;
using LabelForge.Ingredients;
using LabelForge.Print.Documents;

namespace LabelForge.ProductPapers;

/// <summary>What a paper says of what is in a product: the same bounds as <c>declare</c> gives, printed so that they still hold.</summary>
internal static class CompositionParts
{
    private const int Places = 4;

    private static ImmutableArray<PaperColumn> Bounds { get; } = [new("low", "at least %", 1.1, true),
        new("high", "at most %", 1.1, true)];

    /// <summary>The whole composition: names, numbers, functions and bounds.</summary>
    public static PaperSection Composition(PaperItem item, PaperCase of)
    {
        var declaration = of.Declaration;
        var rows = declaration.Ingredients.Select(i => (Declared: i, Entries: EntriesOf(of, i))).ToArray();
        string[] unnumbered = [.. rows.Where(r => r.Entries.All(e => e.Cas.IsEmpty) && !IsScent(r.Entries)).Select(r => r.Declared.Name)];
        string[] between = [.. rows.Where(r => r.Declared.Low != r.Declared.High).Select(r => r.Declared.Name)];
        return new PaperSection(item.Id, item.What, item.At)
        {
            Facts =
            [
                PaperFact.Of("statement", "As declared", declaration.Statement,
                    $"the declaration, market {of.Market.Id}, {of.On.ToIso()}; shares are mass percent of the finished product, by "
                        + $"the suppliers' lists"),
                .. between.Length == 0
                    ? []
                    : (PaperFact[])[PaperFact.Lacking("exact", "Exact shares",
                        $"{between.Length} of {rows.Length} are known within bounds only. Ask the suppliers, and write their figures into "
                            + $"the materials' files.")],
                .. unnumbered.Length == 0
                    ? []
                    : (PaperFact[])[PaperFact.Lacking("numbers", "CAS numbers",
                        $"None is held for {string.Join(", ", unnumbered)}: they stand in the suppliers' safety data sheets.")],
                .. of.Product.Batch.Lines.Select(l => l.Material).Where(m => m.Kind == MaterialKind.Fragrance).DistinctBy(m => m.Id)
                    .Select(m => m.Supplier is { } supplier
                    ? PaperFact.Of($"scent-{m.Id}", "Perfume composition",
                        $"{m.Name}, from {supplier}{(m.Lot is { } lot ? $", their lot {lot}" : "")}", m.File)
                    : PaperFact.Lacking($"scent-{m.Id}", $"Perfume composition {m.Name}",
                        $"Its supplier and code number: write supplier: into {m.File}.")),
            ],
            Table = new PaperTable([new("name", "Ingredient", 3.2), new("cas", "CAS", 1.7), new("ec", "EC", 1.5),
                new("function", "function", 1.6), .. Bounds],
                [
                    .. rows.Select(r => (ImmutableArray<PaperValue>)[new(r.Declared.Name),
                        Numbers(r.Entries.SelectMany(e => e.Cas.Select(c => c.ToString()))), Numbers(r.Entries.SelectMany(e => e.Ec)),
                        new(Functions(r.Entries)), .. Bound(r.Declared)])]),
            Notes = declaration.IsProved
                ? []
                : [Invariant($"{declaration.Unsettled.Length} pairs stand in an order that the suppliers' data do not prove.")],
        };
    }

    /// <summary>The bounds for a notification that takes exact shares or ranges of its own.</summary>
    public static PaperSection Formulation(PaperItem item, PaperCase of) => new(item.Id, item.What, item.At)
    {
        Facts =
        [
            of.Own.Frame is { } frame ? PaperFact.Of("frame", "Frame formulation", frame, PaperAnswers.FileName)
                : PaperFact.Lacking("frame", "Frame formulation", $"{Frames(of)} Choose one that fits, or give the shares below; "
                    + $"write it down in {PaperAnswers.FileName}: products: {{ {of.Product.Name}: {{ frame formulation: ... }} }}"),
        ],
        Table = new PaperTable([new("name", "Ingredient", 5), new("cas", "CAS", 2), .. Bounds],
            [.. of.Declaration.Ingredients
                .Select(i => (ImmutableArray<PaperValue>)[new(i.Name),
                    Numbers(EntriesOf(of, i).SelectMany(e => e.Cas.Select(c => c.ToString()))), .. Bound(i)])]),
        Notes = ["Mass percent of the finished product, by the suppliers' lists; where the bounds differ, the exact share is not known."],
    };

    // What the office offers for the kind, each with what of the product goes beyond it, or may.
    private static string Frames(PaperCase of) => of.OfOffice is { Frames.IsEmpty: false } known
        ? $"Offered for this kind: {string.Join("; ", known.Frames.Select(f => f.Name + Beyond(f, of.Declaration)))}."
        : "The official list is not held here.";

    private static string Beyond(FrameFormulation frame, Declaration declaration)
    {
        string[] beyond = [.. declaration.Ingredients.Where(i => frame.AtMost.TryGetValue(i.Name, out var most) && i.High > most)
            .Select(i => Invariant($"{(i.Low > frame.AtMost[i.Name] ? "not for more" : "if no more")} than {frame.AtMost[i.Name]:0.##} % {i.Name}"))];
        return beyond.Length == 0 ? "" : $" ({string.Join(", ", beyond)})";
    }

    /// <summary>Each ingredient with the number of the range that holds its share, or of each that may.</summary>
    public static PaperSection Ranges(PaperItem item, PaperCase of)
    {
        var steps = (LawSteps)of.Rules.Figure("notification.range").Value;
        var rows = of.Declaration.Ingredients.Select(i => (Declared: i, Numbers: RangesOf(steps, i))).ToArray();
        string[] open = [.. rows.Where(r => r.Numbers.Length > 1).Select(r => $"{r.Declared.Name} ({string.Join(" or ", r.Numbers)})")];
        return new PaperSection(item.Id, item.What, item.At)
        {
            Facts = open.Length == 0
                ? []
                : [PaperFact.Lacking("ranges", "Ranges that are not settled", $"{string.Join(", ", open)}. Ask the suppliers.")],
            Table = new PaperTable([new("name", "Ingredient as declared", 3.4), new("inci", "INCI name", 3.4), .. Bounds,
                new("range", "range no.", 1, true), new("words", "which is", 2.4)],
                [
                    .. rows.Select(r => (ImmutableArray<PaperValue>)[new(r.Declared.Name), new(Inci(of, r.Declared)), .. Bound(r.Declared),
                        new(string.Join(" or ", r.Numbers), r.Numbers), new(r.Numbers.Length == 1 ? Words(steps, r.Numbers[0]) : "")])]),
            Notes = [$"The ranges by number: {of.Rules.Figure("notification.range").Citation}."],
        };
    }

    /// <summary>The names alone, in label order.</summary>
    public static PaperSection Names(PaperItem item, PaperCase of) => new(item.Id, item.What, item.At)
    {
        Facts = [PaperFact.Of("statement", "As declared", of.Declaration.Statement,
            $"the declaration, market {of.Market.Id}, {of.On.ToIso()}", of.Declaration.Names)],
        Notes = of.Declaration.IsProved
            ? []
            : [Invariant($"{of.Declaration.Unsettled.Length} pairs stand in an order that the suppliers' data do not prove.")],
    };

    /// <summary>Ingredients that are nanomaterials, by the suppliers' lists and the dictionary.</summary>
    public static ImmutableArray<PaperFact> Nano(PaperItem item, PaperCase of)
    {
        string[] named = [.. of.Declaration.Ingredients
            .Where(i => NanoName.IsMarked(i.Name) || EntriesOf(of, i).Any(e => e.Flags.HasFlag(IngredientFlags.Nano)))
            .Select(i => i.Name)];
        return [named.Length == 0
            ? PaperFact.Of("nano", "By the suppliers' lists",
                "None is named. Ask the suppliers of pigments and of sun filters where you are not sure.", null, Array.Empty<string>())
            : PaperFact.Lacking("nano", "Named",
                $"{string.Join(", ", named)}: their chemical names (IUPAC) and the foreseeable conditions of exposure.")];
    }

    /// <summary>The raw materials: who sells them, and how much goes in.</summary>
    public static PaperSection Materials(PaperItem item, PaperCase of)
    {
        var total = of.Product.Batch.Total.Grams;
        var lines = of.Product.Batch.Lines.GroupBy(l => l.Material.Id).Select(g => (g.First().Material, Grams: g.Sum(l => l.Mass.Grams)))
            .ToArray();
        string[] unnamed = [.. lines.Where(l => l.Material.Supplier is null && l.Material.Kind != MaterialKind.Water)
            .Select(l => l.Material.Name)];
        return new PaperSection(item.Id, item.What, item.At)
        {
            Facts = unnamed.Length == 0
                ? []
                : [PaperFact.Lacking("suppliers", "Suppliers",
                    $"Not written for {string.Join(", ", unnamed)}: supplier: in the material's file.")],
            Table = new PaperTable([new("material", "Material", 4), new("supplier", "supplier", 3),
                new("grams", "weighed in, g", 1.6, true), new("charge", "of what is weighed in, %", 1.8, true)],
                [
                    .. lines.Select(l => (ImmutableArray<PaperValue>)[new(l.Material.Name), new(l.Material.Supplier ?? ""),
                        Figure(l.Grams, 2), Figure(l.Grams / total * 100, 3)])]),
            Notes = of.Product.Batch.Losses.IsEmpty
                ? []
                : [Invariant($"{of.Product.Batch.Total.Grams:0.##} g are weighed in and {of.Product.Batch.Yield.Grams:0.##} g are there when it is finished; shares of the finished product stand under Composition.")],
        };
    }

    /// <summary>The bounds of an ingredient as two cells: printed to four places, the lower one down and the upper one up.</summary>
    internal static IEnumerable<PaperValue> Bound(DeclaredIngredient ingredient) =>
        Math.Round(ingredient.Low, 10) == Math.Round(ingredient.High, 10)
            ? [Figure(ingredient.Low, Places), Figure(ingredient.High, Places)]
            : [Outward(ingredient.Low, Math.Floor), Outward(ingredient.High, Math.Ceiling)];

    /// <summary>A figure to so many places, and whole as data.</summary>
    internal static PaperValue Figure(decimal figure, int places) =>
        new(Math.Round(figure, places).ToString("0." + new string('#', places), CultureInfo.InvariantCulture), Math.Round(figure, 10));

    private static PaperValue Outward(decimal percent, Func<decimal, decimal> round)
    {
        // What is off by the last figures of the arithmetic is no other figure.
        var exact = Math.Round(percent, 10);
        return new((round(exact * 10_000) / 10_000).ToString("0." + new string('#', Places), CultureInfo.InvariantCulture), exact);
    }

    private static ImmutableArray<Ingredient> EntriesOf(PaperCase of, DeclaredIngredient ingredient) =>
        EntriesOf(of.Declaration, ingredient, of.Product.Workshop.Dictionary);

    /// <summary>What stands under a declared name, as the dictionary knows it.</summary>
    internal static ImmutableArray<Ingredient> EntriesOf(Declaration declaration, DeclaredIngredient ingredient,
        IngredientDictionary dictionary) =>
        [.. (declaration.Composition?.Keys.GetValueOrDefault(ingredient.Name, []) ?? []).DefaultIfEmpty(ingredient.Name)
            .Select(k => dictionary.Find(NanoName.Bare(k))).OfType<Ingredient>().Distinct()];

    private static bool IsScent(ImmutableArray<Ingredient> entries) => entries.Any(e => e.Roles.Contains(IngredientRole.Fragrance));

    private static int[] RangesOf(LawSteps steps, DeclaredIngredient i)
    {
        var (least, most) = ((int)steps.At(Math.Round(i.Low, 10)), (int)steps.At(Math.Round(i.High, 10)));
        return [.. steps.Steps.Select(s => (int)s.Gives).Where(n => n <= Math.Max(least, most) && n >= Math.Min(least, most))
            .OrderDescending()];
    }

    private static string Words(LawSteps steps, int number)
    {
        var at = Enumerable.Range(0, steps.Steps.Count).First(i => (int)steps.Steps[i].Gives == number);
        return Invariant($"over {(at == 0 ? 0 : steps.Steps[at - 1].UpTo)}, up to {steps.Steps[at].UpTo ?? 100} %");
    }

    // A market's own name may stand for the INCI name on its label, and not on its form.
    private static string Inci(PaperCase of, DeclaredIngredient i) => EntriesOf(of, i) switch
    {
        [var entry] => entry.Inci ?? (entry.IsColourant ? i.Name : entry.Us),
        _ => i.Name,
    };

    private static PaperValue Numbers(IEnumerable<string> numbers) =>
        numbers.Distinct().ToArray() is var all ? new(string.Join(", ", all), all) : PaperValue.None;

    private static string Functions(ImmutableArray<Ingredient> entries) =>
        string.Join(", ", entries.SelectMany(e => e.Roles.Take(2)).Distinct().Select(Word));

    private static string Word(IngredientRole role) =>
        string.Concat(role.ToString()
            .Select((c, i) => i > 0 && char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : char.ToLowerInvariant(c).ToString()));
}
