using System.Globalization;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Exchange;

/// <summary>One container as far as it is weighed.</summary>
/// <param name="Place">Typed place in the list.</param>
/// <param name="Net">Net mass, kg; null until both readings can be read.</param>
/// <param name="Running">Net mass of the run up to here, kg.</param>
internal sealed record LiveContainer(int Place, double? Net, double Running);

/// <summary>One run as far as it is typed.</summary>
/// <param name="Place">Typed place in the list.</param>
/// <param name="Name">Its name.</param>
/// <param name="Containers">Its containers, in order.</param>
/// <param name="Filled">How many containers it filled; null when nobody said.</param>
/// <param name="Net">Net mass so far, kg; null before anything is weighed.</param>
/// <param name="HasCount">Whether what the constant is a ratio of is typed.</param>
/// <param name="IsWeighed">Whether everything it caught is weighed.</param>
/// <param name="Decimals">Decimals of its masses: those of the finest reading.</param>
internal sealed record LiveRun(
    int Place, string Name, IReadOnlyList<LiveContainer> Containers, long? Filled, double? Net, bool HasCount,
    bool IsWeighed, int Decimals)
{
    /// <summary>Whether it can enter an answer. A catch weighed in part would give a wrong one.</summary>
    internal bool IsReady => HasCount && IsWeighed;

    internal string Path => string.Create(CultureInfo.InvariantCulture, $"runs[{Place}]");
}

/// <summary>Works out what can be said of each run before the whole test can be analysed.</summary>
internal sealed class LiveRuns
{
    private const int MostDecimals = 3;

    private static readonly string[] Readings =
        [".gross", ".tare", ".whole.gross", ".whole.tare", ".counted.gross", ".counted.tare", ".truck.before", ".truck.after"];

    // Net masses need the readings only; what the scale is decides nothing but their uncertainty.
    private static readonly Weigher Weigher = new(new Scale { Id = "any" }, true, Mass.FromSi(0), null);

    private readonly LiveInput input;

    private LiveRuns(LiveInput input) => this.input = input;

    /// <summary>The field that a run of this test counts with, such as <c>pulses</c>; null when the form of the
    /// constant is not known yet.</summary>
    internal static string? CountName(LiveInput input) => input.IsVerification ? "delivered"
        : input.Text("spreader.constant").ToUpperInvariant() switch
        {
            "PULSES-PER-MASS" or "MASS-PER-PULSE" => "pulses",
            "MASS-PER-REVOLUTION" => "revolutions",
            "MASS-PER-TIME" => "time",
            _ => null,
        };

    /// <summary>The runs that have any text, in the order of their places.</summary>
    internal static List<LiveRun> Of(LiveInput input)
    {
        var places = new SortedDictionary<int, SortedSet<int>>();
        foreach (var (path, text) in input.Fields)
        {
            if (string.IsNullOrWhiteSpace(text) || FieldPath.Read(path) is not { Count: > 2 } steps) continue;
            if (steps[0].Name != "runs" || steps[1].Name is not null) continue;
            if (!places.TryGetValue(steps[1].Index, out var containers)) places.Add(steps[1].Index, containers = []);
            if (steps.Count > 3 && steps[2].Name == "containers" && steps[3].Name is null)
                containers.Add(steps[3].Index);
        }

        var runs = new LiveRuns(input);
        var list = new List<LiveRun>(places.Count);
        foreach (var (place, containers) in places) list.Add(runs.Run(place, containers));
        return list;
    }

    private LiveRun Run(int place, SortedSet<int> containerPlaces)
    {
        var path = string.Create(CultureInfo.InvariantCulture, $"runs[{place}]");
        var name = input.Text(path + ".id") is { Length: > 0 } id ? id : (place + 1).ToString(CultureInfo.InvariantCulture);
        var count = CountName(input);
        var hasCount = count is not null && input.Text($"{path}.{count}").Length > 0;
        long? filled = QuantityText.ReadCount(input.Text(path + ".filled"), input.Culture).TryGet(out var n) ? n : null;
        if (containerPlaces.Count == 0)
        {
            var net = Single(path) is { } caught ? Weigher.Net(caught, name, path).Value : (double?)null;
            return new(place, name, [], filled, net, hasCount, net is not null, Decimals(path));
        }

        var running = 0.0;
        var containers = new List<LiveContainer>(containerPlaces.Count);
        var decimals = 0;
        foreach (var at in containerPlaces)
        {
            var here = string.Create(CultureInfo.InvariantCulture, $"{path}.containers[{at}]");
            var net = Difference(here + ".gross", here + ".tare") is { } pair
                ? Weigher.Net(pair, name, path).Value
                : (double?)null;
            running += net ?? 0;
            containers.Add(new(at, net, running));
            decimals = Math.Max(decimals, Decimals(here));
        }

        var weighed = containers.Count(c => c.Net is not null);
        var whole = weighed == containers.Count && filled == weighed;
        return new(place, name, containers, filled, weighed > 0 ? running : null, hasCount, whole, decimals);
    }

    private Catch? Single(string path)
    {
        if (Difference(path + ".whole.gross", path + ".whole.tare") is { } whole) return whole;
        if (Difference(path + ".counted.gross", path + ".counted.tare") is { } one
            && QuantityText.ReadCount(input.Text(path + ".counted.count"), input.Culture).TryGet(out var count))
            return new CountedCatch(count, one.Tare, one.Gross, Fraction.FromSi(0));
        var truck = path + ".truck";
        if (input.MassAt(truck + ".before") is not { } before || input.MassAt(truck + ".after") is not { } after)
            return null;
        Allowance? fuel = input.MassAt(truck + ".fuelBurnt.amount") is { } burnt ? new(burnt, null) : null;
        return new TruckCatch(before, after, fuel, true, Changes(truck));
    }

    private List<Change> Changes(string truck)
    {
        var changes = new List<Change>();
        foreach (var path in input.Fields.Keys)
        {
            if (!path.StartsWith(truck + ".changes[", StringComparison.Ordinal)
                || !path.EndsWith("].amount", StringComparison.Ordinal)
                || input.MassAt(path) is not { } amount) continue;
            var joined = input.Text(path[..^"amount".Length] + "joined");
            if (joined.Length > 0)
                changes.Add(new("", joined.Equals("yes", StringComparison.OrdinalIgnoreCase), new(amount, null)));
        }

        return changes;
    }

    private WholeCatch? Difference(string gross, string tare) =>
        input.MassAt(gross) is { } g && input.MassAt(tare) is { } t ? new(t, g) : null;

    // Masses are shown to the last decimal of their finest reading.
    private int Decimals(string path)
    {
        var most = 0;
        foreach (var reading in Readings)
        {
            if (input.MassAt(path + reading) is { } mass)
                most = Math.Max(most, -ShortestNumber.In(input.Units[Dimension.Mass], mass.Si).LastPlace);
        }

        return Math.Min(most, MostDecimals);
    }
}
