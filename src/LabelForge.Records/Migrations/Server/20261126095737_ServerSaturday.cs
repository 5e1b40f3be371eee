using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace LabelForge.Records.Migrations.Server
{
    /// <inheritdoc />
    public partial class ServerSaturday : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "Payment",
                table: "Sales",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<decimal>(
                name: "Tax",
                table: "Sales",
                type: "numeric",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Ticket",
                table: "Sales",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Drawing",
                table: "Printings",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Places",
                table: "Printings",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Run",
                table: "Printings",
                type: "integer",
                nullable: true);

            migrationBuilder.AddColumn<int>(
                name: "Spoiled",
                table: "Printings",
                type: "integer",
                nullable: false,
                defaultValue: 0);

            migrationBuilder.AddColumn<string>(
                name: "Stock",
                table: "Printings",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "Pot",
                table: "Batches",
                type: "text",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "PackingUses",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    BatchId = table.Column<int>(type: "integer", nullable: false),
                    ReceiptId = table.Column<int>(type: "integer", nullable: false),
                    Used = table.Column<decimal>(type: "numeric", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    Note = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PackingUses", x => x.Id);
                    table.ForeignKey(
                        name: "FK_PackingUses_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_PackingUses_Receipts_ReceiptId",
                        column: x => x.ReceiptId,
                        principalTable: "Receipts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Returns",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    BatchId = table.Column<int>(type: "integer", nullable: false),
                    Returned = table.Column<int>(type: "integer", nullable: false),
                    BackOnShelf = table.Column<int>(type: "integer", nullable: false),
                    From = table.Column<string>(type: "text", nullable: false),
                    PaidBack = table.Column<decimal>(type: "numeric", nullable: false),
                    Tax = table.Column<decimal>(type: "numeric", nullable: true),
                    Payment = table.Column<string>(type: "text", nullable: true),
                    Reason = table.Column<string>(type: "text", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    Note = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Returns", x => x.Id);
                    table.ForeignKey(
                        name: "FK_Returns_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "StockCounts",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    BatchId = table.Column<int>(type: "integer", nullable: true),
                    ReceiptId = table.Column<int>(type: "integer", nullable: true),
                    Counted = table.Column<decimal>(type: "numeric", nullable: false),
                    Difference = table.Column<decimal>(type: "numeric", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    Note = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_StockCounts", x => x.Id);
                    table.ForeignKey(
                        name: "FK_StockCounts_Batches_BatchId",
                        column: x => x.BatchId,
                        principalTable: "Batches",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_StockCounts_Receipts_ReceiptId",
                        column: x => x.ReceiptId,
                        principalTable: "Receipts",
                        principalColumn: "Id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Takings",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Place = table.Column<string>(type: "text", nullable: false),
                    Float = table.Column<decimal>(type: "numeric", nullable: false),
                    Cash = table.Column<decimal>(type: "numeric", nullable: false),
                    Card = table.Column<decimal>(type: "numeric", nullable: false),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    Note = table.Column<string>(type: "text", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Takings", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_PackingUses_BatchId",
                table: "PackingUses",
                column: "BatchId");

            migrationBuilder.CreateIndex(
                name: "IX_PackingUses_ReceiptId",
                table: "PackingUses",
                column: "ReceiptId");

            migrationBuilder.CreateIndex(
                name: "IX_Returns_BatchId",
                table: "Returns",
                column: "BatchId");

            migrationBuilder.CreateIndex(
                name: "IX_StockCounts_BatchId",
                table: "StockCounts",
                column: "BatchId");

            migrationBuilder.CreateIndex(
                name: "IX_StockCounts_ReceiptId",
                table: "StockCounts",
                column: "ReceiptId");
            foreach (var table in new[] { "PackingUses", "StockCounts", "Returns", "Takings" })
            {
                migrationBuilder.Sql($"""CREATE TRIGGER "{table}_never_changed" BEFORE UPDATE OR DELETE OR TRUNCATE ON "{table}" FOR EACH STATEMENT EXECUTE FUNCTION labelforge_never_changed();""");
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "PackingUses");

            migrationBuilder.DropTable(
                name: "Returns");

            migrationBuilder.DropTable(
                name: "StockCounts");

            migrationBuilder.DropTable(
                name: "Takings");

            migrationBuilder.DropColumn(
                name: "Payment",
                table: "Sales");

            migrationBuilder.DropColumn(
                name: "Tax",
                table: "Sales");

            migrationBuilder.DropColumn(
                name: "Ticket",
                table: "Sales");

            migrationBuilder.DropColumn(
                name: "Drawing",
                table: "Printings");

            migrationBuilder.DropColumn(
                name: "Places",
                table: "Printings");

            migrationBuilder.DropColumn(
                name: "Run",
                table: "Printings");

            migrationBuilder.DropColumn(
                name: "Spoiled",
                table: "Printings");

            migrationBuilder.DropColumn(
                name: "Stock",
                table: "Printings");

            migrationBuilder.DropColumn(
                name: "Pot",
                table: "Batches");
        }
    }
}
