using System.Data.Common;
using LabelForge.Records.Books;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage;

namespace LabelForge.Records.Tracing;

/// <summary>The statements of a trace, in words that SQLite and PostgreSQL share.</summary>
/// <remarks>
/// Each begins with the same tables: <c>asked</c>, the batches on the way by the number that stands; <c>used</c>, what was weighed
/// into them out of which bottle; <c>every</c>, each number that one of these batches ever had beside the one that stands.
/// CROSS JOIN keeps SQLite to the order written, from the few to the many: left to itself it goes through whole tables. To
/// PostgreSQL it is a join like any other.
/// </remarks>
/// <param name="way">The tables, by <see cref="Forward"/> or <see cref="Back"/>.</param>
/// <param name="parameters">What stands in them as @p0 and so on.</param>
internal sealed class TraceSql(string way, params string[] parameters)
{
    /// <summary>What was weighed in.</summary>
    public const string Uses = """
        SELECT u."Bottle", u."Micrograms", s."Lot", r."Material", r."Supplier", r."SupplierLot"
        FROM used u CROSS JOIN "BatchStock" s CROSS JOIN "ReceiptStock" rs CROSS JOIN "Receipts" r
        WHERE s."BatchId" = u."BatchId" AND rs."Bottle" = u."Bottle" AND r."Id" = rs."ReceiptId" ORDER BY u."Id"
        """;

    /// <summary>The batches.</summary>
    public const string Lots = """
        SELECT s."Lot", b."Product", b."On", s."Made", s."Rejected", s."Left", s."Disposed", s."Closings"
        FROM asked a CROSS JOIN "BatchStock" s CROSS JOIN "Batches" b WHERE s."BatchId" = a."BatchId" AND b."Id" = a."BatchId" ORDER BY s."Number"
        """;

    /// <summary>The sales and gifts that stand.</summary>
    public static readonly string Deliveries = $"""
        SELECT st."Lot", s."On", s."Pieces", s."To", s."PaidCents"
        FROM every e CROSS JOIN "Sales" s CROSS JOIN "BatchStock" st WHERE s."BatchId" = e."Id" AND st."BatchId" = e."Now" AND {Stands(BookLists.Sale, "s")} ORDER BY st."Number", s."Id"
        """;

    /// <summary>The numbers of complaints that stand.</summary>
    public static readonly string Complaints = $"""
        SELECT p."Id" FROM every e CROSS JOIN "Complaints" p WHERE p."BatchId" = e."Id" AND {Stands(BookLists.Complaint, "p")}
        """;

    /// <summary>The bottles that the way began with.</summary>
    public const string BottlesNamed = Bottles + """ WHERE rs."Bottle" IN (SELECT "Bottle" FROM bottle) ORDER BY rs."ReceiptId" """;

    /// <summary>The bottles that were weighed from, in the order of the first weighing.</summary>
    public const string BottlesUsed = Bottles
        + """ JOIN (SELECT "Bottle", MIN("Id") AS "First" FROM used GROUP BY "Bottle") u ON u."Bottle" = rs."Bottle" ORDER BY u."First" """;

    private const string Bottles = """
        SELECT rs."Bottle", r."Material", r."Supplier", r."SupplierLot", r."On", r."AmountMillionths" AS "Amount", rs."LeftMillionths" AS "Left" FROM "ReceiptStock" rs JOIN "Receipts" r ON r."Id" = rs."ReceiptId"
        """;

    private const string Every = """
        every("Id", "Now") AS (
          SELECT "BatchId", "BatchId" FROM asked
          UNION ALL SELECT c."EntryId", e."Now" FROM every e CROSS JOIN "Corrections" c WHERE c."List" = 'batch' AND c."InsteadId" = e."Id")
        """;

    /// <summary>From bottles to the batches that were weighed out of them.</summary>
    public static string Forward(IEnumerable<int> bottles) => $"""
        WITH RECURSIVE
        bottle("Bottle", "Id") AS (
          SELECT "Bottle", "Bottle" FROM "ReceiptStock" WHERE "Bottle" IN ({string.Join(',', bottles)})
          UNION ALL SELECT b."Bottle", c."InsteadId" FROM bottle b CROSS JOIN "Corrections" c WHERE c."List" = 'receipt' AND c."EntryId" = b."Id" AND c."InsteadId" IS NOT NULL),
        taken AS (
          SELECT w."Id", b."Bottle", w."BatchId", w."Micrograms" FROM bottle b CROSS JOIN "Weighings" w WHERE w."ReceiptId" = b."Id" AND {Stands(BookLists.Weighing, "w")}),
        lot("Was", "Id") AS (
          SELECT DISTINCT "BatchId", "BatchId" FROM taken
          UNION ALL SELECT l."Was", c."InsteadId" FROM lot l CROSS JOIN "Corrections" c WHERE c."List" = 'batch' AND c."EntryId" = l."Id" AND c."InsteadId" IS NOT NULL),
        used AS (
          SELECT t."Id", t."Bottle", s."BatchId", t."Micrograms" FROM taken t CROSS JOIN lot l CROSS JOIN "BatchStock" s WHERE l."Was" = t."BatchId" AND s."BatchId" = l."Id"),
        asked AS (SELECT DISTINCT "BatchId" FROM used),
        {Every}
        """;

    /// <summary>From batches to the bottles that were weighed into them.</summary>
    /// <param name="batches">A query for the batches, by any number that they had.</param>
    public static string Back(string batches) => $"""
        WITH RECURSIVE
        start("Id") AS (
          {batches}
          UNION SELECT c."InsteadId" FROM start b CROSS JOIN "Corrections" c WHERE c."List" = 'batch' AND c."EntryId" = b."Id" AND c."InsteadId" IS NOT NULL),
        asked AS (SELECT DISTINCT s."BatchId" FROM start b CROSS JOIN "BatchStock" s WHERE s."BatchId" = b."Id"),
        {Every},
        taken AS (
          SELECT w."Id", w."ReceiptId", e."Now", w."Micrograms" FROM every e CROSS JOIN "Weighings" w WHERE w."BatchId" = e."Id" AND w."ReceiptId" IS NOT NULL AND {Stands(BookLists.Weighing, "w")}),
        back("Was", "Id") AS (
          SELECT DISTINCT "ReceiptId", "ReceiptId" FROM taken
          UNION ALL SELECT b."Was", c."EntryId" FROM back b CROSS JOIN "Corrections" c WHERE c."List" = 'receipt' AND c."InsteadId" = b."Id"),
        used AS (
          SELECT t."Id", s."Bottle", t."Now" AS "BatchId", t."Micrograms" FROM taken t CROSS JOIN back b CROSS JOIN "ReceiptStock" s WHERE b."Was" = t."ReceiptId" AND s."Bottle" = b."Id")
        """;

    /// <summary>That no correction strikes an entry.</summary>
    public static string Stands(string list, string entry) =>
        $"NOT EXISTS (SELECT 1 FROM \"Corrections\" x WHERE x.\"List\" = '{list}' AND x.\"EntryId\" = {entry}.\"Id\")";

    /// <summary>Asks one of the statements.</summary>
    /// <remarks>Not through the framework, which would compile each statement anew: that took a
    /// hundred times as long as the answer.</remarks>
    public IReadOnlyList<T> Ask<T>(RecordsContext context, string statement, Func<DbDataReader, T> row)
    {
        using var command = context.Database.GetDbConnection().CreateCommand();
        command.Transaction = context.Database.CurrentTransaction?.GetDbTransaction();
        // Nothing that a person wrote stands in the text: names are parameters, bottles are numbers.
        command.CommandText = string.Join('\n', way, statement);
        for (var i = 0; i < parameters.Length; i++)
        {
            var parameter = command.CreateParameter();
            (parameter.ParameterName, parameter.Value) = (Name(i), parameters[i]);
            command.Parameters.Add(parameter);
        }
        using var reader = command.ExecuteReader();
        var rows = new List<T>();
        while (reader.Read())
            rows.Add(row(reader));
        return rows;
    }

    /// <summary>How a statement names one of its parameters.</summary>
    public static string Name(int parameter) => Invariant($"@p{parameter}");
}
