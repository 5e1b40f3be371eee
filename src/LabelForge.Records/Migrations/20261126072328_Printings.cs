using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace LabelForge.Records.Migrations
{
    /// <inheritdoc />
    public partial class Printings : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "OnceKeys",
                columns: table => new
                {
                    Key = table.Column<string>(type: "TEXT", maxLength: 64, nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_OnceKeys", x => x.Key);
                });

            migrationBuilder.CreateTable(
                name: "Printings",
                columns: table => new
                {
                    Id = table.Column<int>(type: "INTEGER", nullable: false)
                        .Annotation("Sqlite:Autoincrement", true),
                    Lot = table.Column<string>(type: "TEXT", nullable: false),
                    Recipe = table.Column<string>(type: "TEXT", nullable: false),
                    Variant = table.Column<string>(type: "TEXT", nullable: true),
                    Product = table.Column<string>(type: "TEXT", nullable: false),
                    Labels = table.Column<int>(type: "INTEGER", nullable: false),
                    On = table.Column<DateOnly>(type: "TEXT", nullable: false),
                    By = table.Column<string>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Printings", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Printings_Lot",
                table: "Printings",
                column: "Lot");
            if (migrationBuilder.ActiveProvider == "Microsoft.EntityFrameworkCore.Sqlite")
            {
                foreach (var table in new[] { "Printings", "OnceKeys" })
                {
                    foreach (var change in new[] { "UPDATE", "DELETE" })
                    {
                        migrationBuilder.Sql($"""CREATE TRIGGER "{table}_no_{change}" BEFORE {change} ON "{table}" BEGIN SELECT RAISE(ABORT, 'An entry in the books is never changed: add a correction.'); END;""");
                    }
                }
            }
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "OnceKeys");

            migrationBuilder.DropTable(
                name: "Printings");
        }
    }
}
