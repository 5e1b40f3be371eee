namespace LabelForge.Print.Palettes;

/// <summary>A colourant as mixing knows it: the colour that it gave at a share of the product.</summary>
/// <param name="Seen">The colour seen.</param>
/// <param name="At">The share of the product at which it was seen; more than 0.</param>
public sealed record Pigment(Colour Seen, double At);

/// <summary>
/// The colour of a product from its base and its colourants, by the single-constant theory of Kubelka and Munk: absorption over
/// scattering is K/S = (1 - R)^2 / (2 R) of a layer too thick to see through (Kubelka and Munk, "Ein Beitrag zur Optik der
/// Farbanstriche", Zeitschrift fuer technische Physik 12, 1931, equation as given by Kubelka, J. Opt. Soc. Am. 38, 1948), and what
/// the parts of a mixture add to it is proportional to their amounts (Duncan, "The colour of pigment mixtures", Proc. Phys. Soc. 52,
/// 1940). It is reckoned in the three linear channels of sRGB and not by wavelength, from colours seen on a screen: a guess.
/// </summary>
public static class PigmentMix
{
    /// <summary>A plain base: the ivory of a white one. By eye.</summary>
    public static Colour PlainBase { get; } = new(0xf3, 0xee, 0xe2);

    // No real surface is blacker or whiter than this; beyond, K/S has no figure.
    private const double Darkest = 0.003;
    private const double Lightest = 0.985;

    /// <summary>The colour of a base with colourants in it.</summary>
    /// <param name="ground">The base's own colour.</param>
    /// <param name="parts">The colourants, and the share of each in the product.</param>
    public static Colour Of(Colour ground, IEnumerable<(Pigment Pigment, double Share)> parts)
    {
        var sum = Ratios(ground);
        foreach (var (pigment, share) in parts)
            sum = sum.Plus(Unit(pigment).Times(share));
        return sum.ToColour();
    }

    /// <summary>The colour of several bases in one another, by their shares.</summary>
    public static Colour OfBases(IReadOnlyCollection<(Colour Colour, double Share)> bases)
    {
        var whole = bases.Sum(b => b.Share);
        return whole <= 0
            ? PlainBase
            : bases.Aggregate(default(Channels), (sum, b) => sum.Plus(Ratios(b.Colour).Times(b.Share / whole))).ToColour();
    }

    /// <summary>What a colourant adds to K/S, for a share of 1: as it was seen, less what a plain base has.</summary>
    internal static Channels Unit(Pigment pigment) => Ratios(pigment.Seen).Plus(Ratios(PlainBase).Times(-1)).Times(1 / pigment.At);

    internal static Channels Ratios(Colour colour) =>
        new(Ratio(Colour.Linear(colour.Red)), Ratio(Colour.Linear(colour.Green)), Ratio(Colour.Linear(colour.Blue)));

    private static double Ratio(double reflectance)
    {
        var r = Math.Clamp(reflectance, Darkest, Lightest);
        return (1 - r) * (1 - r) / (2 * r);
    }

    /// <summary>K/S of the three channels.</summary>
    internal readonly record struct Channels(double Red, double Green, double Blue)
    {
        public Channels Plus(Channels other) => new(Red + other.Red, Green + other.Green, Blue + other.Blue);

        public Channels Times(double by) => new(Red * by, Green * by, Blue * by);

        public (double L, double A, double B) ToOklab() => Oklch.Lab(Reflected(Red), Reflected(Green), Reflected(Blue));

        public Colour ToColour() => Oklch.FromLinear(Reflected(Red), Reflected(Green), Reflected(Blue));

        // What lightens more than it colours would reflect more than all light.
        private static double Reflected(double ratio)
        {
            var f = Math.Max(0, ratio);
            return 1 + f - Math.Sqrt(f * f + 2 * f);
        }
    }
}

/// <summary>How much of which colourants comes nearest to a shade.</summary>
/// <param name="Shares">The share of the product of each colourant, in the order given; 0 for those that are not wanted.</param>
/// <param name="Gives">The colour that they give.</param>
/// <param name="Off">How far that is from the shade, in Oklab; below about 0.02 few people see it.</param>
public sealed record ShadeMatch(ImmutableArray<double> Shares, Colour Gives, double Off)
{
    // A colourant more has to be worth a difference that is seen.
    private const double WorthOne = 0.015;
    private const int MostTogether = 3;
    private const int MostTried = 16;

    /// <summary>Finds the nearest, with at most three colourants.</summary>
    /// <param name="wanted">The shade.</param>
    /// <param name="ground">The base's own colour.</param>
    /// <param name="pigments">The colourants there are, and the most of each that may go in, as shares of the product.</param>
    public static ShadeMatch Nearest(Colour wanted, Colour ground, IReadOnlyList<(Pigment Pigment, double Most)> pigments)
    {
        var search = new Search(wanted, ground, pigments);
        var best = search.Result(new double[pigments.Count]);
        // Alone, each shows how near its hue is; the nearest are tried together.
        var order = Enumerable.Range(0, pigments.Count).OrderBy(i => search.Fit([i]).Off).Take(MostTried).ToArray();
        foreach (var chosen in Subsets(order))
        {
            var found = search.Fit(chosen);
            if (found.Off + WorthOne * found.Used < best.Off + WorthOne * best.Used - 1e-9)
                best = found;
        }
        return best;
    }

    private int Used => Shares.Count(s => s > 0);

    private static IEnumerable<int[]> Subsets(int[] of)
    {
        for (var a = 0; a < of.Length; a++)
        {
            yield return [of[a]];
            for (var b = a + 1; b < of.Length; b++)
            {
                yield return [of[a], of[b]];
                for (var c = b + 1; c < of.Length && MostTogether > 2; c++)
                    yield return [of[a], of[b], of[c]];
            }
        }
    }

    // By trial of larger and smaller amounts, one colourant at a time, in steps that become finer: K/S grows evenly with each amount,
    // so that no step leads far astray.
    private sealed class Search(Colour wanted, Colour ground, IReadOnlyList<(Pigment Pigment, double Most)> pigments)
    {
        private const double CoarsestStep = 2;
        private const double FinestStep = 1.004;

        private readonly (double L, double A, double B) _wanted = PigmentMix.Ratios(wanted).ToOklab();
        private readonly PigmentMix.Channels _ground = PigmentMix.Ratios(ground);
        private readonly PigmentMix.Channels[] _units = [.. pigments.Select(p => PigmentMix.Unit(p.Pigment))];

        public ShadeMatch Fit(int[] chosen)
        {
            var shares = new double[pigments.Count];
            foreach (var i in chosen)
                shares[i] = Math.Min(pigments[i].Pigment.At / chosen.Length, pigments[i].Most);
            var off = Off(shares, chosen);
            for (var step = CoarsestStep; step > FinestStep; step = Math.Sqrt(step))
            {
                for (var better = true; better;)
                {
                    better = false;
                    foreach (var i in chosen)
                    {
                        foreach (var factor in new[] { step, 1 / step })
                        {
                            var before = shares[i];
                            shares[i] = Math.Min(before * factor, pigments[i].Most);
                            var tried = Off(shares, chosen);
                            if (tried < off - 1e-7)
                                (off, better) = (tried, true);
                            else
                                shares[i] = before;
                        }
                    }
                }
            }
            return Result(shares);
        }

        public ShadeMatch Result(double[] shares)
        {
            int[] used = [.. Enumerable.Range(0, shares.Length).Where(i => shares[i] > 0)];
            return new([.. shares], Sum(shares, used).ToColour(), Off(shares, used));
        }

        private PigmentMix.Channels Sum(double[] shares, int[] used)
        {
            var sum = _ground;
            foreach (var i in used)
                sum = sum.Plus(_units[i].Times(shares[i]));
            return sum;
        }

        private double Off(double[] shares, int[] used)
        {
            var (l, a, b) = Sum(shares, used).ToOklab();
            return Math.Sqrt((l - _wanted.L) * (l - _wanted.L) + (a - _wanted.A) * (a - _wanted.A) + (b - _wanted.B) * (b - _wanted.B));
        }
    }
}
