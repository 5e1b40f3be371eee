using LabelForge.Print.Designs;
using LabelForge.Print.Drawing;
using LabelForge.Print.Lettering;
using LabelForge.Print.Output;

namespace LabelForge.Print.Proofs;

/// <summary>A proof for the maker's eye: the label at actual size and enlarged, its elements numbered, and each rule with what the label
/// measures and the margin to spare.</summary>
public static class ProofSheet
{
    private const double Thin = 0.35;
    private const double Body = 7.5;

    // Beside the enlarged label, for the numbers; and the most height it takes.
    private const double NumberRoom = 22;
    private const double MostHeight = 300;
    private const double MostScale = 3;

    /// <summary>Writes the proof as a PDF, on US Letter for the US and Canada and on A4 elsewhere.</summary>
    /// <param name="path">Where; written whole or not at all.</param>
    /// <param name="labels">The labels, each from a page of its own on.</param>
    /// <param name="market">The market whose rules it was measured against.</param>
    /// <param name="on">The date of the rules.</param>
    /// <param name="info">Title and time of the document.</param>
    /// <exception cref="InputException">The file cannot be written.</exception>
    public static void WritePdf(string path, IReadOnlyList<LabelLayout> labels, Market market, DateOnly on, DocumentInfo info)
    {
        var (width, height) = market.Ways.Paper == "letter"
            ? (Length.FromInches(8.5m), Length.FromInches(11m))
            : (Length.FromMillimetres(210m), Length.FromMillimetres(297m));
        var pages = labels.SelectMany(l => Pages(new ProofPages(width, height), l, market, on, info).Select(p => (Label: l, Page: p)))
            .ToArray();
        var drawn = labels.Distinct().ToDictionary(l => l, l => (
            Seen: l.OnStock(),
            Grey: GreyLabel.HasColour(l) ? GreyLabel.Of(l.OnStock()) : l,
            White: WhitePlate.Has(l) ? WhitePlate.Of(l) : l));
        AtomicFile.Write(path, stream =>
        {
            var document = new FormDocument(stream, info);
            foreach (var (label, one) in pages)
            {
                using var page = document.AddPage(width, height);
                page.Place(one.Picture, 0, 0);
                foreach (var place in one.Labels)
                    page.Place(place.Of switch
                    {
                        ProofOf.Grey => drawn[label].Grey,
                        ProofOf.White => drawn[label].White,
                        _ => drawn[label].Seen,
                    }, place.X, place.Y, place.Scale);
            }
            document.Finish();
        });
    }

    private static IReadOnlyList<ProofPage> Pages(ProofPages pages, LabelLayout label, Market market, DateOnly on, DocumentInfo info)
    {
        var (width, height) = (label.Design.Width, label.Design.Height);
        pages.Text($"Proof: {info.Title}", 14, BundledFaces.SemiBold);
        pages.Text(
            FormattableString.Invariant(
                $"Design {label.Design.Id}, {width} by {height}. Measured against the rules of {market.ToString().ToUpperInvariant()} as they stood on {on:yyyy-MM-dd}, those named below and no others."), Body);
        if (label.Design.Stock != Colour.White)
            pages.Text(label.Design.Look?.Palette.Covers == false
                ? $"Seen on stock of the colour {label.Design.Stock}, which shows through the inks and is not printed."
                : $"Seen on stock of the colour {label.Design.Stock}, which is not printed; white ink is laid under the colours.", Body);
        pages.Space(8);
        ActualSize(pages, label);
        Enlarged(pages, label);
        Ink(pages, label);
        White(pages, label);
        Rules(pages, label);
        LeftOut(pages, label);
        return pages.Finish();
    }

    private static void ActualSize(ProofPages pages, LabelLayout label)
    {
        var (width, height) = (Points.Of(label.Design.Width), Points.Of(label.Design.Height));
        if (width > pages.Width || height > pages.Height - 100)
            return;
        pages.Need(height + 40);
        pages.Text("Actual size. Printed rightly, the line below is 100 mm long.", Body, BundledFaces.SemiBold);
        Frame(pages, label, ProofPages.Margin, pages.Y + 4, 1);
        pages.Space(height + 14);
        var (from, to) = (ProofPages.Margin, ProofPages.Margin + Points.OfMillimetres(100m));
        pages.Add(new Stroke(from, pages.Y, to, pages.Y, Thin, Tint.Black));
        foreach (var x in new[] { from, to })
            pages.Add(new Stroke(x, pages.Y - 4, x, pages.Y + 4, Thin, Tint.Black));
        pages.Space(16);
    }

    private static void Enlarged(ProofPages pages, LabelLayout label)
    {
        var (width, height) = (Points.Of(label.Design.Width), Points.Of(label.Design.Height));
        var room = Math.Min(MostScale, Math.Min((pages.Width - 2 * NumberRoom) / width, MostHeight / height));
        var scale = Math.Max(0.1, Math.Floor(room * 10) / 10);
        pages.Need(height * scale + 30);
        pages.Text(Invariant($"Drawn at {scale:0.0} times its size; the grey lines are the design's panels and are not printed."), Body,
            BundledFaces.SemiBold);
        var (left, top) = (ProofPages.Margin + NumberRoom, pages.Y + 4);
        foreach (var panel in label.Design.Panels)
            pages.Add(new Outline(left + Points.Of(panel.X) * scale, top + Points.Of(panel.Y) * scale, Points.Of(panel.Width) * scale,
                Points.Of(panel.Height) * scale, 0, false, Thin, Tint.Grey));
        Frame(pages, label, left, top, scale);
        Numbers(pages, label, left, top, scale);
        pages.Space(height * scale + 20);
    }

    private static void Frame(ProofPages pages, LabelLayout label, double x, double y, double scale)
    {
        pages.Add(new Outline(x, y, Points.Of(label.Design.Width) * scale, Points.Of(label.Design.Height) * scale, 0, label.Design.Round,
            Thin, Tint.Grey));
        pages.Add(new PlacedProof(x, y, scale));
    }

    private static void Ink(ProofPages pages, LabelLayout label)
    {
        var ink = InkCoverage.Of(label);
        pages.Text(Invariant($"Ink: {ink.Percent:0} % of the label's area, were it printed solid (cyan {ink.Cyan:0}, magenta {ink.Magenta:0}, yellow {ink.Yellow:0}, black {ink.Black:0}); worked out from the colours, for comparing designs."), Body);
        pages.Space(6);
        if (GreyLabel.HasColour(label))
            Apart(pages, label, "Actual size, as a printer without colour prints it.", ProofOf.Grey);
    }

    private static void White(ProofPages pages, LabelLayout label)
    {
        if (!WhitePlate.Has(label))
            return;
        Apart(pages, label, Invariant($"White plate, actual size: black where white ink is laid under the colours, {InkCoverage.Of(WhitePlate.Of(label)).Percent:0} % of the area. It is written by itself with --white-plate."), ProofOf.White);
    }

    private static void Apart(ProofPages pages, LabelLayout label, string what, ProofOf of)
    {
        var (width, height) = (Points.Of(label.Design.Width), Points.Of(label.Design.Height));
        if (width > pages.Width || height > pages.Height - 100)
            return;
        pages.Need(height + 24);
        pages.Text(what, Body, BundledFaces.SemiBold);
        pages.Add(new Outline(ProofPages.Margin, pages.Y + 4, width, height, 0, label.Design.Round, Thin, Tint.Grey));
        pages.Add(new PlacedProof(ProofPages.Margin, pages.Y + 4, 1) { Of = of });
        pages.Space(height + 14);
    }

    // Each element's number stands at its panel's side of the label, with a line to the element; numbers never stand on each other.
    private static void Numbers(ProofPages pages, LabelLayout label, double left, double top, double scale)
    {
        var right = left + Points.Of(label.Design.Width) * scale;
        var numbered = label.Texts
            .Select((t, i) => (Number: i + 1, Left: OnLeft(label.Design, t), X: left + Points.Of(t.X) * scale,
            Right: left + Points.Of(t.X) * scale + Points.Of(t.Width) * scale,
            Y: top + (Points.Of(t.Y) + Points.Of(t.Height) / 2) * scale)).ToList();
        foreach (var side in numbered.GroupBy(n => n.Left))
        {
            var free = double.MinValue;
            foreach (var n in side.OrderBy(n => n.Y))
            {
                var y = Math.Max(n.Y, free);
                free = y + 10;
                var figure = new MeasuredText(BundledFaces.SemiBold, Body,
                    BundledFaces.SemiBold.Shape(n.Number.ToString(CultureInfo.InvariantCulture)));
                var (at, to) = side.Key ? (left - 8, n.X - 1) : (right + 8, n.Right + 1);
                pages.Add(new PictureLine(figure, side.Key ? at - figure.Width - 2 : at + 2, y + 3));
                pages.Add(new Stroke(at, y, to, n.Y, 0.25, Tint.Grey));
            }
        }
    }

    private static bool OnLeft(LabelDesign design, PlacedText text)
    {
        var panel = design.Panels.FirstOrDefault(p => Inside(text.X, p.X, p.Width) && Inside(text.Y, p.Y, p.Height));
        return panel is null || panel.X.Millimetres + panel.Width.Millimetres / 2 <= design.Width.Millimetres / 2;
    }

    private static bool Inside(Length at, Length from, Length size) =>
        at.Millimetres >= from.Millimetres && at.Millimetres <= from.Millimetres + size.Millimetres;

    private static void Rules(ProofPages pages, LabelLayout label)
    {
        pages.Need(60);
        pages.Text(
            "Heights are those of the lower-case o, or of the capitals where all are capitals, and no more than the lowest figure's; "
                + "measured from the outlines drawn.", Body);
        double[] widths = [22, pages.Width * 0.33, 58, 78, 66];
        var last = pages.Width - widths.Sum();
        IReadOnlyList<(string, double)> Cells(params string[] texts) => [.. texts.Zip([.. widths, last])];
        pages.Row(Cells("No.", "What is measured", "Measured", "The rule", "To spare", "Source"), Body, BundledFaces.SemiBold);
        pages.Add(new Stroke(ProofPages.Margin, pages.Y, ProofPages.Margin + pages.Width, pages.Y, Thin, Tint.Black));
        pages.Space(3);
        foreach (var rule in label.Constraints)
            pages.Row(Cells(NumberOf(label, rule.Role), rule.What, Figure(rule.Measured, rule.Unit),
                (rule.AtLeast ? "at least " : "at most ") + Figure(rule.Limit, rule.Unit), Spare(rule), rule.Source),
                Body, rule.Kept ? rule.Binds ? BundledFaces.Named("medium") : null : BundledFaces.SemiBold);
        pages.Space(6);
    }

    private static void LeftOut(ProofPages pages, LabelLayout label)
    {
        if (!label.LeftOut.IsEmpty)
            pages.Text("Not on this label:", Body, BundledFaces.SemiBold);
        foreach (var what in label.LeftOut)
            pages.Text(what, Body);
        pages.Space(4);
        pages.Text("Checked against the rules named. This proof does not decide what is lawful for you.", Body);
    }

    private static string NumberOf(LabelLayout label, Role? role)
    {
        var at = label.Texts.Select(t => (Role?)t.Role).ToList().IndexOf(role);
        return role is null || at < 0 ? "" : (at + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static string Spare(Constraint rule) => rule.Kept
        ? Figure(Math.Max(0m, rule.Margin), rule.Unit) + (rule.Binds ? ", binds" : "")
        : $"{Figure(-rule.Margin, rule.Unit)} short";

    private static string Figure(decimal value, string unit) => Invariant($"{value:0.##} {unit}");
}
