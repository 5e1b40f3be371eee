using LabelForge.Print.Arrangements;
using LabelForge.Print.Designs;
using LabelForge.Print.Ornaments;
using LabelForge.Print.Palettes;
using LabelForge.Recipes.Files;

namespace LabelForge.Print.Looks;

/// <summary>A product as a look is proposed for it.</summary>
/// <param name="Key">What tells it from others of the range: recipe and name.</param>
/// <param name="Name">Its name.</param>
/// <param name="Wish">What is written of its look, the workshop's included.</param>
/// <param name="Materials">What goes into it.</param>
public sealed record RangeProduct(string Key, string Name, LookWish Wish, ImmutableArray<Material> Materials);

/// <summary>
/// The looks of a range: what is written is taken, what is not is proposed from the names, the scents and the colourants, and kept as
/// unlike from product to product as can be: no ornament twice while there are others that suit, and hues a good way apart.
/// </summary>
public static class RangeLooks
{
    /// <summary>The arrangement where none is written.</summary>
    public const string UsualArrangement = "colour-block";

    /// <summary>The pair of types where none is written.</summary>
    public const string UsualTypes = "bookish";

    // Hues nearer than this are taken for the same by a passer-by.
    private const double NearHues = 22;

    /// <summary>The looks of all, in the order given; the first ones get their first choice.</summary>
    /// <exception cref="InputException">A look names what is not known; the message names the line.</exception>
    public static ImmutableArray<Look> Of(IReadOnlyList<RangeProduct> range)
    {
        var looks = new Look?[range.Count];
        var (hues, ornaments) = (new List<double>(), new List<OrnamentFamily>());
        // One scent looks alike as a bar and as a bath salt: the colour and the ornament are what a buyer knows it by.
        var scents = new Dictionary<string, Look>(StringComparer.Ordinal);
        // What is written stands first, so that what is proposed keeps away from it.
        foreach (var written in new[] { true, false })
        {
            for (var i = 0; i < range.Count; i++)
            {
                if (IsWritten(range[i].Wish) != written)
                    continue;
                var scent = ScentKey(range[i]);
                var look = One(range[i], hues, ornaments, scent is null ? null : scents.GetValueOrDefault(scent));
                looks[i] = look;
                if (scent is not null)
                    scents.TryAdd(scent, look);
                hues.Add(look.Palette.Hue);
                if (look.Ornament is { } ornament)
                    ornaments.Add(ornament.Family);
            }
        }
        return [.. looks.Select(l => l!)];
    }

    private static string? ScentKey(RangeProduct product) =>
        product.Materials.Where(m => m.Kind == MaterialKind.Fragrance).Select(m => m.Id).Order(StringComparer.Ordinal)
            .ToList() is { Count: > 0 } ids ? string.Join('+', ids) : null;

    private static bool IsWritten(LookWish wish) => wish.Ornament is not null && wish.Hue is not null && wish.Hue.Text != "proposed";

    private static Look One(RangeProduct product, List<double> hues, List<OrnamentFamily> ornaments, Look? sameScent)
    {
        var wish = product.Wish;
        var (word, scent) = Scent(product);
        return new Look
        {
            NameSize = LookText.Number(wish.NameSize, "name size", 0.5, 1) ?? 1,
            OrnamentSize = LookText.Number(wish.OrnamentSize, "ornament size", 0.5, 2) ?? 1,
            OrnamentAbove = LookText.Known(wish.OrnamentPlace, "place of the ornament", ["above", "below"]) is { } place
                ? place == "above"
                : null,
            WhiteInk = LookText.Yes(wish.WhiteInk, "white ink") == true,
            Moved = LookText.Moved(wish.Moved),
            Arrangement = LookText.Known(wish.Arrangement, "arrangement", ArrangementFile.Known) ?? UsualArrangement,
            Types = LookText.Known(wish.Types, "pair of types", DesignStyle.Known) ?? UsualTypes,
            Frame = LookText.Known(wish.Frame, "frame", [.. FrameFamily.All.Select(f => f.Id), "none"]) is { } frame
                ? FrameFamily.Named(frame)
                : null,
            Ornament = wish.Ornament is null && sameScent?.Ornament is { } same ? same : Ornament(product, word, scent, ornaments),
            Palette = wish.Hue is null && wish.Strength is null && sameScent is not null
                ? Palette.Of(sameScent.Palette.Hue, sameScent.Palette.Strength, paper: LookText.Colour(wish.Stock),
                    whiteInk: LookText.Yes(wish.WhiteInk, "white ink") == true)
                : Proposed(product, word, scent, hues),
        };
    }

    private static (ScentWord? Word, ScentFamily Scent) Scent(RangeProduct product)
    {
        var fragrances = product.Materials.Where(m => m.Kind == MaterialKind.Fragrance).ToList();
        var word = new[] { product.Name, product.Wish.Line?.Text ?? "" }.Concat(fragrances.Select(f => f.Name)).Select(ScentWords.In)
            .OfType<ScentWord>().FirstOrDefault();
        var written = product.Wish.Scent ?? fragrances.Select(f => f.Scent).OfType<TextNode>().FirstOrDefault();
        if (written is not null)
            return (word,
                Enum.Parse<ScentFamily>(LookText.Known(written, "kind of scent",
                    [.. Enum.GetNames<ScentFamily>().Select(n => n.ToLowerInvariant())])!, ignoreCase: true));
        return (word,
            word?.Scent
                ?? (fragrances.Count == 0
                    ? ScentFamily.Plain
                    : (ScentFamily)new SeededNumbers(product.Key).Below((int)ScentFamily.Plain)));
    }

    private static OrnamentChoice? Ornament(RangeProduct product, ScentWord? word, ScentFamily scent, List<OrnamentFamily> taken)
    {
        var wish = product.Wish;
        var named = LookText.Known(wish.Ornament, "ornament", [.. OrnamentFamily.All.Select(f => f.Id), "none", "proposed"]);
        if (named == "none")
            return null;
        var family = named is null or "proposed" ? Proposed(product, word, scent, taken) : OrnamentFamily.Named(named)!;
        return new OrnamentChoice(family, wish.Seed?.Text ?? product.Name, LookText.Number(wish.Density, "density", 0.4, 2.5) ?? 1,
            LookText.Number(wish.Weight, "weight", 0.4, 2.5) ?? 1);
    }

    private static OrnamentFamily Proposed(RangeProduct product, ScentWord? word, ScentFamily scent, List<OrnamentFamily> taken)
    {
        var turn = new SeededNumbers(product.Key).Below(OrnamentFamily.All.Length);
        var suited = OrnamentFamily.All.Where(f => f.Suits.Contains(scent)).OrderBy(f => f.Suits.IndexOf(scent)).ToList();
        IEnumerable<OrnamentFamily> wanted = word?.Ornament is { } first
            ? [first, .. suited]
            : [.. suited.Skip(turn % suited.Count), .. suited.Take(turn % suited.Count)];
        return wanted.FirstOrDefault(f => !taken.Contains(f))
            ?? OrnamentFamily.All.Skip(turn).Concat(OrnamentFamily.All.Take(turn)).FirstOrDefault(f => !taken.Contains(f))
            ?? OrnamentFamily.All.MinBy(f => taken.Count(t => t == f))!;
    }

    private static Palette Proposed(RangeProduct product, ScentWord? word, ScentFamily scent, List<double> taken)
    {
        var (hue, strength) = Hue(product, word, scent, taken);
        return Palette.Of(hue, strength, paper: LookText.Colour(product.Wish.Stock),
            whiteInk: LookText.Yes(product.Wish.WhiteInk, "white ink") == true);
    }

    private static (double Hue, double Strength) Hue(RangeProduct product, ScentWord? word, ScentFamily scent, List<double> taken)
    {
        var wish = product.Wish;
        var strength = LookText.Number(wish.Strength, "strength", 0, 1.3);
        if (wish.Hue is { } written && written.Text != "proposed")
            return (LookText.Number(written, "hue", 0, 360)!.Value, strength ?? 1);
        var (hue, own) = Known(product)
            ?? (word is null ? (ScentWords.Of(scent).Hue, ScentWords.Of(scent).Strength) : (word.Hue, word.Strength));
        return (Apart(hue, taken), strength ?? own);
    }

    // A colourant's swatch, or the colour in its name, unless the product's own name says more.
    private static (double Hue, double Strength)? Known(RangeProduct product)
    {
        var colourants = product.Materials.Where(m => m.Kind == MaterialKind.Colourant).ToList();
        if (colourants.Select(c => LookText.Colour(c.Swatch)).FirstOrDefault(c => c is not null) is { } swatch)
            return Oklch.Of(swatch) is var at && at.Chroma < 0.02 ? (at.Hue, 0.25) : (at.Hue, Math.Clamp(at.Chroma / 0.09, 0.35, 1));
        if (ScentWords.In(product.Name) is not null)
            return null;
        return colourants.Select(c => ScentWords.ColourIn(c.Name)).OfType<ScentWord>().Select(c => ((double, double)?)(c.Hue, c.Strength))
            .FirstOrDefault();
    }

    // The nearest hue that is far enough from those taken; in a large range, the one farthest from all.
    private static double Apart(double hue, List<double> taken)
    {
        double Distance(double h) => taken.Count == 0 ? 180 : taken.Min(t => Math.Abs((h - t + 540) % 360 - 180));
        var steps = Enumerable.Range(0, 60).SelectMany(i => new[] { hue + 3 * i, hue - 3 * i });
        var found = steps.Select(h => (double?)((h + 360) % 360)).FirstOrDefault(h => Distance(h!.Value) >= NearHues);
        return found ?? Enumerable.Range(0, 120).Select(i => i * 3.0).MaxBy(Distance);
    }
}
