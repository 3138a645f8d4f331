namespace Lanewright.Core.Tests.Text;

/// <summary>
/// Numbers with units as people type them. One column after the text: the same everywhere. Three: in en-US; in en-GB;
/// where no customary units are set. "or" parts the meanings of a question; a word without a digit is a problem.
/// </summary>
internal static class AmountTable
{
    internal const string Rows =
        """
        5 kg | 5 kg
        5kg | 5 kg
        5 KG | 5 kg
        5 Kg. | 5 kg
        5 kilograms | 5 kg
        5 kilo | 5 kg
        5 lb | 5 lb
        5lbs | 5 lb
        5 LBS. | 5 lb
        5 pounds | 5 lb
        5# | 5 lb
        12,5 lb | 12.5 lb
        1.250,5 kg | 1250.5 kg
        1 250 kg | 1250 kg
        −3 kg | -3 kg
        3e3 lb | 3000 lb
        3e3lb | 3000 lb
        1/2 in | 0.5 in
        1 1/2 in | 1.5 in
        1-1/2 in | 1.5 in
        1½in | 1.5 in
        ½ in | 0.5 in
        5 g | 5 g
        5 mg | 5 mg
        5 Mg | 5 mg or 5 t
        5 t | 5 t
        5 T | 5 short ton | 5 long ton | 5 t or 5 short ton or 5 long ton
        5 ton | 5 short ton | 5 long ton | 5 t or 5 short ton or 5 long ton
        5 tons | 5 short ton | 5 long ton | 5 t or 5 short ton or 5 long ton
        5 Tons | 5 short ton | 5 long ton | 5 t or 5 short ton or 5 long ton
        5 short tons | 5 short ton
        5 long tons | 5 long ton
        5 US tons | 5 short ton
        5 metric tons | 5 t
        5 tonnes | 5 t
        5 gal | 5 US gal | 5 imp gal | 5 US gal or 5 imp gal
        5 gallons | 5 US gal | 5 imp gal | 5 US gal or 5 imp gal
        5 US gal | 5 US gal
        5 U.S. gal. | 5 US gal
        5 imp gal | 5 imp gal
        5 imperial gallons | 5 imp gal
        5 oz | 5 oz or 5 US fl oz | 5 oz or 5 imp fl oz | 5 oz or 5 US fl oz or 5 imp fl oz
        5 fl oz | 5 US fl oz | 5 imp fl oz | 5 US fl oz or 5 imp fl oz
        5 fl. oz. | 5 US fl oz | 5 imp fl oz | 5 US fl oz or 5 imp fl oz
        5 L | 5 L
        5 l | 5 L
        5 ℓ | 5 L
        5 litres | 5 L
        5 liter | 5 L
        5 mL | 5 mL
        5 cc | 5 mL
        5 m3 | 5 m³
        5 m³ | 5 m³
        5 m^3 | 5 m³
        5 cu yd | 5 yd³
        5 yd3 | 5 yd³
        5 cubic yards | 5 yd³
        5 ft3 | 5 ft³
        5 m | 5 m
        5 km | 5 km
        5 mi | 5 mile
        5 miles | 5 mile
        5 mm | 5 mm
        5 cm | 5 cm
        5 in | 5 in
        5 in. | 5 in
        5 inches | 5 in
        5" | 5 in
        5” | 5 in
        5″ | 5 in
        5 ft | 5 ft
        5' | 5 ft
        5’ | 5 ft
        5 feet | 5 ft
        12 ft 6 in | 12.5 ft
        12ft6in | 12.5 ft
        12' 6" | 12.5 ft
        12'6" | 12.5 ft
        12’6” | 12.5 ft
        12'6'' | 12.5 ft
        12'-6" | 12.5 ft
        12 ft-6 in | 12.5 ft
        12 ft 6 1/2 in | 12.541666666666666 ft
        12 ft 6½ in | 12.541666666666666 ft
        12 ft ½ in | 12.041666666666666 ft
        -12 ft 6 in | -12.5 ft
        2 yd 1 ft 6 in | 2.5 yd
        5 lb 4 oz | 5.25 lb
        5 lb 4 oz. | 5.25 lb
        1 kg 500 g | 1.5 kg
        2 m 50 cm | 2.5 m
        1 mile 2640 ft | 1.5 mile
        1 min 30 s | 1.5 min
        1 h 30 min | 1.5 h
        1h30min | 1.5 h
        1 h 29 min 60 s | UnknownUnit
        1 h 30 min 0 s | 1.5 h
        12 ft 6 | UnknownUnit
        12 ft 12 in | UnknownUnit
        12.5 ft 6 in | UnknownUnit
        12 ft -6 in | UnknownUnit
        12 ft - 6 in | UnknownUnit
        6 in 12 ft | UnknownUnit
        5 lb 4 g | UnknownUnit
        5 lb 4 ft | UnknownUnit
        5 °C 3 °C | UnknownUnit
        1 mile 1 yd 1 ft 1 in | UnknownUnit
        5 m2 | 5 m²
        5 m² | 5 m²
        5 sq ft | 5 ft²
        5 square feet | 5 ft²
        5 s | 5 s
        5 sec | 5 s
        5 min | 5 min
        5 minutes | 5 min
        5 h | 5 h
        5 hrs | 5 h
        20 mph | 20 mph
        20 miles per hour | 20 mph
        20 mi/h | 20 mph
        40 km/h | 40 km/h
        40 KPH | 40 km/h
        40 kmh | 40 km/h
        5 m/s | 5 m/s
        10 ft/min | 10 ft/min
        80 lb/ft3 | 80 lb/ft³
        80 lb/cu ft | 80 lb/ft³
        80 lbs per cubic foot | 80 lb/ft³
        80 pcf | 80 lb/ft³
        1.2 g/mL | 1.2 g/mL
        1,2 g/cm³ | 1.2 g/mL
        1.2 kg/L | 1.2 kg/L
        9.8 lb/gal | 9.8 lb/US gal | 9.8 lb/imp gal | 9.8 lb/US gal or 9.8 lb/imp gal
        2000 lb/yd3 | 2000 lb/yd³
        5 kg/s | 5 kg/s
        5 kg/min | 5 kg/min
        5 lb/min | 5 lb/min
        5 lb per minute | 5 lb/min
        5 lbs / min. | 5 lb/min
        5 LB/MIN | 5 lb/min
        5 lb/MİN | 5 lb/min
        5 lb/hr | 5 lb/h
        5 t/h | 5 t/h
        5 ton/h | 5 short ton/h | 5 long ton/h | 5 t/h or 5 short ton/h or 5 long ton/h
        5 L/min | 5 L/min
        5 gpm | 5 US gal/min | 5 imp gal/min | 5 US gal/min or 5 imp gal/min
        5 gal/min | 5 US gal/min | 5 imp gal/min | 5 US gal/min or 5 imp gal/min
        5 m3/h | 5 m³/h
        30 rpm | 30 rpm
        30 rev/min | 30 rpm
        30 turns per minute | 30 rpm
        3 rev/s | 3 rev/s
        20 °C | 20 °C
        20°C | 20 °C
        20 ºC | 20 °C
        20 ℃ | 20 °C
        20 C | 20 °C
        -5 °F | -5 °F
        −5 f | -5 °F
        15 deg F | 15 °F
        15 degrees fahrenheit | 15 °F
        270 K | 270 K
        300 lb/lane-mile | 300 lb/lane-mile
        300 lb/lane mile | 300 lb/lane-mile
        300 lb per lane-mile | 300 lb/lane-mile
        300 lb/LM | 300 lb/lane-mile
        300 lbs/lane mi | 300 lb/lane-mile
        300 lb/two-lane mile | 300 lb/two-lane mile
        300 lb/2-lane mile | 300 lb/two-lane mile
        300 lb/mile | 300 lb/lane-mile or 300 lb/two-lane mile
        300 lb/mi | 300 lb/lane-mile or 300 lb/two-lane mile
        300 pounds per mile | 300 lb/lane-mile or 300 lb/two-lane mile
        80 kg/lane-km | 80 kg/lane-km
        80 kg/km | 80 kg/lane-km or 80 kg/two-lane km
        40 US gal/lane-mile | 40 US gal/lane-mile
        40 L/lane-km | 40 L/lane-km
        40 L/km | 40 L/lane-km or 40 L/two-lane km
        20 g/m2 | 20 g/m²
        20 g/m^2 | 20 g/m²
        20 g/m² | 20 g/m²
        20 g per square metre | 20 g/m²
        20 gsm | 20 g/m²
        1 kg/m2 | 1 kg/m²
        4.7 lb/1000 ft2 | 4.7 lb/1000 ft²
        4.7 lb/1,000 ft² | 4.7 lb/1000 ft²
        4.7 lb per 1,000 sq. ft | 4.7 lb/1000 ft²
        30 mL/m2 | 30 mL/m²
        10 US gal/short ton | 10 US gal/short ton
        10 L/t | 10 L/t
        10 L/tonne | 10 L/t
        10 L/ton | 10 L/short ton | 10 L/long ton | 10 L/t or 10 L/short ton or 10 L/long ton
        90 pulse/lb | 90 pulse/lb
        90 pulses per lb | 90 pulse/lb
        90 pulses/pound | 90 pulse/lb
        200 pulse/kg | 200 pulse/kg
        2 g/pulse | 2 g/pulse
        0.01 lb/pulse | 0.01 lb/pulse
        400 pulse/L | 400 pulse/L
        4000 pulse/mile | 4000 pulse/mile
        4000 pulses per mile | 4000 pulse/mile
        2.5 pulse/m | 2.5 pulse/m
        360 pulse/rev | 360 pulse/rev
        7 lb/rev | 7 lb/rev
        7 lb per revolution | 7 lb/rev
        300 pulses | 300 pulse
        12 turns | 12 rev
        5% | 5 %
        5 % | 5 %
        5 percent | 5 %
        5 per cent | 5 %
        5 ‰ | 5 ‰
        0.05 ratio | 0.05 ratio
        5 | MissingUnit
        kg | NotANumber
        kg 5 | NotANumber
        5 kg kg | UnknownUnit
        5 kg, 3 | UnknownUnit
        5 furlongs | UnknownUnit
        5 lb/ | UnknownUnit
        5 /lb | UnknownUnit
        5 lb/min/s | UnknownUnit
        5 kg/kg | UnknownUnit
        5 lb^2 | UnknownUnit
        5 кг | UnknownUnit
        5 公斤 | UnknownUnit
        5 lb🚚 | UnknownUnit
        1..2 kg | NotANumber
        1.2.3 kg | NotANumber
        1,25,000 lb | NotANumber
        1e400 kg | OutOfRange
        1e308 t | OutOfRange
        """;
}
