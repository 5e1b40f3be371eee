using LabelForge.Print.Designs;
using LabelForge.Print.Looks;
using LabelForge.Web.Editing;

namespace LabelForge.Web.Workbench;

/// <summary>A look that is being tried: how a label looks apart from its words and its size.</summary>
/// <param name="Arrangement">Where things stand on the front.</param>
/// <param name="Frame">The frame's id, or none.</param>
/// <param name="Ornament">The ornament's family, or none.</param>
/// <param name="Seed">The ornament's seed.</param>
/// <param name="Hue">The palette's hue in degrees.</param>
/// <param name="Strength">How colourful.</param>
/// <param name="Types">The pair of types.</param>
public sealed partial record LookTry(string Arrangement, string Frame, string Ornament, string Seed, double Hue, double Strength,
    string Types)
{
    /// <summary>How large the name is, as a part of what there is room for: 0.5 to 1.</summary>
    public double NameSize { get; init; } = 1;

    /// <summary>How high the ornament is, in times of what the arrangement wants: 0.5 to 2.</summary>
    public double OrnamentSize { get; init; } = 1;

    /// <summary>above or below; empty as the arrangement has it.</summary>
    public string OrnamentPlace { get; init; } = "";

    /// <summary>What of the front is moved and how far, as it is written: <c>name: [1.5 mm, -2 mm]</c>; empty for nothing.</summary>
    public string Moved { get; init; } = "";

    /// <summary>How far words are moved, in millimetres to the right and down.</summary>
    public (decimal X, decimal Y) MovedBy(Role role) => Places.Find(p => p.Role == role) is { } at ? (at.X, at.Y) : default;

    /// <summary>The same with words moved to a place, in millimetres from where the arrangement has them.</summary>
    public LookTry WithMoved(Role role, decimal x, decimal y) =>
        this with { Moved = Written(Places.Where(p => p.Role != role).Append((role, Math.Round(x, 2), Math.Round(y, 2)))) };

    private List<(Role Role, decimal X, decimal Y)> Places =>
        [.. Placed().Matches(Moved).Select(m => ((Role)Roles.Names.ToList().IndexOf(m.Groups[1].Value),
            decimal.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture),
            decimal.Parse(m.Groups[3].Value, CultureInfo.InvariantCulture)))];

    private static string Written(IEnumerable<(Role Role, decimal X, decimal Y)> moved) =>
        string.Join(", ", moved.Where(m => m.X != 0 || m.Y != 0).OrderBy(m => m.Role)
            .Select(m => FormattableString.Invariant($"{Roles.NameOf(m.Role)}: [{m.X:0.##} mm, {m.Y:0.##} mm]")));

    [GeneratedRegex("([a-z-]+): \\[(-?[0-9.]+) mm, (-?[0-9.]+) mm\\]")]
    private static partial Regex Placed();

    /// <summary>The same with the name larger or smaller, within its bounds.</summary>
    public LookTry WithName(double size) => this with { NameSize = Math.Round(Math.Clamp(size, 0.5, 1), 2) };

    /// <summary>The same with the ornament higher or lower, within its bounds.</summary>
    public LookTry WithOrnament(double size) => this with { OrnamentSize = Math.Round(Math.Clamp(size, 0.5, 2), 2) };

    private static readonly string[] Ranged = ["arrangement", "frame", "types"];

    /// <summary>The look that a label has.</summary>
    public static LookTry Of(Look look) =>
        new(look.Arrangement, look.Frame?.Id ?? "none", look.Ornament?.Family.Id ?? "none", look.Ornament?.Seed ?? "",
            Math.Round(look.Palette.Hue), look.Palette.Strength, look.Types)
        {
            NameSize = look.NameSize,
            OrnamentSize = look.OrnamentSize,
            Moved = Written(look.Moved.Select(m => (m.Key, Millimetres(m.Value.X), Millimetres(m.Value.Y)))),
            OrnamentPlace = look.OrnamentAbove switch { true => "above", false => "below", _ => "" },
        };

    /// <summary>Points as millimetres, to a hundredth.</summary>
    public static decimal Millimetres(double points) => Math.Round((decimal)(points * 25.4 / 72), 2);

    /// <summary>A look by chance, which its seed gives again.</summary>
    public static LookTry Surprise(string seed)
    {
        var look = SurpriseLook.Of(seed);
        return new(look.Arrangement, look.Frame, look.Ornament, seed, look.Hue, look.Strength, look.Types);
    }

    /// <summary>A recipe's text with this look for one product. What is as it was before is not
    /// written: it stays proposed, or as the range has it.</summary>
    /// <param name="text">The recipe's text.</param>
    /// <param name="variant">Which of its scents, from 0; null for a recipe without any.</param>
    /// <param name="before">The look that the product has.</param>
    public string Into(string text, int? variant, LookTry before)
    {
        Step[] at = variant is { } i ? ["variants", i, "look"] : ["look"];
        if (Arrangement != before.Arrangement)
            text = Put(text, at, "arrangement", Arrangement);
        if (Frame != before.Frame)
            text = Put(text, at, "frame", Frame);
        if (Types != before.Types)
            text = Put(text, at, "types", Types);
        if (Ornament != before.Ornament || Seed != before.Seed)
            text = Ornament == "none" ? Put(text, at, "ornament", "none") : Put(text, at, "ornament", OrnamentOf(text, at));
        foreach (var (key, now, was) in new[] { ("name size", NameSize, before.NameSize),
            ("ornament size", OrnamentSize, before.OrnamentSize) })
        {
            if (now != was)
                text = Put(text, at, key, now.ToString("0.##", CultureInfo.InvariantCulture));
        }
        if (OrnamentPlace != before.OrnamentPlace)
            text = OrnamentPlace.Length == 0
                ? YamlEdit.Remove(text, [.. at, "ornament place"])
                : Put(text, at, "ornament place", OrnamentPlace);
        if (Moved != before.Moved)
            text = Moved.Length == 0 ? YamlEdit.Remove(text, [.. at, "moved"]) : Put(text, at, "moved", $"{{ {Moved} }}");
        if (Hue != before.Hue || Strength != before.Strength)
            text = Put(text, at, "palette",
                string.Create(CultureInfo.InvariantCulture, $"{{ hue: {Hue:0.#}, strength: {Strength:0.##} }}"));
        return text;
    }

    /// <summary>What all products of a range share, into workshop.yaml.</summary>
    public string IntoWorkshop(string text)
    {
        foreach (var (key, value) in new[] { ("arrangement", Arrangement), ("frame", Frame), ("types", Types) })
            text = Put(text, ["look"], key, value);
        return text;
    }

    /// <summary>A recipe's text without what its products would have of their own in the place of what the range shares.</summary>
    public static string OutOf(string recipe)
    {
        foreach (var key in Ranged)
        {
            recipe = YamlEdit.Remove(recipe, ["look", key]);
            for (var i = 0; i < YamlEdit.Count(recipe, "variants"); i++)
                recipe = YamlEdit.Remove(recipe, ["variants", i, "look", key]);
        }
        return recipe;
    }

    // How close and how heavy it was drawn stays.
    private string OrnamentOf(string text, Step[] at)
    {
        var rest = string.Concat(new[] { "density", "weight" }.Select(k => (Key: k, Value: YamlEdit.Get(text, [.. at, "ornament", k])))
            .Where(k => k.Value is { Length: > 0 }).Select(k => $", {k.Key}: {k.Value}"));
        return $"{{ family: {Ornament}, seed: \"{Seed.Replace("\\", "", StringComparison.Ordinal).Replace("\"", "", StringComparison.Ordinal)}\"{rest} }}";
    }

    private static string Put(string text, Step[] at, string key, string written)
    {
        // Only what has no value of its own is taken away whole; its comment goes with it.
        text = YamlEdit.Remove(text, [.. at, key]);
        return YamlEdit.InsertKey(text, [.. at, key], written, LookWish.KnownKeys);
    }
}
