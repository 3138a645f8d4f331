using CsCheck;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Tests.Exchange;

/// <summary>Sheets of every shape that can be written: all catches, all options, both kinds; values anywhere in range.</summary>
internal static class SheetGen
{
    private const string Letters = "abz AZ09.,;:-_/\\\"'#%&{}[]()æøåßéЖ漢😀½°±";

    private static readonly Dimension[] Constants =
        [Dimension.PulsesPerMass, Dimension.MassPerPulse, Dimension.MassPerRevolution, Dimension.MassFlow];

    private static readonly Gen<string> Word =
        Gen.Select(Gen.Char['a', 'z'], Gen.OneOf(Pieces()).Array[0, 18], Gen.Char['a', 'z'], (a, b, c) => a + string.Concat(b) + c);

    private static readonly Gen<string> Lines = Gen.Select(Word, Word, (a, b) => a + "\n" + b);

    // Weights as a scale shows them and weights of any bits.
    private static readonly Gen<Mass> Weight = Gen.OneOf(
        Gen.Int[1, 9_999_999].Select(n => Mass.FromSi(n / 100.0)), Gen.Double[1e-6, 999_999].Select(Mass.FromSi),
        Gen.Double[-10, 10].Select(Mass.FromSi));

    private static readonly Gen<double> Constant = Gen.Double[-8.9, 8.9].Select(e => Math.Pow(10, e));

    private static readonly Gen<Container> Container = Gen.Select(Weight, Weight, (tare, gross) => new Container(tare, gross));

    private static readonly Gen<Allowance> Allowance = Gen.Select(Weight, Maybe(Weight), (a, p) => new Allowance(a, p));

    private static readonly Gen<Change> Change =
        Gen.Select(Word, Gen.Bool, Allowance, (what, joined, a) => new Change(what, joined, a));

    private static readonly Gen<Catch> Catch = Gen.OneOf(
        Container.List[1, 6].Select(c => (Catch)new ContainerCatch(c)),
        Gen.Select(Gen.Long[1, 10_000], Weight, Weight, Maybe(Share(0, 1)),
            (n, t, g, s) => (Catch)new CountedCatch(n, t, g, s is { } f ? Fraction.FromSi(f) : null)),
        Gen.Select(Weight, Weight, (t, g) => (Catch)new WholeCatch(t, g)),
        Gen.Select(Weight, Weight, Gen.Bool, MaybeNull(Allowance), Change.List[0, 3],
            (b, a, people, fuel, changes) => (Catch)new TruckCatch(b, a, fuel, people, changes)));

    private static readonly Gen<DateOnly> Day = Gen.Int[0, 3_000_000].Select(DateOnly.FromDayNumber);

    private static readonly Gen<Run> Run = Gen.Select(
        Gen.Select(Maybe(Gen.Double[0, 1e12]), Maybe(Gen.Double[0, 1e6]), Maybe(Gen.Double[0, 86_400]), Maybe(Weight)),
        Gen.Select(Text(Word), Maybe(Gen.Double[0, 200]), Maybe(Gen.Double[0, 2]), Gen.Enum<OilState>(), Text(Lines)),
        Catch,
        (counts, state, how) => new Run
        {
            Id = "",
            Pulses = counts.Item1 is { } p ? PulseCount.FromSi(p) : null,
            Revolutions = counts.Item2 is { } r ? RevolutionCount.FromSi(r) : null,
            Time = counts.Item3 is { } t ? Duration.FromSi(t) : null,
            Delivered = counts.Item4,
            Setting = state.Item1,
            EngineSpeed = state.Item2 is { } e ? RotationalSpeed.FromSi(e) : null,
            Gate = state.Item3 is { } g ? Length.FromSi(g) : null,
            Oil = state.Item4,
            Note = state.Item5,
            Catch = how,
        });

    private static readonly Gen<Scale> Scale = Gen.Select(
        Gen.Select(Word, Gen.Enum<ScaleKind>(), Gen.Enum<ScaleClass>(), Gen.Enum<ScaleRules>(), MaybeDay()),
        Gen.Select(Maybe(Gen.Double[1e-6, 1e6]), Maybe(Gen.Double[1e-6, 1e4]), Maybe(Gen.Double[1e-6, 1e4]), Maybe(Share(1e-6, 0.2))),
        (marks, figures) => new Scale
        {
            Id = marks.Item1,
            Kind = marks.Item2,
            Class = marks.Item3,
            Rules = marks.Item4,
            Verified = marks.Item5,
            Capacity = figures.Item1 is { } c ? Mass.FromSi(c) : null,
            Division = figures.Item2 is { } d ? Mass.FromSi(d) : null,
            Tolerance = figures.Item3 is { } t ? Mass.FromSi(t) : null,
            RelativeTolerance = figures.Item4 is { } r ? Fraction.FromSi(r) : null,
        });

    private static readonly Gen<Spreader> Spreader = Gen.Select(
        Gen.Select(Word, Text(Word), Gen.Enum<ControlLoop>(), Gen.OneOf(Constants)),
        Gen.Select(Maybe(Constant), Maybe(Constant), Maybe(Constant), Maybe(Constant)), Gen.Int[0, 100],
        (words, figures, pick) =>
        {
            var units = Units.Of(words.Item4);
            var (a, b) = (figures.Item2, figures.Item3);
            var turned = a > b;
            return new Spreader
            {
                Id = words.Item1,
                Metering = words.Item2,
                Loop = words.Item3,
                Form = (ConstantForm)Array.IndexOf(Constants, words.Item4),
                Unit = units[pick % units.Count],
                Resolution = figures.Item1,
                Lowest = turned ? b : a,
                Highest = turned ? a : b,
                Current = figures.Item4,
            };
        });

    private static readonly Gen<Material> Material = Gen.Select(
        Word, Maybe(Gen.Double[100, 5000]), MaybeNull(Gen.Select(Share(0, 0.5), Gen.Bool, Maybe(Share(0, 0.2)), (s, d, p) => new Moisture(s, d, p))),
        (name, density, moisture) => new Material
        {
            Name = name, BulkDensity = density is { } d ? Density.FromSi(d) : null, Moisture = moisture,
        });

    /// <summary>Whole sheets.</summary>
    public static Gen<TestSheet> Sheet { get; } = Gen.Select(
        Gen.Select(Gen.Enum<TestKind>(), Text(Word), Gen.Bool, MaybeDay(), Text(Word), Word.List[0, 3], Maybe(Gen.Enum<UnitSystem>())),
        Gen.Select(Spreader, Material, Scale, Run.List[1, 5]),
        Gen.Select(Maybe(Gen.Bool), Maybe(Gen.Double[0, 60]), Maybe(Gen.Double[0.001, 1]),
            MaybeNull(Gen.Select(Share(1e-4, 0.5), Gen.Long[2, 100_000], (r, n) => new EarlierScatter(r, n))),
            Share(1e-4, 0.5), Share(0.5, 0.999), Share(0.001, 0.5)),
        MaybeNull(Gen.Select(Gen.Enum<Verdict>(), Text(Word), Text(Word), (v, by, why) => new Decision(v, by, why))),
        (head, parts, options, decision) => new TestSheet
        {
            Kind = head.Item1,
            Title = head.Item2,
            Invented = head.Item3,
            Date = head.Item4,
            Place = head.Item5,
            People = [.. head.Item6.Select(name => name.Replace(',', '.'))],
            Units = head.Item7,
            Spreader = parts.Item1,
            Material = parts.Item2,
            Scale = parts.Item3,
            Runs = [.. parts.Item4.Select((run, i) => run with { Id = i % 2 == 0 ? $"{i + 1}" : $"run {i}" })],
            CommonError = options.Item1,
            TimingUncertainty = options.Item2 is { } t ? Duration.FromSi(t) : null,
            RevolutionStep = options.Item3 is { } r ? RevolutionCount.FromSi(r) : null,
            EarlierScatter = options.Item4,
            WantedUncertainty = options.Item5,
            Probability = options.Item6,
            Tolerance = options.Item7,
            Decision = decision,
        });

    /// <summary>So many sheets, always the same ones.</summary>
    public static IReadOnlyList<TestSheet> Some(int count)
    {
        var sheets = new List<TestSheet>();
        Sheet.Sample(sheets.Add, iter: count, threads: 1, seed: "0N0XIzNsQ0O2");
        return sheets;
    }

    private static Gen<double> Share(double least, double most) => Gen.Double[least, most];

    private static Gen<T?> Maybe<T>(Gen<T> gen)
        where T : struct => Gen.Select(Gen.Bool, gen, (has, value) => has ? value : (T?)null);

    private static Gen<T?> MaybeNull<T>(Gen<T> gen)
        where T : class => Gen.Select(Gen.Bool, gen, (has, value) => has ? value : null);

    private static Gen<string> Text(Gen<string> gen) => Gen.Select(Gen.Bool, gen, (has, value) => has ? value : "");

    private static Gen<DateOnly?> MaybeDay() => Maybe(Day);

    private static string[] Pieces() => [.. Letters.EnumerateRunes().Select(rune => rune.ToString())];
}
