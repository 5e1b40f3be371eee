using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LabelForge.Records.Migrations.Server
{
    /// <inheritdoc />
    public partial class ServerSupplierLots : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "SupplierLot",
                table: "ReceiptStock",
                type: "text",
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
