using System.Globalization;
using System.Text.Json;
using CsCheck;
using Lanewright.Core.Exchange;

namespace Lanewright.Core.Tests.Exchange;

public class LiveSheetTests
{
    // Invented data: a closed loop with the answer worked out by hand below.
    private static Dictionary<string, string> Typed(int runs = 3, int containers = 2)
    {
        var fields = new Dictionary<string, string>
        {
            ["kind"] = "drop-test", ["units"] = "us", ["culture"] = "en-US", ["spreader.id"] = "HR-104",
            ["spreader.loop"] = "closed", ["spreader.constant"] = "pulses-per-mass", ["spreader.unit"] = "pulse/lb",
            ["spreader.resolution"] = "0.1", ["spreader.current"] = "11.4", ["material.name"] = "white rock salt",
            ["scale.id"] = "bench", ["scale.division"] = "0.1", ["scale.capacity"] = "150", ["scale.class"] = "iii",
            ["scale.verified"] = "2026-04-14", ["commonError"] = "yes", ["date"] = "2026-10-06",
        };
        for (var r = 0; r < runs; r++)
        {
            fields[$"runs[{r}].pulses"] = (1000 + (10 * r)).ToString(CultureInfo.InvariantCulture);
            fields[$"runs[{r}].filled"] = containers.ToString(CultureInfo.InvariantCulture);
            for (var c = 0; c < containers; c++)
            {
                fields[$"runs[{r}].containers[{c}].tare"] = "2.5";
                fields[$"runs[{r}].containers[{c}].gross"] = "42.5";
            }
        }

        return fields;
    }

    private static string Input(Dictionary<string, string> fields, string culture = "en-US") =>
        JsonSerializer.Serialize(new { culture, units = "us", fields });

    private static JsonElement Answer(Dictionary<string, string> fields, string culture = "en-US") =>
        JsonDocument.Parse(LiveSheet.Answer(Input(fields, culture))).RootElement;

    private static string[] ToDo(JsonElement answer) =>
        [.. answer.GetProperty("todo").EnumerateArray().Select(item => item.GetProperty("path").GetString()!)];

    [Theory]
    [InlineData("1800", "en-US", null)]
    [InlineData("2,730", "en-US", "Run 2 lasted 45 min;")]
    [InlineData("10834.2", "en-US", "Run 2 lasted 3 h 0 min;")]
    [InlineData("10834,2", "de-DE", "Run 2 lasted 3 h 0 min;")]
    [InlineData("119 min", "en-US", "Run 2 lasted 1 h 59 min;")]
    public void A_timer_that_was_left_running_is_doubted_beside_its_field_and_not_refused(string time, string culture, string? said)
    {
        var fields = Typed();
        fields["culture"] = culture;
        fields["spreader.current"] = culture == "en-US" ? "11.4" : "11,4";
        fields["runs[1].time"] = time;
        foreach (var unready in new[] { false, true })
        {
            if (unready) fields.Remove("runs[1].filled");
            var answer = Answer(fields, culture);
            var about = answer.GetProperty("fields").GetProperty("runs[1].time");
            Assert.Equal(said is not null, about.TryGetProperty("problem", out var problem));
            if (said is null) continue;
            Assert.StartsWith(said, problem.GetProperty("message").GetString(), StringComparison.Ordinal);
            Assert.Contains("type the seconds", problem.GetProperty("action").GetString(), StringComparison.Ordinal);
            Assert.Equal("warn", problem.GetProperty("severity").GetString());
            Assert.Single(answer.GetProperty("findings").EnumerateArray(), one => one.GetProperty("code").GetString() == "run.long");
        }
    }

    [Fact]
    public void What_is_found_of_the_runs_of_one_setting_names_the_setting()
    {
        var fields = Typed(4);
        fields["spreader.loop"] = "open";
        fields["spreader.constant"] = "mass-per-time";
        fields["spreader.unit"] = "lb/min";
        fields.Remove("spreader.current");
        for (var r = 0; r < 4; r++) fields[$"runs[{r}].time"] = "60";
        fields["runs[0].setting"] = fields["runs[1].setting"] = "30 %";
        fields["runs[2].setting"] = fields["runs[3].setting"] = "60 %";
        var two = Answer(fields).GetProperty("findings").EnumerateArray().Where(one => one.GetProperty("code").GetString() == "run.two")
            .Select(one => one.GetProperty("field").GetString());
        Assert.Equal(["runs at 30 %", "runs at 60 %"], two.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_whole_test_gives_the_value_to_key_in_and_what_it_meant_on_the_road()
    {
        var answer = Answer(Typed());
        var result = Assert.Single(answer.GetProperty("results").EnumerateArray());
        // 3,030 pulses by 240 lb is 12.625 pulse/lb; 11.4 / 12.625 is 90.3 % of what was asked.
        Assert.Equal("12.6", result.GetProperty("keyIn").GetProperty("number").GetString());
        Assert.Contains("9.7 % too little", result.GetProperty("road").GetString(), StringComparison.Ordinal);
        Assert.Equal("80.0 lb", answer.GetProperty("runs")[0].GetProperty("net").GetString());
        Assert.Empty(ToDo(answer));
        foreach (var picture in result.GetProperty("pictures").EnumerateObject())
        {
            Assert.StartsWith("<svg", picture.Value.GetString(), StringComparison.Ordinal);
            Assert.Contains("<desc", picture.Value.GetString(), StringComparison.Ordinal);
            Assert.DoesNotContain("style=", picture.Value.GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_catch_weighed_in_part_shows_its_running_total_and_stays_out_of_the_answer()
    {
        var fields = Typed();
        fields.Remove("runs[2].containers[1].gross");
        var answer = Answer(fields);
        var run = answer.GetProperty("runs")[2];
        Assert.False(run.GetProperty("ready").GetBoolean());
        Assert.Equal("40.0 lb", run.GetProperty("net").GetString());
        Assert.Equal(2, answer.GetProperty("results")[0].GetProperty("runs").GetArrayLength());
        Assert.Equal(["runs[2].containers[1].gross"], ToDo(answer));
        fields.Remove("runs[2].containers[1].tare");
        Assert.Equal(["runs[2].filled"], ToDo(Answer(fields)));
    }

    [Fact]
    public void Nothing_typed_says_what_to_do_first_and_finds_nothing_wrong()
    {
        var answer = Answer([]);
        Assert.Equal("spreader.id", ToDo(answer)[0]);
        Assert.Empty(answer.GetProperty("findings").EnumerateArray());
        Assert.Empty(answer.GetProperty("results").EnumerateArray());
    }

    [Fact]
    public void A_cleared_run_does_not_count_and_findings_keep_the_typed_place()
    {
        var fields = Typed(4);
        foreach (var path in fields.Keys.Where(path => path.StartsWith("runs[1]", StringComparison.Ordinal)).ToList())
            fields[path] = "";
        fields["runs[2].containers[1].gross"] = "42.53";
        var answer = Answer(fields);
        Assert.Equal(3, answer.GetProperty("results")[0].GetProperty("runs").GetArrayLength());
        Assert.Equal(
            "weigh.off-division",
            answer.GetProperty("fields").GetProperty("runs[2].containers[1].gross").GetProperty("problem")
                .GetProperty("code").GetString());
    }

    [Fact]
    public void A_weighing_of_the_truck_is_answered_at_the_fields_it_was_typed_in()
    {
        var fields = Typed(0);
        fields["scale.capacity"] = "100,000";
        fields["scale.division"] = "20";
        fields["runs[3].pulses"] = "37500";
        fields["runs[3].truck.before"] = "43210";
        fields["runs[3].truck.after"] = "40210";
        fields["runs[3].truck.samePeople"] = "yes";
        fields["runs[3].truck.fuelBurnt.amount"] = "2";
        var answer = Answer(fields);
        Assert.Equal("2,998 lb", answer.GetProperty("runs")[0].GetProperty("net").GetString());
        var at = answer.GetProperty("fields");
        Assert.Equal("43,210 lb", at.GetProperty("runs[3].truck.before").GetProperty("echo").GetString());
        Assert.Equal(
            "weigh.off-division",
            at.GetProperty("runs[3].truck.before").GetProperty("problem").GetProperty("code").GetString());
    }

    [Theory]
    [InlineData("containers[0].tare", "-3", "containers[0].tare", "weigh.negative-reading")]
    [InlineData("containers[1].gross", "1e5", "containers[1].gross", "weigh.overload")]
    [InlineData("containers[1].gross", "2.4", "containers[1].gross", "weigh.lighter-when-full")]
    [InlineData("containers[1].gross", "2.5", "containers[1].gross", "weigh.lighter-when-full")]
    public void A_reading_that_cannot_be_is_said_beside_its_field_at_once_complete_or_not(string field, string text, string at, string code)
    {
        foreach (var pulses in (string[])["", "1000"])
        {
            var fields = Typed(1);
            fields["runs[0].pulses"] = pulses;
            fields["runs[0]." + field] = text;
            var answer = Answer(fields);
            Assert.Equal(
                code, answer.GetProperty("fields").GetProperty("runs[0]." + at).GetProperty("problem").GetProperty("code").GetString());
            Assert.Single(answer.GetProperty("findings").EnumerateArray(), finding => finding.GetProperty("code").GetString() == code);
        }
    }

    [Fact]
    public void A_truck_that_lost_nothing_is_said_at_once_unless_something_joined_it()
    {
        var fields = Typed(0);
        fields["scale.capacity"] = "100,000";
        fields["runs[0].truck.before"] = "40000";
        fields["runs[0].truck.after"] = "40010";
        Assert.Equal("weigh.nothing-caught", Code());
        fields["runs[0].truck.changes[0].what"] = "a person";
        fields["runs[0].truck.changes[0].joined"] = "yes";
        fields["runs[0].truck.changes[0].amount"] = "200";
        Assert.NotEqual("weigh.nothing-caught", Code());

        string? Code() => Answer(fields).GetProperty("fields").GetProperty("runs[0].truck.after") is var after
            && after.TryGetProperty("problem", out var problem) ? problem.GetProperty("code").GetString() : null;
    }

    [Fact]
    public void A_number_with_two_meanings_is_asked_about_with_both_readings()
    {
        var fields = Typed();
        fields["culture"] = "de-DE";
        fields["spreader.resolution"] = "0,1";
        fields["spreader.current"] = "11,4";
        fields["runs[0].containers[0].gross"] = "1.250";
        var problem = Answer(fields).GetProperty("fields").GetProperty("runs[0].containers[0].gross").GetProperty("problem");
        var choices = problem.GetProperty("choices").EnumerateArray().Select(choice => choice.GetString()!).ToArray();
        Assert.Equal(2, choices.Length);
        foreach (var choice in choices)
        {
            fields["runs[0].containers[0].gross"] = choice;
            var again = Answer(fields).GetProperty("fields").GetProperty("runs[0].containers[0].gross");
            Assert.True(again.TryGetProperty("echo", out _), $"{choice} has one meaning");
        }
    }

    [Fact]
    public void The_test_reads_its_numbers_in_its_own_culture_whatever_the_page_shows()
    {
        var fields = Typed();
        fields["culture"] = "nb-NO";
        foreach (var (path, text) in fields.Where(f => f.Value.Contains('.', StringComparison.Ordinal)).ToList())
            fields[path] = text.Replace('.', ',');
        Assert.Equal(
            "12,6", Answer(fields).GetProperty("results")[0].GetProperty("keyIn").GetProperty("number").GetString());
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{")]
    [InlineData("{\"fields\": 3}")]
    [InlineData("{\"fields\": {\"runs\": \"x\", \"runs[0].pulses\": \"3\", \"..\": \"\", \"a b\": \"1\"}}")]
    public void Whatever_comes_in_an_answer_comes_out(string json)
    {
        JsonDocument.Parse(LiveSheet.Answer(json));
        JsonDocument.Parse(LiveSheet.Plan(json));
    }

    [Fact]
    public void No_state_of_typing_throws()
    {
        var all = Typed(2);
        all["runs[0].truck.before"] = "3";
        all["runs[1].whole.gross"] = "4";
        var paths = all.Keys.ToArray();
        string[] texts = ["", " ", "0", "-1", "1,250", "1.2.3", "x", "NaN", "1e999", "5 kg", "9999999999999", "\u0000"];
        Gen.Select(Gen.Int[0, paths.Length - 1].Array[6], Gen.Int[0, texts.Length - 1].Array[6]).Sample(
            (changed, values) =>
            {
                var fields = new Dictionary<string, string>(all);
                for (var i = 0; i < changed.Length; i++) fields[paths[changed[i]]] = texts[values[i]];
                JsonDocument.Parse(LiveSheet.Answer(Input(fields)));
            },
            iter: 150, threads: 1);
    }

    [Fact]
    public void A_plan_comes_with_cautions_first_and_without_a_scale_with_cautions_only()
    {
        var json = JsonSerializer.Serialize(new { method = "containers", delivery = "200", fields = Typed(0) });
        var plan = JsonDocument.Parse(LiveSheet.Plan(json)).RootElement;
        Assert.NotEmpty(plan.GetProperty("cautions").EnumerateArray());
        Assert.StartsWith("Drop ", plan.GetProperty("best").GetString(), StringComparison.Ordinal);
        Assert.Contains("s.", plan.GetProperty("time").GetString(), StringComparison.Ordinal);
        var bare = JsonDocument.Parse(LiveSheet.Plan("{\"method\": \"truck\", \"fields\": {}}")).RootElement;
        Assert.NotEmpty(bare.GetProperty("cautions").EnumerateArray());
        Assert.False(bare.TryGetProperty("best", out _));
    }

    // How fast it answers is measured in the browser, where it matters; here only that the size is no obstacle.
    [Fact]
    public void Ten_runs_of_eight_containers_have_ten_nets_and_nothing_left_to_do()
    {
        var answer = Answer(Typed(10, 8));
        Assert.Empty(ToDo(answer));
        Assert.Equal(10, answer.GetProperty("runs").GetArrayLength());
        Assert.All(answer.GetProperty("runs").EnumerateArray(), run => Assert.Equal("320.0 lb", run.GetProperty("net").GetString()));
    }
}
