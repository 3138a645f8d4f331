using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Lanewright.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class ScaleAndInvented : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            // What is computed is computed anew when the records are opened.
            migrationBuilder.Sql("DELETE FROM test_results");
            migrationBuilder.Sql("DELETE FROM tests");
            migrationBuilder.AddColumn<bool>(
                name: "Invented",
                table: "tests",
                type: "INTEGER",
                nullable: false,
                defaultValue: false);

            migrationBuilder.AddColumn<string>(
                name: "Scale",
                table: "tests",
                type: "TEXT",
                nullable: false,
                defaultValue: "");

            migrationBuilder.CreateIndex(
                name: "IX_tests_Invented",
                table: "tests",
                column: "Invented");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_tests_Invented",
                table: "tests");

            migrationBuilder.DropColumn(
                name: "Invented",
                table: "tests");

            migrationBuilder.DropColumn(
                name: "Scale",
                table: "tests");
        }
    }
}
