using System.Net;
using System.Text;
using Lanewright.Core.Text;
using Lanewright.Lists;
using Lanewright.Office;

namespace Lanewright.Storage.Tests;

/// <summary>Lists of the register in CSV: what is shown before, what is written, what is refused, and files made to do harm.</summary>
public sealed class ImportTests(DemoServer server) : IClassFixture<DemoServer>
{
    private readonly EntryStore store = server.Store;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Uri Address => server.Client.BaseAddress!;

    [Theory]
    [InlineData("spreaders", 40)]
    [InlineData("scales", 6)]
    [InlineData("materials", 4)]
    [InlineData("people", 4)]
    public async Task An_export_comes_in_again_with_everything_unchanged(string list, int least)
    {
        var bytes = await server.Client.GetByteArrayAsync($"office/register/{list}.csv", Stop);
        var plan = await PlanAsync(bytes, list);
        Assert.Null(plan.Problem);
        Assert.True(plan.Rows.Count >= least);
        Assert.All(plan.Rows, row => Assert.Equal(RowFate.Unchanged, row.Fate));
    }

    [Fact]
    public async Task A_list_is_shown_first_then_written_and_what_is_refused_can_be_fetched()
    {
        using var browser = new OfficeBrowser(Address);
        var before = await store.LastAsync(Stop);
        const string list =
            "id;depot;loop;constant;unit;seasonMass\r\nHR-101;New Depot;closed;pulses-per-mass;pulse/lb;380,5 t\r\n"
            + "NEW-1;Quarry Road;closed;pulses-per-mass;pulse/lb;\r\nNEW-2;Quarry Road;closed;pulses-per-mass;pulse/lb;much\r\n"
            + "NEW-1;Quarry Road;open;mass-per-time;lb/min;\r\n";
        var form = OfficeBrowser.FormOf((await browser.OpenAsync("office/import")).Page, "/office/import");
        (form["kind"], form["culture"]) = ("spreaders", "de-DE");
        var sent = await browser.UploadAsync("office/import", form, Encoding.UTF8.GetBytes(list));
        Assert.Equal(HttpStatusCode.Found, sent.Status);
        var (_, page) = await browser.OpenAsync(sent.Location!);
        Assert.Contains("1 new, 1 changed, 0 unchanged, 2 refused.", page, StringComparison.Ordinal);
        Assert.Contains("380.5 t", page, StringComparison.Ordinal);
        Assert.Contains("&quot;much&quot; cannot be read as", page, StringComparison.Ordinal);
        Assert.Equal(before, await store.LastAsync(Stop));

        var report = (await browser.OpenAsync(sent.Location + "/refused.csv")).Page.TrimStart('\uFEFF').Split("\r\n");
        Assert.Equal("id,depot,loop,constant,unit,seasonMass,reason", report[0]);
        Assert.StartsWith("NEW-2,Quarry Road,closed,pulses-per-mass,pulse/lb,much,\"line 4: seasonMass:", report[1], StringComparison.Ordinal);
        Assert.Contains("Line 3 of the file has \"\"NEW-1\"\" too.", report[2], StringComparison.Ordinal);

        var silent = await browser.FillAsync(sent.Location!, sent.Location!, ("why", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, silent.Status);
        Assert.Equal(before, await store.LastAsync(Stop));
        var fields = OfficeBrowser.FormOf(page, sent.Location!);
        fields["why"] = "autumn list";
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync(sent.Location!, fields)).Status);
        // Once more by going back: nothing more is written.
        Assert.Equal(HttpStatusCode.Found, (await browser.SendAsync(sent.Location!, fields)).Status);
        Assert.Equal(before.Number + 2, (await store.LastAsync(Stop)).Number);
        var changed = (await store.RegisterAsync("spreader", Stop)).Single(item => item.Payload.Contains("\"HR-101\"", StringComparison.Ordinal));
        Assert.Contains("\"seasonMass\":\"380.5 t\"", changed.Payload, StringComparison.Ordinal);
        // A field without a column stays as it was.
        Assert.Contains("hydraulic motor", changed.Payload, StringComparison.Ordinal);
        var entry = (await store.FindAsync(changed.EntryId, Stop))!;
        Assert.Equal(("autumn list", "R.V."), (entry.Why, entry.Person));
        Assert.NotNull(entry.Parent);
    }

    [Fact]
    public async Task A_register_that_changed_after_the_preview_is_looked_at_again()
    {
        using var browser = new OfficeBrowser(Address);
        var form = OfficeBrowser.FormOf((await browser.OpenAsync("office/import")).Page, "/office/import");
        form["kind"] = "materials";
        var sent = await browser.UploadAsync("office/import", form, Encoding.UTF8.GetBytes("name\tsupplier\r\nlate salt\tX\r\n"));
        var fields = OfficeBrowser.FormOf((await browser.OpenAsync(sent.Location!)).Page, sent.Location!);
        await browser.FillAsync("office/materials/new", "/office/materials/new", ("f.name", "Late Salt"));
        var answer = await browser.SendAsync(sent.Location!, fields);
        Assert.Contains("The register changed meanwhile", answer.Page, StringComparison.Ordinal);
        Assert.Contains("0 new, 1 changed", answer.Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_like_a_formula_goes_out_as_text_and_comes_back_as_it_was()
    {
        var bytes = Encoding.UTF8.GetBytes("name,supplier\r\n\"=1+1\",'@x\r\n-5 salt,'plain\r\n");
        var plan = await PlanAsync(bytes, "materials");
        Assert.Equal(["=1+1", "-5 salt"], plan.Rows.Select(row => row.Name));
        var rows = plan.Rows.Select((row, i) => new RegisterRow(
            new() { Id = $"{i}", Kind = "material", Payload = row.Payload!, EntryId = $"{i}", Number = i, Retired = false, Others = "" },
            RegisterPayload.Texts(row.Payload!))).ToList();
        var text = string.Concat(ListExport.Rows(RegisterKind.Material, rows).Select(OfficeCsv.Line));
        Assert.DoesNotContain("\n=", text, StringComparison.Ordinal);
        var again = ListPlan.Of(Encoding.UTF8.GetBytes(text), RegisterKind.Material, rows, TextCulture.UnitedStates);
        Assert.All(again.Rows, row => Assert.Equal(RowFate.Unchanged, row.Fate));
    }

    public static TheoryData<string, byte[]> Hostile => new()
    {
        { "zero bytes", "id\0,depot\nA,B\n"u8.ToArray() },
        { "are not characters in UTF-8", [0x69, 0x64, 0x0A, 0xE9, 0x0A] },
        { "is empty", [] },
        { "is empty", [0xFF, 0xFE] },
        { "not the name of a field", "id,depto\nA,B\n"u8.ToArray() },
        { "Two columns", "id,ID\nA,B\n"u8.ToArray() },
        { "No column has the heading", "depot\nA\n"u8.ToArray() },
        { "may have at most", Encoding.ASCII.GetBytes("id\n" + new string('x', 10_000_000)) },
        { "quotes do not match", "id,depot\n\"A,B\nC,D\n"u8.ToArray() },
    };

    [Theory]
    [MemberData(nameof(Hostile))]
    public async Task A_file_that_cannot_be_used_is_refused_with_the_reason(string words, byte[] bytes)
    {
        var plan = await PlanAsync(bytes, "scales");
        Assert.NotNull(plan.Problem);
        Assert.Contains(words, OfficeText.Say(plan.Problem), StringComparison.Ordinal);
        Assert.Empty(plan.ChangesOf("x"));
    }

    [Fact]
    public async Task A_file_too_large_for_the_page_is_answered_by_the_page()
    {
        using var browser = new OfficeBrowser(Address);
        var form = OfficeBrowser.FormOf((await browser.OpenAsync("office/import")).Page, "/office/import");
        var answer = await browser.UploadAsync("office/import", form, new byte[6_000_000]);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.Status);
        Assert.Contains("at most 5 MB", answer.Page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await browser.OpenAsync("office/import/0123")).Status);
    }

    [Fact]
    public async Task Two_byte_text_with_its_mark_is_read()
    {
        var bytes = Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes("id;capacity (kg)\r\nwaage ü;\"150,5\"\r\n")).ToArray();
        var plan = await PlanAsync(bytes, "scales", TextCulture.German);
        var row = Assert.Single(plan.Rows);
        Assert.Equal((RowFate.New, "waage ü"), (row.Fate, row.Name));
        Assert.Contains("\"capacity\":\"150.5 kg\"", row.Payload, StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_rows_than_allowed_are_refused_as_a_whole()
    {
        var text = new StringBuilder("name,role\n");
        for (var i = 0; i <= ListFile.MostRows; i++) text.Append('P').Append(i).Append(",viewer\n");
        Assert.Contains("more than 20,000 rows", OfficeText.Say((await PlanAsync(Encoding.ASCII.GetBytes(text.ToString()), "people")).Problem!), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Mutated_files_never_break_the_program_and_what_they_write_reads_back()
    {
        var register = await RowsAsync(RegisterKind.Spreader);
        var sound = Encoding.UTF8.GetBytes(string.Concat(ListExport.Rows(RegisterKind.Spreader, [.. register.Take(6)]).Select(OfficeCsv.Line)));
        var random = new Random(20261125);
        for (var i = 0; i < 2000; i++)
        {
            var bytes = Mutated(sound, random);
            var plan = ListPlan.Of(bytes, RegisterKind.Spreader, register, random.Next(2) == 0 ? TextCulture.UnitedStates : TextCulture.German);
            foreach (var row in plan.Rows)
            {
                Assert.Equal(row.Fate is RowFate.Refused, row.Findings.Count > 0);
                if (row.Payload is null) continue;
                var read = Core.Exchange.TreeFields.Read(
                    Core.Exchange.JsonTree.Read(row.Payload), TextCulture.Invariant, Core.Register.RegisterReader.Spreader);
                Assert.True(read.IsUsable, row.Payload);
            }
        }
    }

    [Fact]
    public async Task The_command_takes_a_list_in_and_with_check_writes_nothing()
    {
        await using var records = TestRecords.InFolder();
        var file = Path.Combine(records.Place.DataFolder!, "list.csv");
        await File.WriteAllTextAsync(file, "name,role\nA.A.,operator\nB.B.,king\n", Stop);
        var nobody = await RunAsync("register", file, "--kind", "people", "--data", records.Place.DataFolder!);
        Assert.Equal(1, nobody.Code);
        Assert.Contains("--person", nobody.Error, StringComparison.Ordinal);
        string[] given = ["register", file, "--kind", "people", "--data", records.Place.DataFolder!];
        (await records.OpenAsync()).Release();
        var check = await RunAsync([.. given, "--check"]);
        Assert.Contains("1 new, 0 changed, 0 unchanged, 1 refused. Nothing was written.", check.Output, StringComparison.Ordinal);
        Assert.Contains("line 3, B.B.: role: \"king\" is not one of the words", check.Error, StringComparison.Ordinal);
        Assert.Empty(await (await records.OpenAsync()).RegisterAsync(Stop));
        var done = await RunAsync([.. given, "--person", "R.V."]);
        Assert.Equal(2, done.Code);
        Assert.Single(await (await records.OpenAsync()).RegisterAsync(Stop));
    }

    private static async Task<(int Code, string Output, string Error)> RunAsync(params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        var root = new System.CommandLine.RootCommand { Commands.RegisterCommand.Make() };
        var code = await root.Parse(arguments).InvokeAsync(new() { Output = output, Error = error }, Stop);
        return (code, output.ToString(), error.ToString());
    }

    private async Task<IReadOnlyList<RegisterRow>> RowsAsync(RegisterKind kind)
    {
        using var data = new OfficeData(store, TimeProvider.System);
        return await data.RowsAsync(kind, Stop);
    }

    private async Task<ListPlan> PlanAsync(byte[] bytes, string list, TextCulture? culture = null)
    {
        var kind = RegisterKind.Find(list)!;
        return ListPlan.Of(bytes, kind, await RowsAsync(kind), culture ?? TextCulture.UnitedStates);
    }

    private static byte[] Mutated(byte[] sound, Random random)
    {
        var bytes = sound.ToList();
        for (var i = random.Next(1, 6); i > 0; i--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(6))
            {
                case 0: bytes[at] = (byte)random.Next(256); break;
                case 1: bytes.Insert(at, (byte)"\",;\t\r\n='\0 "[random.Next(10)]); break;
                case 2: bytes.RemoveRange(at, Math.Min(random.Next(1, 30), bytes.Count - at)); break;
                case 3: bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(1, 60), bytes.Count - at))); break;
                case 4: bytes.InsertRange(at, Encoding.UTF8.GetBytes(random.Next(2) == 0 ? "1e999" : "\u202E𝟙½")); break;
                default: bytes.Reverse(at, Math.Min(4, bytes.Count - at)); break;
            }

            if (bytes.Count == 0) return [];
        }

        return [.. bytes];
    }
}
