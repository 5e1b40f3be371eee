using LabelForge.Records.Books;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LabelForge.Records.Migrations
{
    /// <inheritdoc />
    public partial class Balances : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "BatchStock",
                columns: table => new
                {
                    Number = table.Column<int>(type: "INTEGER", nullable: false),
                    BatchId = table.Column<int>(type: "INTEGER", nullable: false),
                    Lot = table.Column<string>(type: "TEXT", nullable: false),
                    Closings = table.Column<int>(type: "INTEGER", nullable: false),
                    Made = table.Column<int>(type: "INTEGER", nullable: false),
                    Rejected = table.Column<int>(type: "INTEGER", nullable: false),
                    Sold = table.Column<int>(type: "INTEGER", nullable: false),
                    Returned = table.Column<int>(type: "INTEGER", nullable: false),
                    BackOnShelf = table.Column<int>(type: "INTEGER", nullable: false),
                    Disposed = table.Column<int>(type: "INTEGER", nullable: false),
                    Counted = table.Column<int>(type: "INTEGER", nullable: false),
                    Left = table.Column<int>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_BatchStock", x => x.Number);
                    table.CheckConstraint("CK_BatchStock_Balance", "\"Left\" = \"Made\" - \"Rejected\" - \"Sold\" + \"BackOnShelf\" - \"Disposed\" + \"Counted\"");
                    table.CheckConstraint("CK_BatchStock_Closings", "\"Closings\" = 1 OR (\"Closings\" = 0 AND \"Left\" = 0 AND \"Sold\" = 0)");
                    table.CheckConstraint("CK_BatchStock_Left", "\"Left\" >= 0");
                    table.CheckConstraint("CK_BatchStock_Returned", "\"Returned\" <= \"Sold\"");
                });

            migrationBuilder.CreateTable(
                name: "FrozenRecipes",
                columns: table => new
                {
                    Digest = table.Column<string>(type: "TEXT", nullable: false),
                    Json = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_FrozenRecipes", x => x.Digest);
                });

            migrationBuilder.CreateTable(
                name: "ReceiptStock",
                columns: table => new
                {
                    Bottle = table.Column<int>(type: "INTEGER", nullable: false),
                    ReceiptId = table.Column<int>(type: "INTEGER", nullable: false),
                    Material = table.Column<string>(type: "TEXT", nullable: false),
                    LeftMillionths = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_ReceiptStock", x => x.Bottle);
                    table.CheckConstraint("CK_ReceiptStock_Left", "\"LeftMillionths\" >= 0");
                });
            foreach (var statement in WholeAmounts.InFile())
                migrationBuilder.Sql(statement);

            migrationBuilder.CreateIndex(
                name: "IX_Sales_Ticket",
                table: "Sales",
                column: "Ticket");

            migrationBuilder.CreateIndex(
                name: "IX_Sales_To",
                table: "Sales",
                column: "To");

            migrationBuilder.CreateIndex(
                name: "IX_Corrections_List_InsteadId",
                table: "Corrections",
                columns: new[] { "List", "InsteadId" });

            migrationBuilder.CreateIndex(
                name: "IX_Batches_Pot",
                table: "Batches",
                column: "Pot");

            migrationBuilder.CreateIndex(
                name: "IX_Batches_Recipe_Variant",
                table: "Batches",
                columns: new[] { "Recipe", "Variant" });

            migrationBuilder.CreateIndex(
                name: "IX_BatchStock_BatchId",
                table: "BatchStock",
                column: "BatchId",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_BatchStock_Closings",
                table: "BatchStock",
                column: "Closings");

            migrationBuilder.CreateIndex(
                name: "IX_BatchStock_Left",
                table: "BatchStock",
                column: "Left");

            migrationBuilder.CreateIndex(
                name: "IX_BatchStock_Lot",
                table: "BatchStock",
                column: "Lot",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_ReceiptStock_Material_LeftMillionths",
                table: "ReceiptStock",
                columns: new[] { "Material", "LeftMillionths" });

            migrationBuilder.CreateIndex(
                name: "IX_ReceiptStock_ReceiptId",
                table: "ReceiptStock",
                column: "ReceiptId",
                unique: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder) =>
            throw new NotSupportedException("Books are not taken back to an older version: restore a backup that it made.");
    }
}
