using System.Linq.Expressions;
using Microsoft.EntityFrameworkCore;

namespace LabelForge.Records.Books;

/// <summary>Amounts and money as whole numbers in the database, in columns that name their unit.</summary>
internal static class AmountColumns
{
    /// <summary>Maps them.</summary>
    public static void Map(ModelBuilder model)
    {
        Millionth<Receipt>(model, r => r.Amount, "AmountMillionths");
        Cent<Receipt>(model, r => r.Price, "PriceCents");
        Millionth<Weighing>(model, w => w.Grams, "Micrograms");
        Millionth<Closing>(model, c => c.YieldGrams, "YieldMicrograms");
        Cent<Sale>(model, s => s.Paid, "PaidCents");
        Cent<Sale>(model, s => s.Tax, "TaxCents");
        Millionth<Disposal>(model, d => d.Amount, "AmountMillionths");
        Millionth<PackingUse>(model, u => u.Used, "UsedMillionths");
        Millionth<StockCount>(model, c => c.Counted, "CountedMillionths");
        Millionth<StockCount>(model, c => c.Difference, "DifferenceMillionths");
        Cent<PiecesReturned>(model, r => r.PaidBack, "PaidBackCents");
        Cent<PiecesReturned>(model, r => r.Tax, "TaxCents");
        Cent<Takings>(model, t => t.Float, "FloatCents");
        Cent<Takings>(model, t => t.Cash, "CashCents");
        Cent<Takings>(model, t => t.Card, "CardCents");
        Millionth<ReceiptStock>(model, s => s.Left, "LeftMillionths");
    }

    private static void Millionth<T>(ModelBuilder model, Expression<Func<T, decimal>> amount, string column) where T : class =>
        model.Entity<T>().Property(amount).HasColumnName(column).HasConversion(a => (long)(a * 1_000_000m), m => m / 1_000_000m);

    private static void Millionth<T>(ModelBuilder model, Expression<Func<T, decimal?>> amount, string column) where T : class =>
        model.Entity<T>().Property(amount).HasColumnName(column).HasConversion(a => (long)(a!.Value * 1_000_000m), m => m / 1_000_000m);

    private static void Cent<T>(ModelBuilder model, Expression<Func<T, decimal>> money, string column) where T : class =>
        model.Entity<T>().Property(money).HasColumnName(column).HasConversion(a => (long)(a * 100m), c => c / 100m);

    private static void Cent<T>(ModelBuilder model, Expression<Func<T, decimal?>> money, string column) where T : class =>
        model.Entity<T>().Property(money).HasColumnName(column).HasConversion(a => (long)(a!.Value * 100m), c => c / 100m);
}
