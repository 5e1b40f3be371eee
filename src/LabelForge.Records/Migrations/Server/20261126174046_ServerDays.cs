using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LabelForge.Records.Migrations.Server
{
    /// <inheritdoc />
    public partial class ServerDays : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "IX_Sales_On",
                table: "Sales",
                column: "On");

            migrationBuilder.CreateIndex(
                name: "IX_Returns_On",
                table: "Returns",
                column: "On");

            migrationBuilder.CreateIndex(
                name: "IX_Printings_On",
                table: "Printings",
                column: "On");

            migrationBuilder.CreateIndex(
                name: "IX_Printings_Run",
                table: "Printings",
                column: "Run");

            migrationBuilder.CreateIndex(
                name: "IX_Batches_On",
                table: "Batches",
                column: "On");

            // With the number, so that a product's last batch is found at once.
            migrationBuilder.DropIndex(
                name: "IX_Batches_Recipe_Variant",
                table: "Batches");

            migrationBuilder.CreateIndex(
                name: "IX_Batches_Recipe_Variant_Id",
                table: "Batches",
                columns: ["Recipe", "Variant", "Id"]);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Batches_Recipe_Variant_Id",
                table: "Batches");

            migrationBuilder.CreateIndex(
                name: "IX_Batches_Recipe_Variant",
                table: "Batches",
                columns: ["Recipe", "Variant"]);

            migrationBuilder.DropIndex(
                name: "IX_Sales_On",
                table: "Sales");

            migrationBuilder.DropIndex(
                name: "IX_Returns_On",
                table: "Returns");

            migrationBuilder.DropIndex(
                name: "IX_Printings_On",
                table: "Printings");

            migrationBuilder.DropIndex(
                name: "IX_Printings_Run",
                table: "Printings");

            migrationBuilder.DropIndex(
                name: "IX_Batches_On",
                table: "Batches");
        }
    }
}
