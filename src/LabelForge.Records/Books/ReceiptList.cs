using LabelForge.Measures;
using LabelForge.Recipes;

namespace LabelForge.Records.Books;

/// <summary>Reads receipts from CSV, as <c>labelforge books receipt</c> writes them or as a maker types them: the same rows that <see cref="ListImport"/> reads, each for an entry of its own.</summary>
public static class ReceiptList
{
    /// <summary>Reads a list; the whole list is read before anything is written, struck lines are left out.</summary>
    /// <exception cref="InputException">Something in it cannot be read, with its line.</exception>
    public static IReadOnlyList<Receipt> ReadFile(string path, Workshop workshop, DateOnly on, string by) => ListImport.Receipts(path, workshop, on, by);
}
