using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Lanewright.Storage.Migrations.Sqlite
{
    /// <inheritdoc />
    public partial class Start : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "entries",
                columns: table => new
                {
                    Number = table.Column<long>(type: "INTEGER", nullable: false),
                    Received = table.Column<long>(type: "INTEGER", nullable: false),
                    PreviousHash = table.Column<string>(type: "TEXT", nullable: false),
                    Hash = table.Column<string>(type: "TEXT", nullable: false),
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Subject = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    Device = table.Column<string>(type: "TEXT", nullable: false),
                    Seq = table.Column<long>(type: "INTEGER", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false),
                    Zone = table.Column<string>(type: "TEXT", nullable: false),
                    Parent = table.Column<string>(type: "TEXT", nullable: true),
                    Why = table.Column<string>(type: "TEXT", nullable: true),
                    Payload = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => x.Number);
                });

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    EntryId = table.Column<string>(type: "TEXT", nullable: false),
                    Sha256 = table.Column<string>(type: "TEXT", nullable: false),
                    Mime = table.Column<string>(type: "TEXT", nullable: false),
                    Received = table.Column<long>(type: "INTEGER", nullable: false),
                    Bytes = table.Column<byte[]>(type: "BLOB", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photos", x => x.EntryId);
                });

            migrationBuilder.CreateTable(
                name: "quarantine",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "TEXT", nullable: false),
                    EntryId = table.Column<string>(type: "TEXT", nullable: true),
                    Received = table.Column<long>(type: "INTEGER", nullable: false),
                    Status = table.Column<string>(type: "TEXT", nullable: false),
                    Reason = table.Column<string>(type: "TEXT", nullable: false),
                    Raw = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_quarantine", x => x.Hash);
                });

            migrationBuilder.CreateTable(
                name: "register_items",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Payload = table.Column<string>(type: "TEXT", nullable: false),
                    EntryId = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<long>(type: "INTEGER", nullable: false),
                    Retired = table.Column<bool>(type: "INTEGER", nullable: false),
                    Others = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_register_items", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "spreader_events",
                columns: table => new
                {
                    EntryId = table.Column<string>(type: "TEXT", nullable: false),
                    Spreader = table.Column<string>(type: "TEXT", nullable: false),
                    Number = table.Column<long>(type: "INTEGER", nullable: false),
                    Event = table.Column<string>(type: "TEXT", nullable: false),
                    Note = table.Column<string>(type: "TEXT", nullable: false),
                    Date = table.Column<string>(type: "TEXT", nullable: false),
                    Person = table.Column<string>(type: "TEXT", nullable: false),
                    At = table.Column<long>(type: "INTEGER", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_spreader_events", x => x.EntryId);
                });

            migrationBuilder.CreateTable(
                name: "test_results",
                columns: table => new
                {
                    Test = table.Column<string>(type: "TEXT", nullable: false),
                    Position = table.Column<int>(type: "INTEGER", nullable: false),
                    Setting = table.Column<string>(type: "TEXT", nullable: false),
                    Unit = table.Column<string>(type: "TEXT", nullable: false),
                    Value = table.Column<double>(type: "REAL", nullable: false),
                    RelativeExpanded = table.Column<double>(type: "REAL", nullable: false),
                    Low = table.Column<double>(type: "REAL", nullable: false),
                    High = table.Column<double>(type: "REAL", nullable: false),
                    Probability = table.Column<double>(type: "REAL", nullable: false),
                    KeyIn = table.Column<double>(type: "REAL", nullable: true),
                    Conformity = table.Column<string>(type: "TEXT", nullable: true),
                    Share = table.Column<double>(type: "REAL", nullable: true),
                    ShareExpanded = table.Column<double>(type: "REAL", nullable: true),
                    Tolerance = table.Column<double>(type: "REAL", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_test_results", x => new { x.Test, x.Position });
                });

            migrationBuilder.CreateTable(
                name: "tests",
                columns: table => new
                {
                    Id = table.Column<string>(type: "TEXT", nullable: false),
                    Kind = table.Column<string>(type: "TEXT", nullable: false),
                    Spreader = table.Column<string>(type: "TEXT", nullable: true),
                    SpreaderName = table.Column<string>(type: "TEXT", nullable: false),
                    Title = table.Column<string>(type: "TEXT", nullable: false),
                    Date = table.Column<string>(type: "TEXT", nullable: false),
                    Place = table.Column<string>(type: "TEXT", nullable: false),
                    Material = table.Column<string>(type: "TEXT", nullable: false),
                    State = table.Column<string>(type: "TEXT", nullable: false),
                    Entries = table.Column<int>(type: "INTEGER", nullable: false),
                    Photos = table.Column<int>(type: "INTEGER", nullable: false),
                    Conflicts = table.Column<int>(type: "INTEGER", nullable: false),
                    Severity = table.Column<string>(type: "TEXT", nullable: true),
                    Problem = table.Column<string>(type: "TEXT", nullable: true),
                    Verdict = table.Column<string>(type: "TEXT", nullable: true),
                    DecidedBy = table.Column<string>(type: "TEXT", nullable: true),
                    DecidedAt = table.Column<long>(type: "INTEGER", nullable: true),
                    Keyed = table.Column<string>(type: "TEXT", nullable: true),
                    ReadBack = table.Column<string>(type: "TEXT", nullable: true),
                    BegunAt = table.Column<long>(type: "INTEGER", nullable: false),
                    BegunBy = table.Column<string>(type: "TEXT", nullable: false),
                    LastNumber = table.Column<long>(type: "INTEGER", nullable: false),
                    Search = table.Column<string>(type: "TEXT", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_tests", x => x.Id);
                });

            migrationBuilder.CreateIndex(
                name: "IX_entries_Id",
                table: "entries",
                column: "Id",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "IX_entries_Subject_Number",
                table: "entries",
                columns: new[] { "Subject", "Number" });

            migrationBuilder.CreateIndex(
                name: "IX_spreader_events_Spreader_Number",
                table: "spreader_events",
                columns: new[] { "Spreader", "Number" });

            migrationBuilder.CreateIndex(
                name: "IX_tests_LastNumber",
                table: "tests",
                column: "LastNumber");

            migrationBuilder.CreateIndex(
                name: "IX_tests_Spreader_LastNumber",
                table: "tests",
                columns: new[] { "Spreader", "LastNumber" });

            migrationBuilder.CreateIndex(
                name: "IX_tests_State_LastNumber",
                table: "tests",
                columns: new[] { "State", "LastNumber" });

            // Entries are only ever added; this stops a mistake in a program or a hand at the database.
            migrationBuilder.Sql(
                "CREATE TRIGGER entries_stay_1 BEFORE UPDATE ON entries BEGIN SELECT RAISE(ABORT, 'entries are never changed'); END;");
            migrationBuilder.Sql(
                "CREATE TRIGGER entries_stay_2 BEFORE DELETE ON entries BEGIN SELECT RAISE(ABORT, 'entries are never removed'); END;");
            // "LnWr": tells our files from others'.
            migrationBuilder.Sql("PRAGMA application_id = 1282299762;");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "entries");

            migrationBuilder.DropTable(
                name: "photos");

            migrationBuilder.DropTable(
                name: "quarantine");

            migrationBuilder.DropTable(
                name: "register_items");

            migrationBuilder.DropTable(
                name: "spreader_events");

            migrationBuilder.DropTable(
                name: "test_results");

            migrationBuilder.DropTable(
                name: "tests");
        }
    }
}
