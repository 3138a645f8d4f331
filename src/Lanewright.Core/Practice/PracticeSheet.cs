using System.Globalization;
using Lanewright.Core.Diagnosis;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;
using R = Lanewright.Core.Diagnosis.EffectRanges;

namespace Lanewright.Core.Practice;

/// <summary>
/// Makes the runs of a practice setup and writes what people would have typed: an ordinary sheet, field by field. What really
/// happened is kept beside it.
/// </summary>
public sealed class PracticeSheet
{
    private const double PailFill = 15;
    private const double Truckload = 9000;

    private readonly PracticeSetup setup;
    private readonly RandomSource physics;
    private readonly RandomSource paper;
    private readonly Unit unit;
    private readonly List<(string Path, string Text)> fields = [];
    private readonly List<RunTruth> truths = [];
    private readonly SimulatedSession session;
    private readonly double roadError;

    // With the container on, the scale was set to zero: tares of zero that are right.
    private readonly bool zeroed;

    private PracticeSheet(PracticeSetup setup, ulong seed, ulong stream)
    {
        this.setup = setup;
        physics = new(seed, (stream * 4) + 2);
        paper = new(seed, (stream * 4) + 3);
        unit = setup.Metric ? Units.Kilogram : Units.Pound;
        session = new(setup.Truck, setup.Dials, setup.SessionMass, 20 * setup.SessionMass);
        roadError = R.RoadCommon * physics.NextNormal();
        zeroed = paper.NextDouble() < Marks.AllZeroOther && setup.Dials.TareForgotten is null;
        Head();
        for (var i = 0; i < setup.Runs.Count; i++) Run(i);
    }

    /// <summary>Paths and texts as typed.</summary>
    public IReadOnlyList<(string Path, string Text)> Fields => fields;

    /// <summary>What each run really did.</summary>
    public IReadOnlyList<RunTruth> Truths => truths;

    /// <summary>The hopper after the session.</summary>
    public SimulatedSession Session => session;

    /// <summary>Makes the runs of a setup.</summary>
    /// <param name="setup">The setup.</param>
    /// <param name="seed">Seed.</param>
    /// <param name="stream">Number of the case.</param>
    public static PracticeSheet Of(PracticeSetup setup, ulong seed, ulong stream) => new(setup, seed, stream);

    /// <summary>The sheet as read by Core, with its report and all that a diagnosis looks at.</summary>
    public DiagnosisInput Input()
    {
        var typed = TypedFields.Of(fields.Select(f => new KeyValuePair<string, string>(f.Path, f.Text)));
        var reading = SheetReader.Read(typed.Tree);
        var sheet = reading.Value ?? throw new InvalidOperationException(
            "A practice sheet could not be read: " + string.Join("; ", reading.Findings.Select(f => f.Field + " " + f.Kind.Code)));
        return new() { Report = SheetAnalysis.Analyse(sheet), Earlier = setup.Earlier, Sisters = setup.Sisters, Facts = setup.Facts };
    }

    private void Head()
    {
        var check = setup.Situation is TestSituation.StandingCheck or TestSituation.RoadCheck;
        var timed = setup.Situation is TestSituation.TimedDrop;
        Add("kind", check ? "verification" : "drop-test");
        Add("title", "Practice");
        Add("invented", "yes");
        Add("date", PracticeSetup.Today.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Add("units", setup.Metric ? "si" : "us");
        Add("spreader.id", "practice");
        Add("spreader.metering", setup.Truck.Chain ? "drag chain" : "auger");
        Add("spreader.loop", timed ? "open" : "closed");
        Add("spreader.constant", timed ? "mass-per-time" : "pulses-per-mass");
        Add("spreader.unit", timed ? (setup.Metric ? "kg/min" : "lb/min") : setup.Metric ? "pulse/kg" : "pulse/lb");
        if (!timed) Add("spreader.current", Plain(1 / setup.Keyed * (setup.Metric ? 1 : 0.45359237)));
        Add("material.name", "salt (invented)");
        Add("scale.id", setup.Scale.Id);
        Add("scale.kind", setup.Scale.Kind is ScaleKind.Vehicle ? "vehicle" : setup.Pails ? "platform" : "pallet");
        Add("scale.class", setup.Scale.Class is ScaleClass.IIIL ? "iii-l" : "iii");
        Add("scale.capacity", Plain(unit.FromSi(setup.Scale.Capacity!.Value.Si)));
        Add("scale.division", Plain(unit.FromSi(setup.Scale.Division!.Value.Si)));
        Add("scale.verified", setup.Scale.Verified!.Value.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        Add("commonError", "yes");
        if (timed) Add("timingUncertainty", "0.3 s");
    }

    private void Run(int index)
    {
        var (at, plan, dials) = ($"runs[{index}]", setup.Runs[index], setup.Dials);
        var progress = setup.SessionRuns < 2 ? 0 : Math.Min(1, index / (double)(setup.SessionRuns - 1));
        var scatter = Elementary.Exp(setup.Truck.Scatter * physics.NextNormal());
        var speedScatter = Elementary.Exp(R.ShaftScatter * physics.NextNormal());
        var (spill, phase, roadRun) = (physics.NextNormal(), physics.NextDouble(), R.RoadRun * physics.NextNormal());
        var timing = 0.3 * physics.NextNormal();
        var road = setup.Situation is TestSituation.RoadCheck;
        var shaft = setup.Truck.Shaft(plan.Setting, dials, index, progress) * speedScatter;
        var asked = 0.0;
        if (road)
        {
            // The controller makes the pulses that its constant, its speed and its distance call for.
            asked = plan.Seconds * setup.Truck.Shaft(plan.Setting, new()) * setup.MassByTurn;
            var speed = dials.SpeedStuck > 0 ? dials.SpeedStuck / plan.Speed : 1;
            var pulses = asked / setup.Keyed * dials.ConstantInController * dials.Distance * speed * Elementary.Exp(roadError + roadRun);
            var byTurn = setup.Truck.Teeth * dials.Teeth * dials.PulsesCounted * (1 - (dials.PulsesMissed * (0.5 + (0.5 * plan.Setting))));
            shaft = pulses / byTurn / plan.Seconds;
        }

        var truth = session.Run(index, plan.Setting, shaft, plan.Seconds, scatter, spill, phase);
        truths.Add(truth);
        Add($"{at}.setting", plan.Speed > 0 ? Plain(Math.Round(plan.Speed * 3.6)) + " km/h" : PracticeSetup.Percent(plan.Setting));
        if (setup.Written.Engine && !road)
            Add($"{at}.engineSpeed", Plain(Math.Round(setup.Truck.Engine.Si * dials.Engine * 60 / 10) * 10) + " rpm");
        if (setup.Written.Times && !road) Add($"{at}.time", Plain(Math.Round((plan.Seconds + timing) * 10) / 10) + " s");
        if (setup.Situation is not TestSituation.TimedDrop)
        {
            if (setup.Situation is TestSituation.CountedDrop || setup.Written.Pulses)
                Add($"{at}.pulses", Counted(dials.DigitDropped == index ? truth.Pulses / 10 : truth.Pulses));
        }

        if (setup.Written.Turns && !road) Add($"{at}.revolutions", Counted((long)Math.Floor(truth.Turns + phase)));
        if (setup.Situation is TestSituation.StandingCheck)
            Add($"{at}.delivered", Mass(truth.Pulses * setup.Keyed / dials.ConstantInController, 0.05));
        if (road) Add($"{at}.delivered", Mass(asked * dials.Said, 1));
        Oil(at, index);
        Gate(at, index);
        Weigh(at, index, truth.Caught, progress);
        if (dials.DigitsSwapped && index == (setup.SwapIn ?? (setup.Runs.Count - 1)))
            SwapDigits(setup.SwapIn is null ? "runs[" : at + ".");
    }

    private void Oil(string at, int index)
    {
        if (setup.Situation is not TestSituation.TimedDrop) return;
        var cold = index == 0 && paper.NextDouble() < (setup.Dials.ColdOil > 0 ? Marks.ColdWritten : Marks.ColdOther);
        Add($"{at}.oil", cold ? "cold" : "warm");
    }

    private double? gateWritten;

    private void Gate(string at, int index)
    {
        if (setup.Facts.Gate is not { } usual || !setup.Written.Gate) return;
        if (index == 0) gateWritten = setup.Dials.Gate != 1 && paper.NextDouble() < Marks.GateWritten ? usual * setup.Dials.Gate : usual;
        Add($"{at}.gate", Plain(Math.Round(gateWritten!.Value / 0.0254 * 16) / 16) + " in");
    }

    private void Weigh(string at, int index, double mass, double progress)
    {
        if (setup.Situation is TestSituation.RoadCheck) Truck(at, index, mass, progress);
        else if (setup.Pails) Pails(at, index, mass, progress);
        else Bin(at, index, mass, progress);
    }

    private void Pails(string at, int index, double mass, double progress)
    {
        var count = Math.Max(2, (int)Math.Ceiling(mass / PailFill));
        var missing = setup.Dials.ContainerMissing == index ? paper.NextInt(count) : -1;
        if (setup.Written.Filled && setup.Dials.ContainerMissing is null) Add($"{at}.filled", Counted(count));
        var left = mass;
        var written = 0;
        for (var i = 0; i < count; i++)
        {
            var fill = i == count - 1 ? left : Math.Min(left, mass / count * (1 + (0.04 * paper.NextNormal())));
            left -= fill;
            var tare = setup.Tare * (1 + (0.03 * paper.NextNormal()));
            if (i == missing) continue;
            var (low, high) = (Reads(tare, progress), Reads(tare + fill, progress));
            var at2 = $"{at}.containers[{written++}]";
            Add($"{at2}.tare", zeroed || Forgotten(index) ? Plain(0) : Mass(low));
            Add($"{at2}.gross", zeroed ? Mass(high - low) : Mass(high));
        }
    }

    private void Bin(string at, int index, double mass, double progress)
    {
        var tare = setup.Tare * (1 + (0.01 * paper.NextNormal()));
        var (low, high) = (Reads(tare, progress), Reads(tare + mass, progress));
        Add($"{at}.whole.tare", zeroed || Forgotten(index) ? Plain(0) : Mass(low));
        Add($"{at}.whole.gross", zeroed ? Mass(high - low) : Mass(high));
    }

    private void Truck(string at, int index, double mass, double progress)
    {
        var empty = Truckload * (1 + (0.1 * paper.NextDouble()));
        var person = setup.Dials.PersonRun == index ? setup.Dials.Person : 0;
        Add($"{at}.truck.before", Mass(Reads(empty + mass + setup.Dials.Fuel + Math.Max(0, person), progress)));
        Add($"{at}.truck.after", Mass(Reads(empty + Math.Max(0, -person), progress)));
        var (people, fuel) = (paper.NextDouble(), paper.NextDouble());
        if (index == 0)
        {
            peopleSilent = people < (setup.Dials.PersonRun is null ? Marks.SilentOther : Marks.SilentCause);
            fuelSilent = fuel < (setup.Dials.Fuel > 0 ? Marks.SilentCause : Marks.SilentOther);
        }

        if (!peopleSilent) Add($"{at}.truck.samePeople", "yes");
        if (fuelSilent) return;
        Add($"{at}.truck.fuelBurnt.amount", Plain(0));
        Add($"{at}.truck.fuelBurnt.plusMinus", Mass(0.5, 0.5));
    }

    private bool peopleSilent;
    private bool fuelSilent;

    private bool Forgotten(int index) => setup.Dials.TareForgotten is { } run && (run < 0 || run == index);

    private double Reads(double load, double progress)
    {
        var d = setup.Scale.Division!.Value.Si * setup.Dials.CoarserDivision;
        var gain = setup.Dials.ScaleGain + (setup.Dials.ScaleDrift * progress);
        return Math.Round(((load * (1 + gain)) + setup.Dials.ScaleOffset) / d) * d * setup.Dials.MassUnit;
    }

    // One of all the swaps that are possible, each equally likely.
    private void SwapDigits(string within)
    {
        var swaps = new List<(int Field, string Text)>();
        for (var i = 0; i < fields.Count; i++)
        {
            var (path, text) = fields[i];
            if (!path.StartsWith(within, StringComparison.Ordinal)) continue;
            if (!path.EndsWith(".tare", StringComparison.Ordinal) && !path.EndsWith(".gross", StringComparison.Ordinal)
                && !path.EndsWith(".before", StringComparison.Ordinal) && !path.EndsWith(".after", StringComparison.Ordinal)
                && !path.EndsWith(".pulses", StringComparison.Ordinal)) continue;
            for (var k = 0; k + 1 < text.Length; k++)
            {
                var next = text[k + 1] == '.' ? k + 2 : k + 1;
                if (next >= text.Length || !char.IsAsciiDigit(text[k]) || !char.IsAsciiDigit(text[next]) || text[k] == text[next]) continue;
                if (k == 0 && text[next] == '0') continue;
                var letters = text.ToCharArray();
                (letters[k], letters[next]) = (letters[next], letters[k]);
                swaps.Add((i, new(letters)));
            }
        }

        if (swaps.Count == 0) return;
        var chosen = swaps[paper.NextInt(swaps.Count)];
        fields[chosen.Field] = (fields[chosen.Field].Path, chosen.Text);
    }

    private string Mass(double kilograms, double step = 0) => QuantityText.WriteNumber(
        step > 0 ? Math.Round(unit.FromSi(kilograms) / step) * step : unit.FromSi(kilograms), TextCulture.Invariant,
        NumberForm.Decimals(setup.Situation is TestSituation.RoadCheck ? 0 : setup.Metric || setup.Pails ? 2 : 1));

    private static string Counted(long count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Plain(double value) => QuantityText.WriteNumber(value, TextCulture.Invariant, NumberForm.Significant(6));

    private void Add(string path, string text) => fields.Add((path, text));
}
