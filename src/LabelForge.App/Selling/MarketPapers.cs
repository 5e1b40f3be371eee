using LabelForge.Papers;
using LabelForge.Print.Documents;
using LabelForge.Print.Output;

namespace LabelForge.Selling;

/// <summary>The papers of a market day, for the command and the page alike.</summary>
public static class MarketPapers
{
    /// <summary>A sum of money as it stands on papers and pages.</summary>
    public static string Money(Workshop workshop, decimal sum) =>
        Invariant($"{sum:0.00} {workshop.Business.Currency}");

    /// <summary>Writes the summary of a day as a PDF.</summary>
    public static void WriteSummary(Stream stream, Workshop workshop, MarketDay day, PaperWords words) => TablePapers.WritePdf(stream,
        new DayPaper($"{day.Place}, {day.On.ToIso()}", workshop.Business.Name,
            [words["product"], words["sold"], words["given"], words["brought-back"], words["money"], words["left"]],
            [.. day.Rows.Select(m => Row(workshop, m.Name, m.Sold, m.Given, m.Returned, m.Paid, m.Left)),
                Row(workshop, words["day-in-all"], day.Rows.Sum(m => m.Sold), day.Rows.Sum(m => m.Given), day.Rows.Sum(m => m.Returned),
                    day.Paid, day.Rows.Sum(m => m.Left))],
            [.. day.Box(words).Select(b => (b.What, Money(workshop, b.Sum)))]), Info($"{day.Place}, {day.On.ToIso()}", day.On));

    /// <summary>Writes the tally sheet to take along as a PDF.</summary>
    /// <param name="stream">Where.</param>
    /// <param name="place">Which market day.</param>
    /// <param name="rows">What is brought, in the order of the paper.</param>
    /// <param name="words">The language of the sheet.</param>
    public static void WriteTally(Stream stream, Workshop workshop, string place, DateOnly on,
        IEnumerable<(ProductOnTable Product, int Brought)> rows, PaperWords words) => TablePapers.WritePdf(stream,
        new TallyPaper($"{place}, {on.ToIso()}", workshop.Business.Name,
            [
                .. rows.Select(p => new TallyPaperRow(p.Product.Recipe.Name, p.Product.Price is { } price ? Money(workshop, price) : "",
                    p.Brought))])
        { Words = words }, Info(words["tally-title", place], on));

    private static ImmutableArray<string> Row(Workshop workshop, string name, int sold, int given, int returned, decimal paid, int left) =>
        [name, Text(sold), Text(given), Text(returned), Money(workshop, paid), Text(left)];

    private static DocumentInfo Info(string title, DateOnly on) =>
        new(title, on);

    private static string Text(int count) => count.ToString(CultureInfo.InvariantCulture);
}
