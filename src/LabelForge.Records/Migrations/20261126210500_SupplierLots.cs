using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LabelForge.Records.Migrations
{
    /// <inheritdoc />
    public partial class SupplierLots : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "SupplierLot",
                table: "ReceiptStock",
                type: "TEXT",
                nullable: true);

            migrationBuilder.CreateIndex(
                name: "IX_ReceiptStock_SupplierLot",
                table: "ReceiptStock",
                column: "SupplierLot");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_ReceiptStock_SupplierLot",
                table: "ReceiptStock");

            migrationBuilder.DropColumn(
                name: "SupplierLot",
                table: "ReceiptStock");
        }
    }
}
