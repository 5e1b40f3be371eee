namespace LabelForge.Markets;

/// <summary>Whether something applies to a product, as far as its kind tells.</summary>
public enum Applies
{
    /// <summary>It does not.</summary>
    No,

    /// <summary>It depends on more than the kind; a person must say.</summary>
    Perhaps,

    /// <summary>It does.</summary>
    Yes,
}

/// <summary>A group of products that the annexes of the EU Cosmetics Regulation speak of, and whether a kind surely falls in it.</summary>
/// <param name="Name">The group: <c>hair</c>, <c>face</c>.</param>
/// <param name="Sure">False where it depends on the product.</param>
public readonly record struct ProductGroup(string Name, bool Sure)
{
    // Nails and oral care are in the annexes, but no kind of ours falls in them.
    private static readonly ImmutableHashSet<string> Listed =
        ["soap", "hair", "shampoo", "face", "hand", "foot", "body", "lotion", "bath", "deodorant", "spray", "powder", "mucous", "inhaled",
        "nails", "oral", "aerosol", "viscous", "perfume", "hydroalcoholic", "sun", "under-three", "professional-use", "adults-only",
        "roll-on"];

    private static readonly ImmutableHashSet<string> Computed = ["all", "rinse-off", "leave-on", "lips", "eye", "external", "makeup"];

    /// <summary>Reads <c>hair</c>, or <c>hair?</c> where it depends on the product.</summary>
    public static Parsed<ProductGroup> Parse(string written)
    {
        var name = written.Trim().TrimEnd('?');
        return Listed.Contains(name)
            ? Parsed<ProductGroup>.Of(new(name, !written.Contains('?', StringComparison.Ordinal)))
            : Parsed<ProductGroup>.Refused("kind.not-a-group-products", ("name", name), ("list", string.Join(", ", Listed.Order())));
    }

    /// <summary>Whether the name is that of a group, of what use and area tell (all, rinse-off,
    /// leave-on, lips, eye, external), or of a kind.</summary>
    public static bool IsKnown(string name) => Listed.Contains(name) || Computed.Contains(name) || ProductKinds.Find(name).IsValue;

    /// <summary>Whether a kind of product falls in a group.</summary>
    /// <param name="groups">One or more groups, any of which will do; <c>hair+rinse-off</c> wants both.</param>
    public static Applies Covers(ProductKind kind, IEnumerable<string> groups) =>
        groups.Select(g => g.Split('+').Min(n => One(kind, n))).DefaultIfEmpty(Applies.No).Max();

    /// <summary>The facts that would settle whether a kind falls in a group; empty where it is settled, or where no fact tells.</summary>
    /// <param name="groups">As for <see cref="Covers"/>.</param>
    public static IEnumerable<string> Open(ProductKind kind, IEnumerable<string> groups) => groups
        .Where(g => Covers(kind, [g]) == Applies.Perhaps)
        .SelectMany(g => g.Split('+'))
        .Where(n => One(kind, n) == Applies.Perhaps && ProductFact.All.ContainsKey(n))
        .Distinct();

    /// <summary>A group as a sentence names it: <c>hair+rinse-off</c> to <c>rinse-off hair products</c>.</summary>
    public static string Phrase(string group) => group switch
    {
        "all" => "any product",
        "mucous" => "products applied on mucous membranes",
        "inhaled" => "products that may reach the lungs when breathed in",
        "lotion" => "body lotion and body cream",
        "lips" => "lip products",
        "external" => "products for the outside of the body",
        "makeup" => "make-up",
        "perfume" => "fragrance products",
        "sun" => "products for sun protection, tanning or exposure to UV light",
        "under-three" => "products for children under 3",
        "professional-use" => "products for professional use",
        "adults-only" => "products for adults only",
        _ when ProductKinds.Find(group) is { IsValue: true } kind => kind.Value.Name.ToLowerInvariant(),
        _ => string.Join(' ', group.Split('+').Reverse()) + " products",
    };

    private static Applies One(ProductKind kind, string name) => name switch
    {
        "all" => Applies.Yes,
        "rinse-off" => When(kind.Use == ProductUse.RinseOff),
        "leave-on" => When(kind.Use == ProductUse.LeaveOn),
        "lips" => When(kind.Area == AreaOfUse.Lips),
        "eye" => When(kind.Area == AreaOfUse.Eye),
        "external" => When(kind.Area == AreaOfUse.External),
        "makeup" => When(kind.IsMakeup),
        _ when name == kind.Id => Applies.Yes,
        _ => kind.Groups.Where(g => g.Name == name).Select(g => g.Sure ? Applies.Yes : Applies.Perhaps).DefaultIfEmpty(Applies.No).Max(),
    };

    private static Applies When(bool it) => it ? Applies.Yes : Applies.No;
}
