using LabelForge.Declarations;

namespace LabelForge.Days;

/// <summary>Questions without an answer: lists nobody has held against a wrapper, and what
/// suppliers have not been asked, or have not said.</summary>
public static class OpenQuestions
{
    /// <summary>How many suppliers are named by themselves; the rest are counted, so that a day's list stays one.</summary>
    public const int MostSuppliers = 3;

    /// <summary>The questions of a workshop, the most useful first. What cannot be read asks
    /// nothing; the recipe itself tells of it.</summary>
    /// <param name="on">The day, whose law says where the order by weight ends.</param>
    public static ImmutableArray<OpenThing> Of(Workshop workshop, DateOnly on)
    {
        var products = workshop.RecipeIds.SelectMany(id => workshop.ProductsOrNone(id)).ToImmutableArray();
        return [.. Wrappers(products), .. Suppliers(products, workshop, on)];
    }

    private static IEnumerable<OpenThing> Wrappers(ImmutableArray<Product> products)
    {
        Material[] open = [.. products.SelectMany(p => p.Batch.Lines).Select(l => l.Material).Where(m => m.ToConfirm is not null)
            .DistinctBy(m => m.Id)];
        if (open.Length > 0)
            yield return new OpenThing(OpenKind.Wrapper,
                open.Length == 1 ? new("compare-one", open[0].Name) : new("compare-many", open.Length),
                [new(open.Length == 1 ? "ours-one" : "ours-many", string.Join(", ", open.Select(m => m.Name)))])
            {
                Material = open[0].Id,
                Count = open.Length,
            };
    }

    private static IEnumerable<OpenThing> Suppliers(ImmutableArray<Product> products, Workshop workshop, DateOnly on)
    {
        if (Asked(products, workshop, on) is not { Letters.IsEmpty: false } asked)
            yield break;
        // Who was asked and has not answered comes after who was not.
        var letters = asked.Letters.OrderBy(l => AskedOn(l) is not null).ToArray();
        foreach (var letter in letters.Take(MostSuppliers))
        {
            var title = (letter.To, letter.Questions.Length) switch
            {
                (null, 1) => new Saying("ask-supplier-of-one", letter.Questions[0].Material.Name),
                (null, var n) => new("ask-supplier-of-many", letter.Questions[0].Material.Name, n),
                (var who, 1) => new("ask-one", who),
                (var who, var n) => new("ask-many", who, n),
            };
            yield return new OpenThing(OpenKind.Question, title, [.. Said(letter, asked.Open)])
            {
                Material = letter.Questions[0].Material.Id,
                Supplier = letter.To,
                Count = letter.Questions.Length,
            };
        }
        if (asked.Letters.Length > MostSuppliers)
        {
            var rest = letters.Skip(MostSuppliers).ToArray();
            yield return new OpenThing(OpenKind.Question, rest.Length == 1 ? new("ask-more-one") : new("ask-more-many", rest.Length),
                [new("as-told", string.Join(", ", rest.Select(l => l.To ?? l.Questions[0].Material.Name)) + ".")])
            {
                Material = rest[0].Questions[0].Material.Id,
                Count = rest.Sum(l => l.Questions.Length),
            };
        }
    }

    // The day on which all that the letter asks was asked; null where some of it was not.
    private static DateOnly? AskedOn(SupplierLetter letter) =>
        letter.Questions.All(q => q.Material.Asked is not null) ? letter.Questions.Max(q => q.Material.Asked) : null;

    private static IEnumerable<Saying> Said(SupplierLetter letter, int open)
    {
        if (AskedOn(letter) is { } day)
            yield return new Saying("asked-on", day.ToIso());
        if (Math.Round(letter.Settles) is > 0 and var pairs)
            yield return new Saying("would-settle", pairs.ToString(CultureInfo.InvariantCulture), open);
        if (letter.Questions.Any(q => q.Allergens is not null))
            yield return new Saying("no-certificate");
    }

    private static SupplierQuestions? Asked(ImmutableArray<Product> products, Workshop workshop, DateOnly on)
    {
        try
        {
            return products.IsEmpty ? null : SupplierQuestions.For(products, workshop.Market.On(on));
        }
        catch (InputException)
        {
            // Suppliers' figures that contradict each other are told where they stand.
            return null;
        }
    }
}
