using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace LabelForge.Records.Migrations.Server
{
    /// <inheritdoc />
    public partial class ServerAttachments : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "Attachments",
                columns: table => new
                {
                    Id = table.Column<int>(type: "integer", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    Digest = table.Column<string>(type: "text", nullable: false),
                    FileName = table.Column<string>(type: "text", nullable: false),
                    Kind = table.Column<string>(type: "text", nullable: false),
                    About = table.Column<string>(type: "text", nullable: false),
                    Revision = table.Column<string>(type: "text", nullable: true),
                    Issued = table.Column<DateOnly>(type: "date", nullable: true),
                    BestBefore = table.Column<DateOnly>(type: "date", nullable: true),
                    On = table.Column<DateOnly>(type: "date", nullable: false),
                    By = table.Column<string>(type: "text", nullable: false),
                    Note = table.Column<string>(type: "text", nullable: true),
                    WrittenAtSeconds = table.Column<long>(type: "bigint", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Attachments", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Attachments_About",
                table: "Attachments",
                column: "About");
            migrationBuilder.Sql("""CREATE TRIGGER "Attachments_never_changed" BEFORE UPDATE OR DELETE OR TRUNCATE ON "Attachments" FOR EACH STATEMENT EXECUTE FUNCTION labelforge_never_changed();""");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "Attachments");
        }
    }
}
