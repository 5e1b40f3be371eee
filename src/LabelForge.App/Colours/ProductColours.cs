using LabelForge.Checks;
using LabelForge.Print;
using LabelForge.Print.Jobs;
using LabelForge.Print.Looks;
using LabelForge.Print.Palettes;

namespace LabelForge.Colours;

/// <summary>A colourant as its colour is known.</summary>
/// <param name="Material">The material.</param>
/// <param name="Pigment">Its colour and the share that gives it; null where neither its file nor its name says one.</param>
/// <param name="IsByName">Whether only its name says the colour.</param>
public sealed record KnownColourant(Material Material, Pigment? Pigment, bool IsByName);

/// <summary>A colourant and how much of it.</summary>
/// <param name="Material">The material.</param>
/// <param name="Mass">How much goes into the batch.</param>
/// <param name="Spoons">The same in teaspoons or drops, where its density is known; empty otherwise.</param>
public sealed record ColourantAmount(Material Material, Mass Mass, string Spoons);

/// <summary>How much of which colourants comes nearest to a shade.</summary>
/// <param name="Wanted">The shade.</param>
/// <param name="Gives">The colour that the amounts give, as far as can be guessed.</param>
/// <param name="Off">How far apart the two are, in Oklab.</param>
/// <param name="Amounts">The colourants; none where the base by itself is nearest.</param>
/// <param name="NotAllowed">Colourants that a rule keeps out of this product, and the rule's sentence.</param>
/// <param name="Unknown">Colourants whose colour nothing says.</param>
public sealed record ShadeAnswer(Colour Wanted, Colour Gives, double Off, ImmutableArray<ColourantAmount> Amounts,
    ImmutableArray<(Material Material, string Why)> NotAllowed, ImmutableArray<Material> Unknown)
{
    // About two steps that most people just see; our own line.
    private const double Near = 0.05;

    /// <summary>Whether a buyer would call the two the same.</summary>
    public bool IsNear => Off <= Near;
}

/// <summary>The colour of a product by its colourants, and the colourants for a wanted shade. A guess: <see cref="PigmentMix"/>.</summary>
public static class ProductColours
{
    // A level teaspoon of mica, about 2.5 g, to a pound: common practice, and where a swatch says nothing else.
    private const double UsualShare = 0.005;

    // More than this rubs off on skin and cloth. Common practice.
    private const double MostOfAll = 0.03;
    private const double MostTimesSwatch = 4;

    /// <summary>What is known of a colourant's colour.</summary>
    /// <exception cref="InputException">Its swatch is no colour; the message names the line.</exception>
    public static KnownColourant Known(Material material)
    {
        var at = material.SwatchAt is { } share ? (double)share.Fraction : UsualShare;
        if (Swatch(material) is { } seen)
            return new(material, new Pigment(seen, at), false);
        return ScentWords.ColourIn(material.Name) is { } word
            ? new(material, new Pigment(new Oklch(0.55, 0.11 * word.Strength, word.Hue).ToColour(), at), true)
            : new(material, null, false);
    }

    /// <summary>The colour of a product with the colourants of its recipe; null where it has none whose colour is known.</summary>
    public static Colour? Of(Product product)
    {
        var whole = (double)product.Batch.Total.Grams;
        var parts = product.Batch.Lines.Where(l => l.Material.Kind == MaterialKind.Colourant)
            .Select(l => (Known(l.Material).Pigment, Share: (double)l.Mass.Grams / whole)).Where(p => p.Pigment is not null)
            .Select(p => (p.Pigment!, p.Share)).ToList();
        return parts.Count == 0 ? null : PigmentMix.Of(Ground(product), parts);
    }

    /// <summary>The colour of the base alone: of materials that have a swatch and are no
    /// colourants, by their shares; else a plain base's.</summary>
    public static Colour Ground(Product product) =>
        PigmentMix.OfBases([.. product.Batch.Lines.Where(l => l.Material.Kind != MaterialKind.Colourant)
            .Select(l => (Swatch(l.Material), (double)l.Mass.Grams)).Where(l => l.Item1 is not null)
            .Select(l => (l.Item1!.Value, l.Item2))]);

    /// <summary>How much of which of the workshop's colourants comes nearest to a shade, of those
    /// alone that no rule keeps out of the product.</summary>
    /// <param name="product">The product; its own colourants are taken out first.</param>
    /// <param name="wanted">The shade.</param>
    /// <param name="market">The market whose rules bind.</param>
    /// <exception cref="InputException">No colourant with a known colour may go in.</exception>
    public static ShadeAnswer Nearest(Product product, Colour wanted, Market market, DateOnly on)
    {
        var workshop = product.Workshop;
        var bare = product.Recipe with
        {
            Materials = [.. product.Recipe.Materials
                .Where(m => workshop.Materials.GetValueOrDefault(m.Material)?.Kind != MaterialKind.Colourant)],
        };
        var plain = Product.Planned(workshop, bare);
        var grams = (double)plain.Batch.Total.Grams;
        var before = Musts(plain, market, on).ToHashSet();
        var all = workshop.Materials.Values.Where(m => m.Kind == MaterialKind.Colourant && m.MadeFrom.IsEmpty)
            .OrderBy(m => m.Id, StringComparer.Ordinal).Select(Known).ToArray();
        var notAllowed = ImmutableArray.CreateBuilder<(Material, string)>();
        var open = new List<(KnownColourant Known, double Most)>();
        foreach (var known in all.Where(k => k.Pigment is not null))
        {
            var most = Math.Min(MostOfAll, known.Pigment!.At * MostTimesSwatch);
            if (WhyNot(known.Material, most) is not { } why)
                open.Add((known, most));
            else if (WhyNot(known.Material, known.Pigment.At / 4) is null)
                open.Add((known, Bisect(known, most)));
            else
                notAllowed.Add((known.Material, why));
        }
        if (open.Count == 0)
            throw new InputException(product.Recipe.File, 0, "look.no-swatch", ("name", product.Recipe.Name));
        var found = ShadeMatch.Nearest(wanted, Ground(plain), [.. open.Select(o => (o.Known.Pigment!, o.Most))]);
        var amounts = open.Zip(found.Shares).Where(p => p.Second > 0)
            .Select(p => Measured(p.First.Known.Material, p.Second / (1 - found.Shares.Sum()) * grams)).Where(a => a.Mass.Grams > 0)
            .ToImmutableArray();
        // What a scale shows is not what was reckoned: the colour is that of the amounts as told.
        var whole = grams + amounts.Sum(a => (double)a.Mass.Grams);
        var gives = PigmentMix.Of(Ground(plain), amounts.Select(a => (Known(a.Material).Pigment!, (double)a.Mass.Grams / whole)));
        return new ShadeAnswer(wanted, gives, Oklch.Distance(gives, wanted), amounts, notAllowed.ToImmutable(),
            [.. all.Where(k => k.Pigment is null).Select(k => k.Material)]);

        string? WhyNot(Material material, double share) => Musts(Product.Planned(workshop, bare with
        {
            Materials = bare.Materials
                .Add(new MaterialUse(material.Id, new Amount(Math.Round((decimal)(share * grams / (1 - share)), 4), AmountUnit.Gram, null),
                    0)),
        }), market, on).FirstOrDefault(m => !before.Contains(m)) is { Length: > 0 } why ? why : null;

        // A limit lies between: the highest share found to keep it.
        double Bisect(KnownColourant known, double most)
        {
            var (low, high) = (known.Pigment!.At / 4, most);
            for (var i = 0; i < 8; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = WhyNot(known.Material, middle) is null ? (middle, high) : (low, middle);
            }
            return low;
        }
    }

    // What is asked of colours and of substances; a label's other slips are told elsewhere, and none is laid out for each colourant.
    private static IEnumerable<string> Musts(Product product, Market market, DateOnly on) =>
        RecipeCheck.Run(LabelJob.Unlaid(product, market, on)).Findings
            .Where(f => f.Severity == Severity.Must
                && (f.Rule.StartsWith("colour.", StringComparison.Ordinal) || f.Rule.StartsWith("substance.", StringComparison.Ordinal)))
            .Select(f => $"{f.Message} [{f.Source}]");

    private static Colour? Swatch(Material material) =>
        material.Swatch is { } swatch
            ? Colour.Parse(swatch.Text) ?? throw swatch.Refuse("look.not-a-colour", ("text", swatch.Text))
            : null;

    private static ColourantAmount Measured(Material material, double grams)
    {
        // A kitchen scale shows tenths of a gram from ten grams on; a small one hundredths.
        var mass = Mass.FromGrams(Math.Round((decimal)grams, grams >= 10 ? 1 : 2));
        return new(material, mass,
            material.GramsPerMillilitre is { } density && mass.Grams > 0
                ? Spoon.Of(mass.Grams / density, material.DropsAreWritten ? material.DropsPerMillilitre : null)
                : "");
    }
}
