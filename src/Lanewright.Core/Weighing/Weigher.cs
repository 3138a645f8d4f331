using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Weighing;

/// <summary>
/// Turns the readings of one scale into net masses with their error sources. Rounding belongs to each reading. The
/// scale's own error is, when common to all readings, one source proportional to the load (what is left of it in a
/// difference, <see cref="Scale.GainLimit"/>); otherwise each reading has its own, anywhere within tolerance.
/// </summary>
public sealed class Weigher
{
    private const double DefaultFillSpread = 0.05;
    private const double DefaultAllowanceShare = 0.25;

    /// <summary>What counts as nothing, kg: less than the finest yard scale shows.</summary>
    internal const double LeastNet = 1e-6;

    private static readonly double SqrtThree = Math.Sqrt(3);

    private readonly Scale scale;
    private readonly double gain;
    private readonly ErrorSource? common;
    private readonly ICollection<Finding>? findings;

    /// <summary>A weigher for one scale.</summary>
    /// <param name="scale">The scale.</param>
    /// <param name="errorIsCommon">Whether its error is the same at both readings of a difference.</param>
    /// <param name="largestReading">Largest reading in the test; stands in for an unknown capacity.</param>
    /// <param name="findings">Where findings go; null to compute only.</param>
    public Weigher(Scale scale, bool errorIsCommon, Mass largestReading, ICollection<Finding>? findings)
    {
        ArgumentNullException.ThrowIfNull(scale);
        this.scale = scale;
        this.findings = findings;
        if (errorIsCommon)
        {
            gain = scale.GainLimit(largestReading.Si);
            common = ErrorSource.Rectangular($"scale:{scale.Id}:gain", $"scale {scale.Id}: error in proportion to load");
        }
    }

    /// <summary>The net mass of a run in kilograms.</summary>
    /// <param name="what">How it was weighed.</param>
    /// <param name="run">Name of the run, for findings and for the identity of its readings.</param>
    /// <param name="field">Where the run stands in the sheet.</param>
    public Measured Net(Catch what, string run, string field)
    {
        ArgumentNullException.ThrowIfNull(what);
        var start = new RunContext(run, field);
        var net = what switch
        {
            ContainerCatch c => Containers(c, start),
            CountedCatch c => Counted(c, start),
            WholeCatch c => Difference(c.Gross, "whole.gross", c.Tare, "whole.tare", "whole", start),
            TruckCatch c => Truck(c, start),
            _ => throw new ArgumentException("Unknown way of weighing.", nameof(what)),
        };
        if (net.Value < LeastNet)
            Report(WeighingFindings.NothingCaught, field, Word("run", run), Mass("net", net.Value));
        start.ReportOffDivision(this);
        return net;
    }

    private Measured Containers(ContainerCatch c, RunContext run)
    {
        var nets = new Measured[c.Containers.Count];
        for (var i = 0; i < nets.Length; i++)
        {
            var at = $"containers[{i}]";
            nets[i] = Difference(c.Containers[i].Gross, at + ".gross", c.Containers[i].Tare, at + ".tare", at, run);
            // The other containers may hide it in the run's sum.
            if (nets[i].Value <= 0)
                Report(
                    WeighingFindings.LighterWhenFull, $"{run.Field}.{at}", Word("run", run.Name),
                    Mass("gross", c.Containers[i].Gross.Si), Mass("tare", c.Containers[i].Tare.Si));
        }

        return Measured.Sum(nets);
    }

    private Measured Counted(CountedCatch c, RunContext run)
    {
        var one = Difference(c.Gross, "counted.gross", c.Tare, "counted.tare", "counted", run);
        var spread = c.FillSpread?.Si ?? DefaultFillSpread;
        if (spread < 0)
            spread = Negative("fillSpread", spread, Dimension.Fraction, run, "counted.fillSpread");
        else if (c.FillSpread is null)
            Report(
                WeighingFindings.FillSpreadAssumed, run.Field + ".counted.fillSpread", Word("run", run.Name),
                FindingValue.Number("spread", spread, Dimension.Fraction));
        // Error of count times one filling against the sum of all: s sqrt(n (n - 1)).
        var u = spread * Math.Abs(one.Value) * Math.Sqrt((double)c.Count * (c.Count - 1));
        var net = (one * c.Count).With(
            ErrorSource.Normal($"run:{run.Name}:fill", "containers counted, not weighed"), u);
        Report(
            WeighingFindings.CountedContainers, run.Field, Word("run", run.Name),
            FindingValue.Number("count", c.Count, Dimension.Fraction),
            FindingValue.Number("cost", net.Value == 0 ? 0 : u / Math.Abs(net.Value), Dimension.Fraction));
        return net;
    }

    private Measured Truck(TruckCatch c, RunContext run)
    {
        var net = Difference(c.Before, "truck.before", c.After, "truck.after", "truck", run);
        if (c.FuelBurnt is { } fuel)
            net -= Allowed("fuel burnt", fuel, run, "truck.fuelBurnt");
        else
            Report(WeighingFindings.FuelNotStated, run.Field + ".truck.fuelBurnt", Word("run", run.Name));
        if (!c.PeopleStated)
            Report(WeighingFindings.PeopleNotStated, run.Field + ".truck.samePeople", Word("run", run.Name));
        for (var i = 0; i < c.Changes.Count; i++)
        {
            var change = c.Changes[i];
            var amount = Allowed(change.What, change.Allowance, run, $"truck.changes[{i}]");
            net = change.Joined ? net + amount : net - amount;
        }

        return net;
    }

    private Measured Allowed(string what, Allowance allowance, RunContext run, string at)
    {
        var half = allowance.PlusMinus?.Si ?? (DefaultAllowanceShare * Math.Abs(allowance.Amount.Si));
        if (allowance.Amount.Si < 0)
            Negative(what, allowance.Amount.Si, Dimension.Mass, run, at);
        if (half < 0)
            half = Negative("plusMinus", half, Dimension.Mass, run, at + ".plusMinus");
        else if (allowance.PlusMinus is null && half > 0)
            Report(
                WeighingFindings.AllowanceAssumed, $"{run.Field}.{at}.plusMinus", Word("what", what),
                Word("run", run.Name), Mass("range", half));
        return Measured.Of(
            allowance.Amount.Si, half / SqrtThree,
            ErrorSource.Rectangular($"run:{run.Name}:{at}", "allowances for fuel, people and the like"));
    }

    private Measured Difference(Mass large, string largeAt, Mass small, string smallAt, string netAt, RunContext run)
    {
        var net = Reading(large, largeAt, run) - Reading(small, smallAt, run);
        var least = scale.Division is { Si: > 0 } d ? d.Si * ScaleTolerance.LeastLoadInDivisions(scale.Class) : 0;
        if (net.Value > 0 && net.Value < least * (1 - 1e-9))
            Report(
                WeighingFindings.BelowLeastLoad, $"{run.Field}.{netAt}", Word("run", run.Name),
                Mass("net", net.Value), Word("scale", scale.Id), Mass("least", least));
        return net;
    }

    private Measured Reading(Mass reading, string at, RunContext run)
    {
        var field = $"{run.Field}.{at}";
        if (reading.Si < 0)
            Report(WeighingFindings.NegativeReading, field, Mass("reading", reading.Si));
        if (scale.Capacity is { } capacity && reading.Si > capacity.Si * (1 + 1e-9))
            Report(
                WeighingFindings.Overload, field, Mass("reading", reading.Si), Mass("capacity", capacity.Si),
                Word("scale", scale.Id));
        Span<Contribution> parts = new Contribution[2];
        var n = 0;
        if (scale.Division is { Si: > 0 } d)
        {
            run.NoteOffDivision(reading, d, field);
            parts[n++] = new(
                ErrorSource.Rectangular($"run:{run.Name}:{at}:rounding", $"scale {scale.Id}: rounding of readings"),
                d.Si / 2 / SqrtThree);
        }

        if (common is not null)
            parts[n++] = new(common, gain * reading.Si / SqrtThree);
        else if (scale.ToleranceAt(reading.Si) is > 0 and var tolerance)
            parts[n++] = new(
                ErrorSource.Rectangular($"run:{run.Name}:{at}:scale", $"scale {scale.Id}: error of each reading"),
                tolerance / SqrtThree);
        return Measured.Of(reading.Si, parts[..n]);
    }

    // An amount that only makes sense from 0 up: said to be wrong, and taken without its sign so that a result remains.
    private double Negative(string what, double amount, Dimension dimension, RunContext run, string at)
    {
        Report(
            WeighingFindings.NegativeAmount, $"{run.Field}.{at}", Word("what", what), Word("run", run.Name),
            FindingValue.Number("amount", amount, dimension));
        return -amount;
    }

    private void Report(FindingKind kind, string field, params FindingValue[] values) =>
        findings?.Add(kind.At(field, values));

    private static FindingValue Word(string name, string word) => FindingValue.Text(name, word);

    private static FindingValue Mass(string name, double kilograms) =>
        FindingValue.Number(name, kilograms, Dimension.Mass);

    /// <summary>Where we are in the sheet, and the readings of the run that miss the division.</summary>
    private sealed class RunContext(string name, string path)
    {
        private int offCount;
        private Mass firstOff;
        private string firstOffField = "";

        internal string Name => name;

        internal string Field => path;

        internal void NoteOffDivision(Mass reading, Mass division, string at)
        {
            var steps = reading.Si / division.Si;
            if (Math.Abs(steps - Math.Round(steps)) < 0.01) return;
            if (offCount++ > 0) return;
            firstOff = reading;
            firstOffField = at;
        }

        internal void ReportOffDivision(Weigher weigher)
        {
            if (offCount == 0) return;
            weigher.Report(
                WeighingFindings.OffDivision, firstOffField, Word("run", Name),
                FindingValue.Number("count", offCount, Dimension.Fraction), Mass("reading", firstOff.Si),
                Mass("division", weigher.scale.Division!.Value.Si), Word("scale", weigher.scale.Id));
        }
    }
}
