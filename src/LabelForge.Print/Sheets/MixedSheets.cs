using LabelForge.Print.Drawing;
using LabelForge.Print.Output;

namespace LabelForge.Print.Sheets;

/// <summary>A sheet, and which label stands at which place.</summary>
/// <param name="Stock">The stock.</param>
/// <param name="Labels">The labels by place, from 1.</param>
public sealed record MixedSheet(LabelStock Stock, ImmutableArray<(int Place, LabelLayout Label)> Labels)
{
    /// <summary>What its margin says, and no label; null where it says nothing.</summary>
    public string? Note { get; init; }
}

/// <summary>Writes sheets on which labels of several products stand at places of their own, each sheet a page.</summary>
public static class MixedSheets
{
    /// <summary>Writes them as one PDF, whole or not at all; pages may differ in size.</summary>
    /// <exception cref="InputException">A label does not fit its stock, or the file cannot be written.</exception>
    public static void WritePdf(string path, IReadOnlyList<MixedSheet> sheets, Registration registration, DocumentInfo info)
    {
        foreach (var (stock, label) in sheets.SelectMany(s => s.Labels.Select(l => (s.Stock, l.Label))).Distinct())
            StockFit.RefuseWrongSize(label, stock);
        AtomicFile.Write(path, stream =>
        {
            var document = new FormDocument(stream, info);
            foreach (var sheet in sheets)
            {
                using var page = document.AddPage(sheet.Stock.PageWidth, sheet.Stock.PageHeight);
                page.Register(registration);
                if (MarginNote.Of(sheet.Stock, sheet.Note) is { } note)
                    page.Place(note, 0, 0);
                foreach (var (place, label) in sheet.Labels)
                {
                    SheetWriter.Place(page, label, sheet.Stock, SheetWriter.LabelCorner(sheet.Stock, place, label.Design));
                }
            }
            document.Finish();
        });
    }
}
