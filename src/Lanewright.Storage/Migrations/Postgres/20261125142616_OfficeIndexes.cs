using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Lanewright.Storage.Migrations.Postgres
{
    /// <inheritdoc />
    public partial class OfficeIndexes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateIndex(
                name: "IX_tests_Date",
                table: "tests",
                column: "Date");

            migrationBuilder.CreateIndex(
                name: "IX_tests_Kind_Spreader_DecidedAt",
                table: "tests",
                columns: new[] { "Kind", "Spreader", "DecidedAt" });

            migrationBuilder.CreateIndex(
                name: "IX_tests_SpreaderName",
                table: "tests",
                column: "SpreaderName");

            migrationBuilder.CreateIndex(
                name: "IX_register_items_Kind",
                table: "register_items",
                column: "Kind");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_tests_Date",
                table: "tests");

            migrationBuilder.DropIndex(
                name: "IX_tests_Kind_Spreader_DecidedAt",
                table: "tests");

            migrationBuilder.DropIndex(
                name: "IX_tests_SpreaderName",
                table: "tests");

            migrationBuilder.DropIndex(
                name: "IX_register_items_Kind",
                table: "register_items");
        }
    }
}
