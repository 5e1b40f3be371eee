using LabelForge.Quantities;
using LabelForge.Records.Spreadsheets;

namespace LabelForge.Records.Weighing;

/// <summary>How far one package may fall short of what it declares: a market's table by the declared mass.</summary>
/// <param name="Grams">The allowed shortfall in grams.</param>
/// <param name="Source">The table it stands in.</param>
/// <param name="Known">How the entry was come by: "from memory", or what it was compared with.</param>
public sealed record AllowedShortfall(decimal Grams, string Source, string Known)
{
    /// <summary>
    /// The shortfall allowed at a declared mass: the maximum allowable variation in the US (NIST Handbook 133, Table 2-5), the
    /// tolerable negative error in the EU and Great Britain (Directive 76/211/EEC, Annex I, 2.4; kept by SI 2006/659).
    /// </summary>
    /// <param name="market">us, eu or uk.</param>
    /// <param name="declared">The declared mass.</param>
    /// <param name="system">The system it is declared in: the US table has columns for both.</param>
    /// <exception cref="InputException">The market has no table here, or the mass lies outside it.</exception>
    public static AllowedShortfall At(Market market, Mass declared, MeasureSystem system)
    {
        var rows = Table(market);
        var pounds = system == MeasureSystem.Customary && rows[0]["up to lb"].Length > 0;
        var measure = pounds ? declared.Grams / Mass.GramsPerPound : declared.Grams;
        var row = rows.FirstOrDefault(r => measure <= Figure(r[pounds ? "up to lb" : "up to g"]))
            ?? throw new InputException("weighing.above-table", ("declared", declared));
        var allowed = row["percent"].Length > 0 ? declared.Grams * Figure(row["percent"]) / 100m
            : pounds ? Figure(row["lb"]) * Mass.GramsPerPound
            : Figure(row["g"]);
        if (row["rounded"] == "up" && row["percent"].Length > 0)
            allowed = RoundedUp(allowed, declared.Grams);
        return new AllowedShortfall(allowed, row["source"], row["known"]);
    }

    // Annex I, 2.5: a percentage in grams is rounded up to the nearest tenth of a gram (from memory).
    private static decimal RoundedUp(decimal grams, decimal declared) =>
        declared > 1000m ? Math.Ceiling(grams) : Math.Ceiling(grams * 10m) / 10m;

    private static IReadOnlyList<DataLine> Table(Market market) => DataLine.Embedded(NetContentTest.WayOf(market).Shortfalls + ".csv");

    private static decimal Figure(string text) => decimal.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
}
