using System.Text.Json;
using Lanewright.Core.Exchange;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Statistics;
using Lanewright.Core.Text;
using Lanewright.Core.Weighing;

namespace Lanewright.Core.Practice;

/// <summary>
/// The demo world: Hollin Ridge County with 32 spreaders and the metric district Fjellmark with 8. Everything is invented
/// and every test says so. The same seed and day give the same world.
/// </summary>
public sealed partial class DemoWorld
{
    private const string Technician = "M.O.";
    private const string Supervisor = "R.V.";
    private static readonly string[] CountyDepots = ["Quarry Road", "Alder Flat", "Northgate", "Saddle Pass"];
    private static readonly string[] Materials =
        ["white rock salt", "treated salt", "washed sand", "20 % salt/sand mix", "23.3 % salt brine"];

    private readonly RandomSource random;
    private readonly EntryMaker county;
    private readonly EntryMaker district;
    private readonly DateOnly today;
    private readonly List<PracticeScale> scales = [];
    private readonly List<PracticeSpreader> spreaders = [];

    private DemoWorld(ulong seed, DateOnly today)
    {
        random = new(seed);
        this.today = today;
        county = new(random, "America/Chicago");
        district = new(random, "Europe/Oslo");
    }

    /// <summary>All entries in the order of their times.</summary>
    /// <param name="seed">Seed.</param>
    /// <param name="today">The day the world has reached.</param>
    public static IReadOnlyList<PracticeEntry> Make(ulong seed, DateOnly today)
    {
        var world = new DemoWorld(seed, today);
        world.Register();
        foreach (var year in new[] { today.Year - 2, today.Year - 1, today.Year })
            world.Season(year);
        // After everything else, so that the seed gives the same tests as before there were cards.
        foreach (var spreader in world.spreaders)
        {
            world.Card(spreader);
            if (spreader.Number is "HR-104" or "HR-112") world.Course(spreader);
        }

        return [.. world.county.Entries.Concat(world.district.Entries).OrderBy(e => e.At).ThenBy(e => e.Sequence)];
    }

    private void Register()
    {
        var start = At(new DateOnly(today.Year - 2, 8, 3), 8);
        foreach (var depot in CountyDepots.Append("Fjellmark"))
            Simple("register.depot", start, json => json.WriteString("name", depot));
        foreach (var (name, role) in new[] { (Technician, "technician"), ("T.K.", "operator"), (Supervisor, "supervisor"), ("L.B.", "viewer") })
            Simple("register.person", start, json =>
            {
                json.WriteString("name", name);
                json.WriteString("role", role);
            });
        foreach (var material in Materials.Take(4))
            Simple("register.material", start, json =>
            {
                json.WriteString("name", material);
                json.WriteString("bulkDensity", material.Contains("sand", StringComparison.Ordinal) ? "95 lb/ft³" : "80 lb/ft³");
                json.WriteNumber("pricePerTonne", material == "washed sand" ? 18 : 74);
            });
        Scales(start);
        for (var i = 0; i < 32; i++)
            spreaders.Add(County(i, start));
        for (var i = 0; i < 8; i++)
            spreaders.Add(District(i, start));
        foreach (var spreader in spreaders)
            county.Add("register.spreader", spreader.Subject, Technician, start, json => Write(json, spreader));
        Simple("register.rules", start, json =>
        {
            json.WriteString("tolerance", "5 %");
            json.WriteStartObject("yard");
            json.WriteString("name", "Hollin Ridge County road department (invented)");
            json.WriteEndObject();
        }, "rules");
    }

    private void Scales(DateTimeOffset start)
    {
        AddScale("county vehicle scale", ScaleKind.Vehicle, ScaleClass.IIIL, "Quarry Road", 120_000, 20, Units.Pound);
        AddScale("pallet platform", ScaleKind.Pallet, ScaleClass.III, "Alder Flat", 2000, 0.5, Units.Pound);
        AddScale("floor scale 1", ScaleKind.Floor, ScaleClass.III, "Northgate", 1000, 0.2, Units.Pound);
        AddScale("floor scale 2", ScaleKind.Floor, ScaleClass.III, "Saddle Pass", 1000, 0.2, Units.Pound);
        AddScale("hanging scale", ScaleKind.Hanging, ScaleClass.III, "Quarry Road", 300, 0.1, Units.Pound);
        AddScale("gulvvekt", ScaleKind.Floor, ScaleClass.III, "Fjellmark", 600, 0.1, Units.Kilogram);
        foreach (var one in scales)
            Simple("register.scale", start, json =>
            {
                json.WriteString("id", one.Scale.Id);
                json.WriteString("kind", Word(one.Scale.Kind));
                json.WriteString("capacity", Text(one.Scale.Capacity!.Value, one.Depot));
                json.WriteString("division", Text(one.Scale.Division!.Value, one.Depot));
                json.WriteString("class", one.Scale.Class is ScaleClass.IIIL ? "iii-l" : "iii");
                json.WriteString("rules", one.Depot == "Fjellmark" ? "oiml" : "handbook-44");
                json.WriteString("verified", Day(one.Scale.Verified!.Value));
                json.WriteString("depot", one.Depot);
            });
    }

    private void AddScale(
        string id, ScaleKind kind, ScaleClass scaleClass, string depot, double capacity, double division, Unit unit)
    {
        var scale = new Scale
        {
            Id = id,
            Kind = kind,
            Class = scaleClass,
            Rules = depot == "Fjellmark" ? ScaleRules.Oiml : ScaleRules.Handbook44,
            Capacity = Mass.FromSi(unit.ToSi(capacity)),
            Division = Mass.FromSi(unit.ToSi(division)),
            Verified = new DateOnly(today.Year, 4, 14),
        };
        scales.Add(new(scale, depot, scale.GainLimit(0) * ((2 * random.NextDouble()) - 1)));
    }

    private PracticeSpreader County(int index, DateTimeOffset start)
    {
        var box = index % 3 == 1;
        var liquid = index is 7 or 23;
        var closed = index % 8 != 5;
        var truth = closed ? (4 + (16 * random.NextDouble())) / 0.45359237 : (160 + (160 * random.NextDouble())) * 0.45359237 / 60;
        return new()
        {
            Number = $"HR-{101 + index}",
            Subject = county.NewSubject(start),
            Depot = CountyDepots[index % 4],
            Body = liquid ? "combination unit with liquid tank" : box ? "V-box hopper" : "tandem dump body",
            Metering = box ? "drag chain" : "tailgate auger",
            Closed = closed,
            Metric = false,
            Material = Materials[index % 4],
            Liquid = liquid ? "liquid tank with pump" : "",
            Truth = truth,
            Scatter = 0.004 * Math.Sqrt(1 + (30 * random.NextDouble())),
        };
    }

    private PracticeSpreader District(int index, DateTimeOffset start) => new()
    {
        Number = $"FM-0{index + 1}",
        Subject = district.NewSubject(start),
        Depot = "Fjellmark",
        Body = "hopper spreader",
        Metering = "auger",
        Closed = true,
        Metric = true,
        Material = Materials[0],
        Truth = 20 + (40 * random.NextDouble()),
        Scatter = 0.004 * Math.Sqrt(1 + (20 * random.NextDouble())),
    };

    private void Season(int year)
    {
        foreach (var spreader in spreaders)
        {
            var day = new DateOnly(year, 9, 8).AddDays(random.NextInt(70));
            // Wear, a new chain, another pile: the truth moves between seasons.
            spreader.Truth *= 1 + (0.025 * random.NextNormal());
            // In the last season some are not yet done, so that there is something due.
            if (day >= today || (year == today.Year && random.NextInt(5) == 0)) continue;
            Test(spreader, day);
            if (random.NextInt(9) == 0) Changed(spreader, day.AddDays(20 + random.NextInt(30)));
        }
    }

    private void Changed(PracticeSpreader spreader, DateOnly day)
    {
        if (day >= today) return;
        var words = new[] { "hydraulics", "metering", "gate", "supplier" };
        var word = words[random.NextInt(words.Length)];
        spreader.Truth *= 1 + (0.05 * random.NextNormal());
        MakerOf(spreader).Add("spreader.event", spreader.Subject, Technician, At(day, 14), json =>
        {
            json.WriteString("event", word);
            json.WriteString("date", Day(day));
            json.WriteString("note", "invented");
        });
        if (random.NextInt(2) == 0 && day.AddDays(4) < today) Test(spreader, day.AddDays(4));
    }

    private void Test(PracticeSpreader spreader, DateOnly day)
    {
        var maker = MakerOf(spreader);
        var at = At(day, 9).AddMinutes(random.NextInt(300));
        var subject = maker.NewSubject(at);
        var scale = ScaleFor(spreader);
        var fields = new PracticeTest(spreader, scale, random).Fields(
            $"{spreader.Number}, {spreader.Material}", Day(day), spreader.Depot, $"{Technician}, T.K.");
        maker.Add("test.begin", subject, Technician, at, json =>
        {
            json.WriteString("kind", "drop-test");
            json.WriteString("spreader", spreader.Subject);
            json.WriteStartObject("fields");
            foreach (var (path, text) in fields.Where(f => !f.Path.StartsWith("runs[", StringComparison.Ordinal)))
                json.WriteString(path, text);
            json.WriteEndObject();
        });
        foreach (var (path, text) in fields.Where(f => f.Path.StartsWith("runs[", StringComparison.Ordinal)))
        {
            at = at.AddSeconds(20 + random.NextInt(40));
            maker.Add("test.field", subject, Technician, at, json =>
            {
                json.WriteString("path", path);
                json.WriteString("text", text);
            });
        }

        Decide(spreader, maker, subject, fields, at.AddMinutes(10));
    }

    private static void Decide(
        PracticeSpreader spreader, EntryMaker maker, string subject, List<(string Path, string Text)> fields,
        DateTimeOffset at)
    {
        var places = new FieldPlaces();
        foreach (var (path, text) in fields)
            places.Put(path, FieldPath.Read(path)!, new FieldPlaces.Spot(NodeKind.Text, 0, text));
        if (SheetReader.Read(places.Build()) is not { IsUsable: true, Value: { } sheet }) return;
        var report = SheetAnalysis.Analyse(sheet);
        var adopt = report.Usable && report.Results.Count == 1 && report.Results[0].KeyIn is not null;
        var keyed = adopt ? report.Results[0].Unit.FromSi(report.Results[0].KeyIn!.Value) : (double?)null;
        maker.Add("test.decision", subject, Supervisor, at, json =>
        {
            json.WriteString("verdict", adopt ? "adopt" : "repeat");
            json.WriteString("why", adopt ? "runs agree, interval narrow enough" : "not good enough to key in");
            if (keyed is { } k)
                json.WriteString("keyed", QuantityText.WriteNumber(
                    k, TextCulture.Invariant, NumberForm.Decimals(spreader.Closed ? (spreader.Metric ? 1 : 2) : 0)) + " " + spreader.ControllerUnit.Symbol);
        });
        if (keyed is not { } value) return;
        spreader.KeyedTo = report.Results[0].RelativeExpanded;
        spreader.KeyedDay = DateOnly.FromDateTime(at.UtcDateTime);
        spreader.Keyed = Math.Round(Math.Round(value / spreader.Resolution) * spreader.Resolution * 1000) / 1000;
    }

    private PracticeScale ScaleFor(PracticeSpreader spreader)
    {
        if (spreader.Metric) return scales[5];
        if (spreader.Body == "V-box hopper" && spreader.Depot == "Quarry Road") return scales[0];
        return scales.Find(s => s.Depot == spreader.Depot && s.Scale.Kind is not ScaleKind.Vehicle) ?? scales[1];
    }

    private EntryMaker MakerOf(PracticeSpreader spreader) => spreader.Metric ? district : county;

    private void Simple(string kind, DateTimeOffset at, Action<Utf8JsonWriter> payload, string? subject = null) =>
        county.Add(kind, subject ?? county.NewSubject(at), Technician, at, payload);

    private static void Write(Utf8JsonWriter json, PracticeSpreader spreader)
    {
        json.WriteString("id", spreader.Number);
        json.WriteString("metering", spreader.Metering);
        json.WriteString("loop", spreader.Closed ? "closed" : "open");
        json.WriteString("constant", spreader.Closed ? "pulses-per-mass" : "mass-per-time");
        json.WriteString("unit", spreader.ControllerUnit.Symbol);
        json.WriteNumber("resolution", spreader.Resolution);
        json.WriteString("depot", spreader.Depot);
        json.WriteString("body", spreader.Body);
        json.WriteString("sensor", spreader.Closed ? "toothed wheel on the metering shaft" : "none");
        json.WriteString("drive", "hydraulic motor");
        if (spreader.Liquid.Length > 0) json.WriteString("liquid", spreader.Liquid);
        json.WriteString("material", spreader.Material);
        json.WriteString("seasonMass", spreader.Metric ? "180 t" : "420 short ton");
        json.WriteString("note", "invented");
    }

    private static string Word(ScaleKind kind) => kind switch
    {
        ScaleKind.Vehicle => "vehicle",
        ScaleKind.Pallet => "pallet",
        ScaleKind.Hanging => "hanging",
        _ => "floor",
    };

    private static string Text(Mass mass, string depot) =>
        QuantityText.Write(mass, depot == "Fjellmark" ? Units.Kilogram : Units.Pound, TextCulture.Invariant, NumberForm.RoundTrip);

    private static string Day(DateOnly day) =>
        day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    private static DateTimeOffset At(DateOnly day, int hour) => new(day.ToDateTime(new TimeOnly(hour, 0)), TimeSpan.Zero);
}
