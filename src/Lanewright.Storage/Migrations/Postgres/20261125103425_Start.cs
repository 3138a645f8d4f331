using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Lanewright.Storage.Migrations.Postgres
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
                    Number = table.Column<long>(type: "bigint", nullable: false),
                    Received = table.Column<long>(type: "bigint", nullable: false),
                    PreviousHash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Subject = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Device = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Seq = table.Column<long>(type: "bigint", nullable: false),
                    At = table.Column<long>(type: "bigint", nullable: false),
                    Zone = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Parent = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Why = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Payload = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_entries", x => x.Number);
                });

            migrationBuilder.CreateTable(
                name: "photos",
                columns: table => new
                {
                    EntryId = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sha256 = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Mime = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Received = table.Column<long>(type: "bigint", nullable: false),
                    Bytes = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_photos", x => x.EntryId);
                });

            migrationBuilder.CreateTable(
                name: "quarantine",
                columns: table => new
                {
                    Hash = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    EntryId = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Received = table.Column<long>(type: "bigint", nullable: false),
                    Status = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Reason = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Raw = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_quarantine", x => x.Hash);
                });

            migrationBuilder.CreateTable(
                name: "register_items",
                columns: table => new
                {
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Payload = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    EntryId = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Number = table.Column<long>(type: "bigint", nullable: false),
                    Retired = table.Column<bool>(type: "boolean", nullable: false),
                    Others = table.Column<string>(type: "text", nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_register_items", x => x.Id);
                });

            migrationBuilder.CreateTable(
                name: "spreader_events",
                columns: table => new
                {
                    EntryId = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Spreader = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Number = table.Column<long>(type: "bigint", nullable: false),
                    Event = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Note = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Date = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Person = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    At = table.Column<long>(type: "bigint", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_spreader_events", x => x.EntryId);
                });

            migrationBuilder.CreateTable(
                name: "test_results",
                columns: table => new
                {
                    Test = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Position = table.Column<int>(type: "integer", nullable: false),
                    Setting = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Unit = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Value = table.Column<double>(type: "double precision", nullable: false),
                    RelativeExpanded = table.Column<double>(type: "double precision", nullable: false),
                    Low = table.Column<double>(type: "double precision", nullable: false),
                    High = table.Column<double>(type: "double precision", nullable: false),
                    Probability = table.Column<double>(type: "double precision", nullable: false),
                    KeyIn = table.Column<double>(type: "double precision", nullable: true),
                    Conformity = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Share = table.Column<double>(type: "double precision", nullable: true),
                    ShareExpanded = table.Column<double>(type: "double precision", nullable: true),
                    Tolerance = table.Column<double>(type: "double precision", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_test_results", x => new { x.Test, x.Position });
                });

            migrationBuilder.CreateTable(
                name: "tests",
                columns: table => new
                {
                    Id = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Kind = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Spreader = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    SpreaderName = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Title = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Date = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Place = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Material = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    State = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Entries = table.Column<int>(type: "integer", nullable: false),
                    Photos = table.Column<int>(type: "integer", nullable: false),
                    Conflicts = table.Column<int>(type: "integer", nullable: false),
                    Severity = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Problem = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    Verdict = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    DecidedBy = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    DecidedAt = table.Column<long>(type: "bigint", nullable: true),
                    Keyed = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    ReadBack = table.Column<string>(type: "text", nullable: true, collation: "C"),
                    BegunAt = table.Column<long>(type: "bigint", nullable: false),
                    BegunBy = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    LastNumber = table.Column<long>(type: "bigint", nullable: false),
                    Search = table.Column<string>(type: "text", nullable: false, collation: "C")
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
                "CREATE FUNCTION entries_stay() RETURNS trigger LANGUAGE plpgsql AS "
                + "$$ BEGIN RAISE EXCEPTION 'entries are never changed or removed'; END $$;");
            migrationBuilder.Sql(
                "CREATE TRIGGER entries_stay BEFORE UPDATE OR DELETE OR TRUNCATE ON entries "
                + "FOR EACH STATEMENT EXECUTE FUNCTION entries_stay();");
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

            migrationBuilder.Sql("DROP FUNCTION entries_stay();");
        }
    }
}
