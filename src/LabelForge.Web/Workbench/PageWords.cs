using System.Collections.Frozen;
using System.Globalization;
using LabelForge.Measures;

namespace LabelForge.Web.Workbench;

/// <summary>The page's own words for what to do, where the command's name a command: by the problem's code.</summary>
internal static class PageWords
{
    private const string InTheBooks = "Correct the entry under The books.";

    // {0}, {1}, ... are the problem's arguments.
    private static readonly FrozenDictionary<string, string> Advice = new Dictionary<string, string>
    {
        ["batch.no-pieces"] = "Write another mass: 2 kg",
        ["attachment.days"] = "Write the days as they stand on it.",
        ["attachment.kind"] = "Choose what it is.",
        ["attachment.of-nothing"] = "Choose what the paper belongs to.",
        ["attachment.refused"] = "Give the paper alone, or a smaller picture of it.",
        ["batches.none"] = "Begin a batch first.",
        ["books.damaged"] = "Keep the file as it is, and put the last backup in its place.",
        ["buy.no-pack"] = "Write packs and prices at the material.",
        ["closing.no-yield"] = "Weigh all pieces together and write it, or leave it out.",
        ["closing.rejected-more"] = "Write all pieces that came out, and how many of them are not sold.",
        ["copy.refused"] = "Choose another name, scent or hue; or open the recipe and write it there.",
        ["correction.no-reason"] = "Write why.",
        ["design.takes-no-look"] = "Choose another design under Labels.",
        ["lot.closed"] = "If a weighing is missing, strike the closing first, under The books.",
        ["lot.closed-twice"] = "If the count was wrong, correct the closing under The books.",
        ["lot.negative"] = "Check the lot and the count under In the house.",
        ["lot.not-a-code"] = "Take the one that the page proposes.",
        ["lot.not-closed"] = "Finish it first, on the batch bench.",
        ["lot.not-weighed"] = "Write what was weighed, on the batch bench.",
        ["lot.of-another"] = "Choose the product that the lot is of, or the lot of this product.",
        ["lot.printed-for-another"] = "Give this one a lot of its own. If those labels were thrown away, strike their printing under The books.",
        ["lots.day-full"] = "Begin it on another day.",
        ["margin.too-large"] = "Write a smaller margin: 40 %",
        ["market.not-weighed"] = "Choose one of these markets: {0}.",
        ["material-lot.unknown"] = "See what is in the house.",
        ["material-lot.unreadable"] = "Write M and its number, as it stands under In the house: M3",
        ["material.not-in-lot"] = "It has {0}. What went in otherwise is a deviation: note it on the batch bench.",
        ["material.unnameable"] = "Write its name with letters or figures: Clear shea base",
        ["moulds.unreadable"] = "Write how many cavities and what each holds: 6 x 113 g, 12 x 3 oz",
        ["pieces.not-a-number"] = "Write a whole number above zero: 18",
        ["pieces.short"] = "Look under Today whether a batch is still to be closed, or count the shelf.",
        ["pot.not-taken"] = "See what it takes on the pot’s own page.",
        ["pot.unknown"] = "Choose a pot that was poured.",
        ["pour.nothing-shared"] = "Begin each by itself.",
        ["pour.unreadable"] = "Write how many pieces of each.",
        ["price.none"] = "Write what a piece is sold for at the product, or what was paid for all of it.",
        ["price.unknown"] = "Write packs and prices at the material, or what came in, under Stock and lots.",
        ["print.no-such-run"] = "See what was printed under The books, or print what waits.",
        ["print.nothing-waits"] = "Begin or close a batch first, or print a product’s labels under Print.",
        ["print.pages-gone"] = "Print the lots as they are now.",
        ["printer.unknown"] = "Calibrate it below, or choose another.",
        ["printer.unnameable"] = "Use letters, digits and hyphens: kitchen",
        ["printing.spoiled-more"] = "See what was printed under The books.",
        ["product.unknown"] = "Choose one of those on the table.",
        ["receipt.in-use"] = InTheBooks,
        ["receipt.nothing"] = "Write what came in and what all of it cost: 16 fl oz, 9.50",
        ["return.more-back"] = "Write how many came back, and how many of these can be sold again.",
        ["return.more-than-sold"] = "Check the lot and the count under In the house.",
        ["sale.nothing"] = "Write how many, and what was paid for all of them: 12.00",
        ["server.silent"] = "Start it, check the network and records: in workshop.yaml. If it broke off in the middle, look under The books whether the last entry stands before you write it again.",
        ["server.unknown"] = "If it is yours, or of someone you work with, agree to it once at the command line. If the workshop came from a stranger, do not: take the line records: out.",
        ["set.no-room"] = "Put fewer products into the set, or give each its own label in the box.",
        ["set.too-small"] = "Choose each product as often as it is in the set.",
        ["stock.negative"] = "Take it from another lot, or, if more came in than is written, correct that entry under The books.",
        ["stock.short"] = "Write what came in, under Stock and lots, or choose the lot if it is one past its date.",
        ["stock.unknown"] = "Choose one of the list, or add your own under stock/ in the workshop’s folder.",
        ["ticket.unknown"] = "See the last sales under The books.",
        ["workshop.none"] = "Start the page in the workshop’s folder.",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The codes that the page has words for.</summary>
    internal static IEnumerable<string> Codes => Advice.Keys;

    /// <summary>The problem in the page's words.</summary>
    public static Problem Of(Problem problem) => problem.Code is { } code && Advice.TryGetValue(code, out var words)
        ? problem with { Write = string.Format(CultureInfo.InvariantCulture, words, [.. problem.Arguments]) }
        : problem;
}
