using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;

namespace LabelForge.Print.Sheets;

/// <summary>A line in the margin of a sheet of labels, and on no label: what the person who takes
/// the sheet in hand has to know of it.</summary>
public static class MarginNote
{
    // Common practice: 6 point letters, 1 mm clear of what is cut, and no nearer to the sheet's edge than most printers print.
    private const double Size = 6;
    private const double Clear = 72 / 25.4;
    private const double EdgeOfPaper = 4 * 72 / 25.4;

    /// <summary>What a sheet says that is printed although rules are broken.</summary>
    public static string Despite(IEnumerable<string> rules) => $"Printed although broken: {string.Join(", ", rules)}";

    /// <summary>Says where there is a note and the stock has no margin for it.</summary>
    public static IEnumerable<string> Warnings(SheetOrder order)
    {
        if (order.Note is not null && Baseline(order.Stock) is null)
            yield return $"{order.Stock.Id} leaves no margin to say \"{order.Note}\" in.";
    }

    /// <summary>The note where it stands on a page; null where there is none, or no room for it.</summary>
    internal static Picture? Of(LabelStock stock, string? note)
    {
        if (note is null || Baseline(stock) is not { } y)
            return null;
        var text = MeasuredText.OfWords(BundledFaces.Regular, Size, note.Split(' '), 0, false);
        return new Picture(stock.PageWidth, stock.PageHeight)
        {
            Lines = [new PictureLine(text, Math.Max(EdgeOfPaper, Points.Of(stock.Left)), y)],
        };
    }

    // Below the last row or above the first, whichever leaves more.
    private static double? Baseline(LabelStock stock)
    {
        var top = Points.Of(stock.Top);
        var end = top + ((stock.Rows - 1) * Points.Of(stock.PitchY)) + Points.Of(stock.LabelHeight);
        var bottom = Points.Of(stock.PageHeight) - end;
        var least = EdgeOfPaper + Size + Clear;
        return Math.Max(top, bottom) < least ? null : bottom >= top ? end + Clear + Size : top - Clear - (Size * 0.3);
    }
}
