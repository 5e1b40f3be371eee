using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>Lays labels out on label stock and writes the sheets as one PDF. A label is drawn
/// once and placed as often as it is wanted.</summary>
public static class SheetWriter
{
    /// <summary>The most labels in one document; more is taken for a slip of the finger.</summary>
    public const int MostLabels = 100_000;

    /// <summary>Writes copies of one label.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="stock">The sheets.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <param name="first">The first position used on the first sheet, from 1: a part-used sheet starts later.</param>
    /// <param name="count">How many labels; null for what is left of one sheet.</param>
    /// <exception cref="InputException">The label is larger than the stock's, a number is out of
    /// range, or the file cannot be written.</exception>
    public static void WritePdf(string path, LabelLayout label, LabelStock stock, DocumentInfo info, int first = 1, int? count = null) =>
        WritePdf(path, new SheetOrder { Stock = stock, Runs = [new LabelRun(label, Plan(stock, first, count).Count)], First = first },
            info);

    /// <summary>Writes runs of labels.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="order">What stands on the sheets.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <param name="done">Told the number of sheets done, now and then; may be null.</param>
    /// <exception cref="InputException">A label is larger than the stock's, a number is out of
    /// range, or the file cannot be written.</exception>
    public static void WritePdf(string path, SheetOrder order, DocumentInfo info, Action<int>? done = null)
    {
        var plan = order.Plan();
        AtomicFile.Write(path, stream => WritePdf(stream, order, plan, info, done));
    }

    /// <summary>Which positions are filled.</summary>
    /// <exception cref="InputException">A number is out of range.</exception>
    public static SheetPlan Plan(LabelStock stock, int first, int? count)
    {
        if (first < 1 || first > stock.PerSheet)
            throw new InputException("sheet.no-position", ("first", first), ("stock", stock.Id), ("per-sheet", stock.PerSheet));
        if (count is < 1 or > MostLabels)
            throw new InputException("sheet.too-many-labels", ("count", count), ("most-labels", MostLabels));
        return new SheetPlan(first, count ?? stock.PerSheet - first + 1, stock.PerSheet);
    }

    private static void WritePdf(Stream stream, SheetOrder order, SheetPlan plan, DocumentInfo info, Action<int>? done)
    {
        var document = new FormDocument(stream, info);
        using var labels = order.Runs.SelectMany(r => Enumerable.Repeat(r.Label, r.Count)).GetEnumerator();
        // Exact arithmetic, done once for each place of a sheet and not for each label.
        var corners = new Dictionary<(int Position, Designs.LabelDesign Design), (double X, double Y)>(new PlaceComparer());
        foreach (var (page, sheet) in Pages(document, order, plan, done))
        {
            foreach (var (_, position) in plan.OnSheet(sheet))
            {
                labels.MoveNext();
                var place = (position, labels.Current.Design);
                if (!corners.TryGetValue(place, out var corner))
                    corners[place] = corner = LabelCorner(order.Stock, position, labels.Current.Design);
                Place(page, labels.Current, order.Stock, corner);
            }
        }
        document.Finish();
    }

    /// <summary>The pages of an order's sheets, one after the other, with what stands on each besides its labels.</summary>
    internal static IEnumerable<(FormPage Page, int Sheet)> Pages(FormDocument document, SheetOrder order, SheetPlan plan,
        Action<int>? done)
    {
        var (marks, note) = (order.CutMarks ? CutMarks.Of(order.Stock) : [], MarginNote.Of(order.Stock, order.Note));
        for (var sheet = 0; sheet < plan.Sheets; sheet++)
        {
            using (var page = document.AddPage(order.Stock.PageWidth, order.Stock.PageHeight))
            {
                page.Register(order.Registration);
                foreach (var mark in marks)
                    page.Draw(mark);
                if (note is not null)
                    page.Place(note, 0, 0);
                yield return (page, sheet);
            }
            done?.Invoke(sheet + 1);
        }
    }

    /// <summary>Places a label on stock at its corner there, turned where the stock wants it.</summary>
    internal static void Place(FormPage page, LabelLayout label, LabelStock stock, (double X, double Y) corner)
    {
        if (!StockFit.Turns(label.Design, stock))
        {
            page.Place(label, corner.X, corner.Y);
            return;
        }
        page.Turn(corner.X, corner.Y, Points.Of(label.Design.Width));
        page.Place(label, 0, 0);
        page.TurnBack();
    }

    /// <summary>
    /// The top left corner of what a label at a position takes, in points; a design smaller than the stock's label stands in the middle
    /// of it, and one that is turned takes its height across.
    /// </summary>
    internal static (double X, double Y) LabelCorner(LabelStock stock, int position, Designs.LabelDesign design)
    {
        var (x, y) = stock.CornerOf(position);
        var (across, down) = StockFit.Turns(design, stock) ? (design.Height, design.Width) : (design.Width, design.Height);
        return (Points.Of(x) + (Points.Of(stock.LabelWidth) - Points.Of(across)) / 2,
            Points.Of(y) + (Points.Of(stock.LabelHeight) - Points.Of(down)) / 2);
    }

    // By the design itself: comparing what two designs say would take longer than the arithmetic.
    private sealed class PlaceComparer : IEqualityComparer<(int Position, Designs.LabelDesign Design)>
    {
        public bool Equals((int Position, Designs.LabelDesign Design) a, (int Position, Designs.LabelDesign Design) b) =>
            a.Position == b.Position && ReferenceEquals(a.Design, b.Design);

        public int GetHashCode((int Position, Designs.LabelDesign Design) place) => place.Position;
    }
}
