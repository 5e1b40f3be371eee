namespace LabelForge.Records.Books;

/// <summary>Turns amounts and sums kept as decimal text or numerics into whole millionths and cents.</summary>
/// <remarks>
/// What came in is rounded up and what went out down, so that books that balanced still do. An amount that was finer, as half
/// an ounce is, stays word for word in the table AmountsAsWritten: nothing that was written is lost.
/// </remarks>
internal static class WholeAmounts
{
    private static readonly (string Table, string List, string Old, string New, int Factor, string Way, bool Null)[] Columns =
    [
        ("Receipts", "receipt", "Amount", "AmountMillionths", 1_000_000, "ceil", false),
        ("Receipts", "receipt", "Price", "PriceCents", 100, "round", false),
        ("Weighings", "weighing", "Grams", "Micrograms", 1_000_000, "floor", false),
        ("Closings", "closing", "YieldGrams", "YieldMicrograms", 1_000_000, "floor", true),
        ("Sales", "sale", "Paid", "PaidCents", 100, "round", false),
        ("Sales", "sale", "Tax", "TaxCents", 100, "round", true),
        ("Disposals", "disposal", "Amount", "AmountMillionths", 1_000_000, "floor", false),
        ("PackingUses", "packing", "Used", "UsedMillionths", 1_000_000, "floor", false),
        ("StockCounts", "count", "Counted", "CountedMillionths", 1_000_000, "floor", false),
        ("StockCounts", "count", "Difference", "DifferenceMillionths", 1_000_000, "floor", false),
        ("Returns", "return", "PaidBack", "PaidBackCents", 100, "round", false),
        ("Returns", "return", "Tax", "TaxCents", 100, "round", true),
        ("Takings", "takings", "Float", "FloatCents", 100, "round", false),
        ("Takings", "takings", "Cash", "CashCents", 100, "round", false),
        ("Takings", "takings", "Card", "CardCents", 100, "round", false),
    ];

    private static readonly string[] Tables =
        ["Receipts", "Batches", "Printings", "Weighings", "Deviations", "Closings", "Sales", "Complaints", "Disposals", "PackingUses",
            "StockCounts", "Returns", "Takings", "Corrections"];

    private const string AsWritten =
        """CREATE TABLE "AmountsAsWritten" ("List" TEXT NOT NULL, "EntryId" INTEGER NOT NULL, "Field" TEXT NOT NULL, "Written" TEXT NOT NULL, PRIMARY KEY ("List", "EntryId", "Field"));""";

    /// <summary>The name of the function that the file's connection knows: a decimal text times a factor, made whole one way.</summary>
    public const string Whole = "labelforge_whole";

    /// <summary>The name of the function that the file's connection knows: a text's SHA-256, in small hexadecimal figures.</summary>
    public const string Digest = "labelforge_sha256";

    /// <summary>The statements for a file; they call <see cref="Whole"/> and <see cref="Digest"/>.</summary>
    public static IEnumerable<string> InFile()
    {
        yield return AsWritten;
        foreach (var table in Tables)
        {
            foreach (var change in new[] { "UPDATE", "DELETE" })
                yield return $"""DROP TRIGGER "{table}_no_{change}";""";
            yield return $"""ALTER TABLE "{table}" ADD COLUMN "WrittenAtSeconds" INTEGER NULL;""";
        }
        foreach (var c in Columns)
        {
            yield return $"""INSERT INTO "AmountsAsWritten" SELECT '{c.List}', "Id", '{c.Old}', "{c.Old}" FROM "{c.Table}" WHERE {Whole}("{c.Old}", {c.Factor}, 'ceil') <> {Whole}("{c.Old}", {c.Factor}, 'floor');""";
            yield return $"""ALTER TABLE "{c.Table}" ADD COLUMN "{c.New}" INTEGER {(c.Null ? "NULL" : "NOT NULL DEFAULT 0")};""";
            yield return $"""UPDATE "{c.Table}" SET "{c.New}" = {Whole}("{c.Old}", {c.Factor}, '{c.Way}');""";
            yield return $"""ALTER TABLE "{c.Table}" DROP COLUMN "{c.Old}";""";
        }
        yield return $"""INSERT INTO "FrozenRecipes" SELECT {Digest}("Frozen"), "Frozen" FROM "Batches" GROUP BY "Frozen";""";
        yield return """ALTER TABLE "Batches" ADD COLUMN "FrozenDigest" TEXT NOT NULL DEFAULT '';""";
        yield return """ALTER TABLE "Batches" ADD COLUMN "Variant" TEXT NULL;""";
        yield return $"""UPDATE "Batches" SET "FrozenDigest" = {Digest}("Frozen"), "Variant" = json_extract("Frozen", '$.Variant');""";
        yield return """ALTER TABLE "Batches" DROP COLUMN "Frozen";""";
        foreach (var table in Tables.Append("FrozenRecipes").Append("AmountsAsWritten"))
        {
            foreach (var change in new[] { "UPDATE", "DELETE" })
                yield return $"""CREATE TRIGGER "{table}_no_{change}" BEFORE {change} ON "{table}" BEGIN SELECT RAISE(ABORT, 'An entry in the books is never changed: add a correction.'); END;""";
        }
    }

    /// <summary>The statements for a server.</summary>
    public static IEnumerable<string> OnServer()
    {
        yield return AsWritten;
        foreach (var table in Tables)
            yield return $"""ALTER TABLE "{table}" ADD COLUMN "WrittenAtSeconds" bigint NULL;""";
        foreach (var c in Columns)
        {
            yield return $"""INSERT INTO "AmountsAsWritten" SELECT '{c.List}', "Id", '{c.Old}', "{c.Old}"::text FROM "{c.Table}" WHERE "{c.Old}" * {c.Factor} <> floor("{c.Old}" * {c.Factor});""";
            yield return $"""ALTER TABLE "{c.Table}" ALTER COLUMN "{c.Old}" TYPE bigint USING {c.Way}("{c.Old}" * {c.Factor})::bigint;""";
            yield return $"""ALTER TABLE "{c.Table}" RENAME COLUMN "{c.Old}" TO "{c.New}";""";
        }
        yield return """INSERT INTO "FrozenRecipes" SELECT encode(sha256(convert_to("Frozen", 'UTF8')), 'hex'), "Frozen" FROM "Batches" GROUP BY "Frozen";""";
        yield return """ALTER TABLE "Batches" ADD COLUMN "Variant" text NULL;""";
        yield return """ALTER TABLE "Batches" DISABLE TRIGGER "Batches_never_changed";""";
        yield return """UPDATE "Batches" SET "Variant" = "Frozen"::json ->> 'Variant', "Frozen" = encode(sha256(convert_to("Frozen", 'UTF8')), 'hex');""";
        yield return """ALTER TABLE "Batches" ENABLE TRIGGER "Batches_never_changed";""";
        yield return """ALTER TABLE "Batches" RENAME COLUMN "Frozen" TO "FrozenDigest";""";
        foreach (var table in new[] { "FrozenRecipes", "AmountsAsWritten" })
            yield return $"""CREATE TRIGGER "{table}_never_changed" BEFORE UPDATE OR DELETE OR TRUNCATE ON "{table}" FOR EACH STATEMENT EXECUTE FUNCTION labelforge_never_changed();""";
    }
}
