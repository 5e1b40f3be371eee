using LabelForge.Records.Books;

namespace LabelForge.Records.Tracing;

/// <summary>Pieces that left, and to whom.</summary>
public sealed record TracedDelivery(string Lot, DateOnly On, int Pieces, string To, bool Gift);

/// <summary>A material lot's way into a batch. Its number is the one on the bottle.</summary>
public sealed record TracedUse(int MaterialLot, string Material, string? Supplier, string? SupplierLot, string Lot, decimal Grams);

/// <summary>A material lot: when it came, and what is left of it in grams (or pieces of packaging).</summary>
public sealed record TracedBottle(int MaterialLot, string Material, string? Supplier, string? SupplierLot, DateOnly On, decimal Amount,
    decimal Left);

/// <summary>A batch on the way.</summary>
public sealed record TracedBatch(string Lot, string Product, DateOnly On, int Made, int Rejected, int Left, int Disposed, bool Open);

/// <summary>The way from material lots through batches to people, or back.</summary>
/// <param name="From">What was asked for, as understood.</param>
/// <param name="Bottles">The material lots.</param>
/// <param name="Uses">Which material lots went into which batches.</param>
/// <param name="Batches">The batches.</param>
/// <param name="Deliveries">The pieces that left.</param>
/// <param name="Complaints">What was told of these lots.</param>
public sealed record Trace(string From, IReadOnlyList<TracedBottle> Bottles, IReadOnlyList<TracedUse> Uses,
    IReadOnlyList<TracedBatch> Batches, IReadOnlyList<TracedDelivery> Deliveries, IReadOnlyList<Complaint> Complaints)
{
    /// <summary>The unit of a bottle's amounts, after a space: what was weighed into a batch is
    /// in grams; else nothing tells it from packaging, which is counted.</summary>
    public string UnitOf(TracedBottle bottle) => Uses.Any(u => u.MaterialLot == bottle.MaterialLot) ? " g" : "";

    /// <summary>Whether the way was followed forward from material lots, and not back from pieces.</summary>
    public bool Forward { get; init; }

    /// <summary>Traces from a material lot (M3), a supplier's lot, a finished lot, a pot, a material's id, or a person.</summary>
    /// <remarks>From a material only its own uses are followed; from a finished lot or a person, everything that went in.</remarks>
    /// <exception cref="InputException">The books know nothing of that name.</exception>
    public static Trace Of(OpenBooks book, string from)
    {
        if (!WholeProgram.IsThis)
            throw new NeedsWholeProgramException();
        return book.Reading((books, context) => new TraceQuery(books, context).Of(from));
    }
}
