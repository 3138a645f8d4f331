using System.Text.Json;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Practice;

namespace Lanewright.Core.Tests.Practice;

public sealed class PracticeGameTests
{
    public static TheoryData<int> Exercises => [.. PracticeExercises.All.Select(e => e.Number)];

    [Fact]
    public void There_are_at_least_ten_exercises_one_of_them_healthy()
    {
        Assert.Equal(Enumerable.Range(1, PracticeExercises.All.Count), PracticeExercises.All.Select(e => e.Number));
        Assert.True(PracticeExercises.All.Count >= 10);
        Assert.Contains(PracticeExercises.All, e => e.Cause is Cause.NothingWrong);
        Assert.Equal(4, PracticeExercises.All.Select(e => e.Situation).Distinct().Count());
    }

    /// <summary>Solvable: from the runs that were planned the diagnosis puts the truth in the first three.</summary>
    [Theory]
    [MemberData(nameof(Exercises))]
    public void An_exercise_can_be_solved_from_its_runs(int number)
    {
        var state = new PracticeState(number, 1, [], []);
        var setup = state.Setup();
        var runs = setup.Runs.Select(r => (PracticeAction)new MakeRun(r.Setting, Math.Clamp(r.Seconds, 5, 300), r.Speed));
        var game = PracticeGame.Look(state with { Actions = [.. runs, new NameCause(setup.Cause)] });
        Assert.Empty(game.Problems);
        var end = game.End()!;
        Assert.True(end.Right);
        Assert.Null(end.Separating);
        Assert.InRange(end.Rank, 1, 3);
    }

    [Theory]
    [MemberData(nameof(Exercises))]
    public void A_further_run_never_changes_what_earlier_ones_gave(int number)
    {
        var actions = new List<PracticeAction>();
        IReadOnlyList<(string, string)> before = [];
        for (var i = 0; i < 5; i++)
        {
            actions.Add(new MakeRun(0.3 + (0.1 * i), 40, PracticeExercises.Find(number)!.Situation is TestSituation.RoadCheck ? 8 + i : 0));
            actions.Add(new DoTest(NextTests.All[i].Code));
            var now = PracticeGame.Look(new(number, 1, [.. actions], [])).Sheet!.Fields;
            Assert.Equal(before, now.Take(before.Count));
            before = now;
        }
    }

    [Fact]
    public void A_wrong_answer_is_told_the_test_that_would_have_shown_it()
    {
        var end = PracticeGame.Look(new(1, 1, [new MakeRun(0.5, 60, 0), new NameCause(Cause.Wear)], [])).End()!;
        Assert.False(end.Right);
        Assert.Equal(Cause.MassUnit, end.Truth.Cause);
        Assert.True(end.Separating!.ChanceUnder(Cause.MassUnit) > 0.5);
    }

    [Fact]
    public void Drawn_spreaders_are_the_same_for_a_seed_and_a_third_is_healthy()
    {
        Assert.Equal(new PracticeState(0, 9, [], []).Setup().Cause, new PracticeState(0, 9, [], []).Setup().Cause);
        var healthy = Enumerable.Range(0, 300).Count(i => new PracticeState(0, (ulong)i, [], []).Setup().Cause is Cause.NothingWrong);
        // Binomial with n = 300, p = 1/3: four standard deviations are 33.
        Assert.InRange(healthy, 67, 133);
    }

    [Fact]
    public void A_page_plays_through()
    {
        const string Begun = """{"exercise": 6, "actions": []}""";
        const string Played = """
            {"exercise": "6", "culture": "de-DE", "actions": [{"do": "run", "setting": "50 %", "seconds": "30,5 s"}, {"do": "run", "setting": "50 %"},
             {"do": "test", "code": "look-in-hopper"}, {"do": "name", "code": "bridging"}]}
            """;
        var begun = JsonDocument.Parse(LivePractice.Answer(Begun)).RootElement;
        Assert.False(begun.GetProperty("ended").GetBoolean());
        Assert.False(begun.TryGetProperty("truth", out _));
        Assert.DoesNotContain("bridg", LivePractice.Answer(Begun), StringComparison.OrdinalIgnoreCase);
        var ended = JsonDocument.Parse(LivePractice.Answer(Played)).RootElement;
        Assert.True(ended.GetProperty("ended").GetBoolean() && ended.GetProperty("right").GetBoolean());
        Assert.Equal("bridging", ended.GetProperty("truth").GetString());
        Assert.Empty(ended.GetProperty("problems").EnumerateArray());
        Assert.Contains(ended.GetProperty("fields").EnumerateObject(), f => f.Name == "runs[1].pulses");
        Assert.NotEmpty(JsonDocument.Parse(LivePractice.Lists()).RootElement.GetProperty("tests").EnumerateArray());
    }

    [Theory]
    [InlineData("")]
    [InlineData("[1]")]
    [InlineData("{\"exercise\": -1, \"seed\": 1e400, \"actions\": [1, [], {}, {\"do\": \"fly\"}]}")]
    [InlineData("{\"exercise\": 999, \"actions\": [{\"do\": \"run\", \"setting\": \"900 %\"}]}")]
    [InlineData("{\"actions\": [{\"do\": \"run\", \"setting\": \"50 %\", \"seconds\": \"1e9 s\"}, {\"do\": \"test\", \"code\": \"x\"}, {\"do\": \"name\", \"code\": \"\"}]}")]
    [InlineData("{\"actions\": [{\"do\": \"run\", \"setting\": {\"a\": 1}}]}")]
    public void Nothing_that_is_sent_makes_it_throw_and_what_is_wrong_is_said(string json)
    {
        var answer = JsonDocument.Parse(LivePractice.Answer(json)).RootElement;
        Assert.NotEmpty(answer.GetProperty("problems").EnumerateArray());
        Assert.False(answer.GetProperty("ended").GetBoolean());
    }

    [Fact]
    public void Too_many_actions_are_cut_off()
    {
        var many = string.Join(",", Enumerable.Repeat("""{"do": "run", "setting": "50 %", "seconds": "300 s"}""", 500));
        var answer = JsonDocument.Parse(LivePractice.Answer($$"""{"exercise": 2, "actions": [{{many}}]}""")).RootElement;
        Assert.Equal(PracticeState.MostRuns, answer.GetProperty("fields").EnumerateObject().Count(f => f.Name.EndsWith(".pulses", StringComparison.Ordinal)));
    }
}
