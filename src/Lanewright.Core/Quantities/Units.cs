using static Lanewright.Core.Quantities.UnitParts;

namespace Lanewright.Core.Quantities;

/// <summary>
/// The units the trade uses, each with exact factors to SI (sources: <c>docs/method/quantities.md</c>). Customary units
/// are the international ones; a gallon and a ton always say which they are.
/// </summary>
public static partial class Units
{
    // First, because every unit below adds itself.
    private static readonly List<Unit> Registered = [];


    // Ratios and counts.
    /// <summary>%.</summary>
    public static readonly Unit Percent = Add(new("%", Dimension.Fraction, 1, 100, 0, "percent", "pct"));
    /// <summary>‰.</summary>
    public static readonly Unit PerMille = Add(new("‰", Dimension.Fraction, 1, 1000, 0, "permille", "permil"));
    /// <summary>A plain ratio; 1 is the whole.</summary>
    public static readonly Unit Ratio = Add(new("ratio", Dimension.Fraction, 1, 1, 0, "fraction"));
    /// <summary>pulse.</summary>
    public static readonly Unit Pulse = Add(new("pulse", Dimension.Pulses, 1, 1, 0, "pulses"));
    /// <summary>rev.</summary>
    public static readonly Unit Revolution = Add(new("rev", Dimension.Revolutions, 1, 1, 0, "revs", "revolution",
        "revolutions", "turn", "turns"));

    // Mass. The pound: international yard and pound agreement, 1959.
    /// <summary>kg.</summary>
    public static readonly Unit Kilogram = Add(new("kg", Dimension.Mass, 1, 1, 0, "kgs", "kilo", "kilos",
        "kilogram", "kilograms", "kilogramme", "kilogrammes"));
    /// <summary>g.</summary>
    public static readonly Unit Gram = Add(new("g", Dimension.Mass, 1, 1000, 0, "gram", "grams", "gramme",
        "grammes", "gm"));
    /// <summary>mg.</summary>
    public static readonly Unit Milligram = Add(new("mg", Dimension.Mass, 1, 1000000, 0, "milligram", "milligrams",
        "Mg"));
    /// <summary>t, 1000 kg.</summary>
    public static readonly Unit Tonne = Add(new("t", Dimension.Mass, 1000, 1, 0, "tonne", "tonnes", "metric ton",
        "metric tons", "ton", "tons", "T", "Mg", "megagram", "megagrams"));
    /// <summary>lb, 0.453 592 37 kg.</summary>
    public static readonly Unit Pound = Add(new("lb", Dimension.Mass, KilogramsPerPound, 1, 0, "lbs", "pound",
        "pounds", "#"));
    /// <summary>oz, 1/16 lb.</summary>
    public static readonly Unit Ounce = Add(new("oz", Dimension.Mass, KilogramsPerPound, 16, 0, "ounce", "ounces"));
    /// <summary>short ton, 2000 lb.</summary>
    public static readonly Unit ShortTon = Add(new("short ton", Dimension.Mass, 2000 * KilogramsPerPound, 1, 0,
        "short tons", "US ton", "US tons", "ton", "tons", "T"));
    /// <summary>long ton, 2240 lb.</summary>
    public static readonly Unit LongTon = Add(new("long ton", Dimension.Mass, 2240 * KilogramsPerPound, 1, 0,
        "long tons", "imperial ton", "imperial tons", "ton", "tons", "T"));

    // Length. The yard of 0.9144 m: international yard and pound agreement, 1959.
    /// <summary>m.</summary>
    public static readonly Unit Metre = Add(new("m", Dimension.Length, 1, 1, 0, "metre", "metres", "meter",
        "meters"));
    /// <summary>mm.</summary>
    public static readonly Unit Millimetre = Add(new("mm", Dimension.Length, 1, 1000, 0, "millimetre",
        "millimetres", "millimeter", "millimeters"));
    /// <summary>cm.</summary>
    public static readonly Unit Centimetre = Add(new("cm", Dimension.Length, 1, 100, 0, "centimetre",
        "centimetres", "centimeter", "centimeters"));
    /// <summary>km.</summary>
    public static readonly Unit Kilometre = Add(new("km", Dimension.Length, 1000, 1, 0, "kms", "kilometre",
        "kilometres", "kilometer", "kilometers"));
    /// <summary>in, 0.0254 m.</summary>
    public static readonly Unit Inch = Add(new("in", Dimension.Length, MetresPerFoot, 12, 0, "inch", "inches",
        "\""));
    /// <summary>ft, 0.3048 m.</summary>
    public static readonly Unit Foot = Add(new("ft", Dimension.Length, MetresPerFoot, 1, 0, "foot", "feet", "'"));
    /// <summary>yd, 0.9144 m.</summary>
    public static readonly Unit Yard = Add(new("yd", Dimension.Length, 3 * MetresPerFoot, 1, 0, "yds", "yard",
        "yards"));
    /// <summary>mile, 1609.344 m.</summary>
    public static readonly Unit Mile = Add(new("mile", Dimension.Length, 5280 * MetresPerFoot, 1, 0, "miles", "mi"));

    // Area and volume. US gallon of 231 cubic inches; imperial gallon: UK Weights and Measures Act 1985.
    /// <summary>m².</summary>
    public static readonly Unit SquareMetre = Add(new("m²", Dimension.Area, 1, 1, 0, "sq m", "square metre",
        "square metres", "square meter", "square meters"));
    /// <summary>ft².</summary>
    public static readonly Unit SquareFoot = Add(new("ft²", Dimension.Area, SquareMetresPerSquareFoot, 1, 0,
        "sq ft", "sqft", "square foot", "square feet"));
    /// <summary>m³.</summary>
    public static readonly Unit CubicMetre = Add(new("m³", Dimension.Volume, 1, 1, 0, "cu m", "cubic metre",
        "cubic metres", "cubic meter", "cubic meters"));
    /// <summary>L.</summary>
    public static readonly Unit Litre = Add(new("L", Dimension.Volume, 1, 1000, 0, "litre", "litres", "liter",
        "liters", "ltr"));
    /// <summary>mL.</summary>
    public static readonly Unit Millilitre = Add(new("mL", Dimension.Volume, 1, 1000000, 0, "millilitre",
        "millilitres", "milliliter", "milliliters", "cm3", "cc", "ccm"));
    /// <summary>ft³.</summary>
    public static readonly Unit CubicFoot = Add(new("ft³", Dimension.Volume, CubicMetresPerCubicFoot, 1, 0,
        "cu ft", "cuft", "cubic foot", "cubic feet"));
    /// <summary>yd³.</summary>
    public static readonly Unit CubicYard = Add(new("yd³", Dimension.Volume, 27 * CubicMetresPerCubicFoot, 1, 0,
        "cu yd", "cuyd", "cubic yard", "cubic yards"));
    /// <summary>US gal, 3.785 411 784 L.</summary>
    public static readonly Unit UsGallon = Add(new("US gal", Dimension.Volume, LitresPerUsGallon, 1000, 0,
        "US gallon", "US gallons", "gal", "gals", "gallon", "gallons"));
    /// <summary>imp gal, 4.546 09 L.</summary>
    public static readonly Unit ImperialGallon = Add(new(
        "imp gal", Dimension.Volume, LitresPerImperialGallon, 1000, 0, "UK gal", "UK gallon", "UK gallons",
        "imperial gallon", "imperial gallons", "imperial gal", "gal", "gals", "gallon", "gallons"));
    /// <summary>US fl oz, 1/128 US gal.</summary>
    public static readonly Unit UsFluidOunce = Add(new("US fl oz", Dimension.Volume, LitresPerUsGallon, 128000, 0,
        "US fluid ounce", "US fluid ounces", "fl oz", "fluid ounce", "fluid ounces", "oz", "ounce", "ounces"));
    /// <summary>imp fl oz, 1/160 imp gal.</summary>
    public static readonly Unit ImperialFluidOunce = Add(new(
        "imp fl oz", Dimension.Volume, LitresPerImperialGallon, 160000, 0, "UK fl oz", "imperial fluid ounce",
        "imperial fluid ounces", "fl oz", "fluid ounce", "fluid ounces", "oz", "ounce", "ounces"));

    // Time.
    /// <summary>s.</summary>
    public static readonly Unit Second = Add(new("s", Dimension.Time, 1, 1, 0, "sec", "secs", "second", "seconds"));
    /// <summary>min.</summary>
    public static readonly Unit Minute = Add(new("min", Dimension.Time, 60, 1, 0, "mins", "minute", "minutes"));
    /// <summary>h.</summary>
    public static readonly Unit Hour = Add(new("h", Dimension.Time, 3600, 1, 0, "hr", "hrs", "hour", "hours"));

    // Speed and turning.
    /// <summary>m/s.</summary>
    public static readonly Unit MetrePerSecond = Per(Metre, Second, Dimension.Speed);
    /// <summary>km/h.</summary>
    public static readonly Unit KilometrePerHour = Per(Kilometre, Hour, Dimension.Speed, "kph", "kmh", "kmph");
    /// <summary>mph.</summary>
    public static readonly Unit MilePerHour = Per("mph", Mile, Hour, Dimension.Speed);
    /// <summary>ft/min.</summary>
    public static readonly Unit FootPerMinute = Per(Foot, Minute, Dimension.Speed, "fpm");
    /// <summary>ft/s.</summary>
    public static readonly Unit FootPerSecond = Per(Foot, Second, Dimension.Speed);
    /// <summary>rev/min, written rpm.</summary>
    public static readonly Unit RevolutionPerMinute = Per("rpm", Revolution, Minute, Dimension.RotationalSpeed);
    /// <summary>rev/s.</summary>
    public static readonly Unit RevolutionPerSecond = Per(Revolution, Second, Dimension.RotationalSpeed, "rps");

    // Temperature: the number a unit adds is in the unit itself, so 32 °F is 273.15 K with no rounding in between.
    /// <summary>K.</summary>
    public static readonly Unit Kelvin = Add(new("K", Dimension.Temperature, 1, 1, 0, "kelvin", "kelvins"));
    /// <summary>°C.</summary>
    public static readonly Unit DegreeCelsius = Add(new("°C", Dimension.Temperature, 1, 1, 273.15m, "C", "deg C",
        "degC", "celsius", "degrees celsius", "degree celsius"));
    /// <summary>°F.</summary>
    public static readonly Unit DegreeFahrenheit = Add(new("°F", Dimension.Temperature, 5, 9, 459.67m, "F",
        "deg F", "degF", "fahrenheit", "degrees fahrenheit", "degree fahrenheit"));

    // Density.
    /// <summary>kg/m³.</summary>
    public static readonly Unit KilogramPerCubicMetre = Per(Kilogram, CubicMetre, Dimension.Density);
    /// <summary>lb/ft³.</summary>
    public static readonly Unit PoundPerCubicFoot = Per(Pound, CubicFoot, Dimension.Density, "pcf");
    /// <summary>g/mL, also read from g/cm³.</summary>
    public static readonly Unit GramPerMillilitre = Per(Gram, Millilitre, Dimension.Density);
    /// <summary>kg/L.</summary>
    public static readonly Unit KilogramPerLitre = Per(Kilogram, Litre, Dimension.Density);
    /// <summary>lb/US gal.</summary>
    public static readonly Unit PoundPerUsGallon = Per(Pound, UsGallon, Dimension.Density);
    /// <summary>lb/imp gal.</summary>
    public static readonly Unit PoundPerImperialGallon = Per(Pound, ImperialGallon, Dimension.Density);
    /// <summary>lb/yd³.</summary>
    public static readonly Unit PoundPerCubicYard = Per(Pound, CubicYard, Dimension.Density);

    // Mass flow and volume flow.
    /// <summary>kg/s.</summary>
    public static readonly Unit KilogramPerSecond = Per(Kilogram, Second, Dimension.MassFlow);
    /// <summary>kg/min.</summary>
    public static readonly Unit KilogramPerMinute = Per(Kilogram, Minute, Dimension.MassFlow);
    /// <summary>kg/h.</summary>
    public static readonly Unit KilogramPerHour = Per(Kilogram, Hour, Dimension.MassFlow);
    /// <summary>g/s.</summary>
    public static readonly Unit GramPerSecond = Per(Gram, Second, Dimension.MassFlow);
    /// <summary>lb/s.</summary>
    public static readonly Unit PoundPerSecond = Per(Pound, Second, Dimension.MassFlow);
    /// <summary>lb/min.</summary>
    public static readonly Unit PoundPerMinute = Per(Pound, Minute, Dimension.MassFlow);
    /// <summary>lb/h.</summary>
    public static readonly Unit PoundPerHour = Per(Pound, Hour, Dimension.MassFlow);
    /// <summary>t/h.</summary>
    public static readonly Unit TonnePerHour = Per(Tonne, Hour, Dimension.MassFlow);
    /// <summary>short ton/h.</summary>
    public static readonly Unit ShortTonPerHour = Per(ShortTon, Hour, Dimension.MassFlow);
    /// <summary>long ton/h.</summary>
    public static readonly Unit LongTonPerHour = Per(LongTon, Hour, Dimension.MassFlow);
    /// <summary>L/min.</summary>
    public static readonly Unit LitrePerMinute = Per(Litre, Minute, Dimension.VolumeFlow, "lpm");
    /// <summary>US gal/min.</summary>
    public static readonly Unit UsGallonPerMinute = Per(UsGallon, Minute, Dimension.VolumeFlow, "US gpm", "gpm");
    /// <summary>imp gal/min.</summary>
    public static readonly Unit ImperialGallonPerMinute = Per(ImperialGallon, Minute, Dimension.VolumeFlow,
        "imp gpm", "gpm");
    /// <summary>m³/h.</summary>
    public static readonly Unit CubicMetrePerHour = Per(CubicMetre, Hour, Dimension.VolumeFlow);
    /// <summary>m³/s.</summary>
    public static readonly Unit CubicMetrePerSecond = Per(CubicMetre, Second, Dimension.VolumeFlow);

    // Rates on the road, per length of one lane. Some handbooks print per mile of a two-lane road.
    /// <summary>lb/lane-mile.</summary>
    public static readonly Unit PoundPerLaneMile = Per(Pound, LaneMile, Dimension.LaneRate);
    /// <summary>kg/lane-km.</summary>
    public static readonly Unit KilogramPerLaneKilometre = Per(Kilogram, LaneKilometre, Dimension.LaneRate);
    /// <summary>lb per mile of a two-lane road, half as much on each lane.</summary>
    public static readonly Unit PoundPerTwoLaneMile = Per(Pound, TwoLaneMile, Dimension.LaneRate);
    /// <summary>kg per kilometre of a two-lane road, half as much on each lane.</summary>
    public static readonly Unit KilogramPerTwoLaneKilometre = Per(Kilogram, TwoLaneKilometre, Dimension.LaneRate);
    /// <summary>US gal/lane-mile.</summary>
    public static readonly Unit UsGallonPerLaneMile = Per(UsGallon, LaneMile, Dimension.LiquidLaneRate);
    /// <summary>imp gal/lane-mile.</summary>
    public static readonly Unit ImperialGallonPerLaneMile = Per(ImperialGallon, LaneMile, Dimension.LiquidLaneRate);
    /// <summary>L/lane-km.</summary>
    public static readonly Unit LitrePerLaneKilometre = Per(Litre, LaneKilometre, Dimension.LiquidLaneRate);
    /// <summary>US gal per mile of a two-lane road.</summary>
    public static readonly Unit UsGallonPerTwoLaneMile = Per(UsGallon, TwoLaneMile, Dimension.LiquidLaneRate);
    /// <summary>imp gal per mile of a two-lane road.</summary>
    public static readonly Unit ImperialGallonPerTwoLaneMile =
        Per(ImperialGallon, TwoLaneMile, Dimension.LiquidLaneRate);
    /// <summary>L per kilometre of a two-lane road.</summary>
    public static readonly Unit LitrePerTwoLaneKilometre = Per(Litre, TwoLaneKilometre, Dimension.LiquidLaneRate);

    // Rates on the road, per area.
    /// <summary>g/m².</summary>
    public static readonly Unit GramPerSquareMetre = Per(Gram, SquareMetre, Dimension.AreaRate, "gsm");
    /// <summary>kg/m².</summary>
    public static readonly Unit KilogramPerSquareMetre = Per(Kilogram, SquareMetre, Dimension.AreaRate);
    /// <summary>lb/1000 ft².</summary>
    public static readonly Unit PoundPerThousandSquareFeet = Per(Pound, ThousandSquareFeet, Dimension.AreaRate);
    /// <summary>mL/m².</summary>
    public static readonly Unit MillilitrePerSquareMetre = Per(Millilitre, SquareMetre, Dimension.LiquidAreaRate);
    /// <summary>L/m².</summary>
    public static readonly Unit LitrePerSquareMetre = Per(Litre, SquareMetre, Dimension.LiquidAreaRate);
    /// <summary>US gal/1000 ft².</summary>
    public static readonly Unit UsGallonPerThousandSquareFeet =
        Per(UsGallon, ThousandSquareFeet, Dimension.LiquidAreaRate);
    /// <summary>imp gal/1000 ft².</summary>
    public static readonly Unit ImperialGallonPerThousandSquareFeet =
        Per(ImperialGallon, ThousandSquareFeet, Dimension.LiquidAreaRate);

    // Liquid per mass of dry material.
    /// <summary>US gal/short ton.</summary>
    public static readonly Unit UsGallonPerShortTon = Per(UsGallon, ShortTon, Dimension.LiquidPerMass);
    /// <summary>imp gal/long ton.</summary>
    public static readonly Unit ImperialGallonPerLongTon = Per(ImperialGallon, LongTon, Dimension.LiquidPerMass);
    /// <summary>L/t.</summary>
    public static readonly Unit LitrePerTonne = Per(Litre, Tonne, Dimension.LiquidPerMass);
    /// <summary>L/short ton.</summary>
    public static readonly Unit LitrePerShortTon = Per(Litre, ShortTon, Dimension.LiquidPerMass);
    /// <summary>L/long ton.</summary>
    public static readonly Unit LitrePerLongTon = Per(Litre, LongTon, Dimension.LiquidPerMass);
    /// <summary>US gal/t.</summary>
    public static readonly Unit UsGallonPerTonne = Per(UsGallon, Tonne, Dimension.LiquidPerMass);
    /// <summary>imp gal/t.</summary>
    public static readonly Unit ImperialGallonPerTonne = Per(ImperialGallon, Tonne, Dimension.LiquidPerMass);
    /// <summary>L/kg.</summary>
    public static readonly Unit LitrePerKilogram = Per(Litre, Kilogram, Dimension.LiquidPerMass);

    // Calibration constants.
    /// <summary>pulse/kg.</summary>
    public static readonly Unit PulsePerKilogram = Per(Pulse, Kilogram, Dimension.PulsesPerMass);
    /// <summary>pulse/lb.</summary>
    public static readonly Unit PulsePerPound = Per(Pulse, Pound, Dimension.PulsesPerMass);
    /// <summary>pulse/g.</summary>
    public static readonly Unit PulsePerGram = Per(Pulse, Gram, Dimension.PulsesPerMass);
    /// <summary>kg/pulse.</summary>
    public static readonly Unit KilogramPerPulse = Per(Kilogram, Pulse, Dimension.MassPerPulse);
    /// <summary>g/pulse.</summary>
    public static readonly Unit GramPerPulse = Per(Gram, Pulse, Dimension.MassPerPulse);
    /// <summary>lb/pulse.</summary>
    public static readonly Unit PoundPerPulse = Per(Pound, Pulse, Dimension.MassPerPulse);
    /// <summary>pulse/L.</summary>
    public static readonly Unit PulsePerLitre = Per(Pulse, Litre, Dimension.PulsesPerVolume);
    /// <summary>pulse/US gal.</summary>
    public static readonly Unit PulsePerUsGallon = Per(Pulse, UsGallon, Dimension.PulsesPerVolume);
    /// <summary>pulse/imp gal.</summary>
    public static readonly Unit PulsePerImperialGallon = Per(Pulse, ImperialGallon, Dimension.PulsesPerVolume);
    /// <summary>pulse/m.</summary>
    public static readonly Unit PulsePerMetre = Per(Pulse, Metre, Dimension.PulsesPerLength);
    /// <summary>pulse/km.</summary>
    public static readonly Unit PulsePerKilometre = Per(Pulse, Kilometre, Dimension.PulsesPerLength);
    /// <summary>pulse/ft.</summary>
    public static readonly Unit PulsePerFoot = Per(Pulse, Foot, Dimension.PulsesPerLength);
    /// <summary>pulse/mile.</summary>
    public static readonly Unit PulsePerMile = Per(Pulse, Mile, Dimension.PulsesPerLength);
    /// <summary>pulse/rev.</summary>
    public static readonly Unit PulsePerRevolution = Per(Pulse, Revolution, Dimension.PulsesPerRevolution);
    /// <summary>kg/rev.</summary>
    public static readonly Unit KilogramPerRevolution = Per(Kilogram, Revolution, Dimension.MassPerRevolution);
    /// <summary>g/rev.</summary>
    public static readonly Unit GramPerRevolution = Per(Gram, Revolution, Dimension.MassPerRevolution);
    /// <summary>lb/rev.</summary>
    public static readonly Unit PoundPerRevolution = Per(Pound, Revolution, Dimension.MassPerRevolution);
}
