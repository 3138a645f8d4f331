using System.Reflection;
using Lanewright.Core.Quantities;

namespace Lanewright.Core.Tests.Quantities;

/// <summary>Walks over every quantity, so that a new one is checked the day it is written.</summary>
public sealed class QuantityFactoryTests
{
    private static readonly Type[] Quantities =
    [
        .. typeof(Mass).Assembly.GetExportedTypes().Where(type => type.IsValueType && Array.Exists(
            type.GetInterfaces(),
            face => face.IsGenericType && face.GetGenericTypeDefinition() == typeof(IQuantity<>))),
    ];

    public static TheoryData<string> Names => [.. Quantities.Select(type => type.Name)];

    [Fact]
    public void There_is_exactly_one_quantity_for_each_dimension() =>
        Assert.Equal(
            Enum.GetValues<Dimension>().Order(),
            Quantities.Select(type => (Dimension)type.GetProperty("Dimension")!.GetValue(null)!).Order());

    [Theory]
    [MemberData(nameof(Names))]
    public void Each_unit_of_the_dimension_has_a_factory_and_a_property_that_undo_each_other(string name)
    {
        var type = Quantities.Single(type => type.Name == name);
        var dimension = (Dimension)type.GetProperty("Dimension")!.GetValue(null)!;
        var factories = type.GetMethods(BindingFlags.Public | BindingFlags.Static)
            .Where(method => method.Name.StartsWith("From", StringComparison.Ordinal) && method.Name != "FromSi")
            .ToList();
        var values = new List<double>();
        foreach (var factory in factories)
        {
            var quantity = factory.Invoke(null, [12.5])!;
            var property = type.GetProperty(factory.Name[4..]) ?? type.GetProperty("PerRevolution");
            Assert.NotNull(property);
            Assert.Equal(12.5, (double)property.GetValue(quantity)!, 1e-12);
            values.Add((double)type.GetProperty("Si")!.GetValue(quantity)!);
        }

        Assert.Equal(Units.Of(dimension).Select(unit => unit.ToSi(12.5)).Order(), values.Order());
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_quantity_can_be_NaN_or_infinite(string name)
    {
        var fromSi = Quantities.Single(type => type.Name == name).GetMethod("FromSi")!;
        foreach (var value in new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity })
        {
            var thrown = Assert.Throws<TargetInvocationException>(() => fromSi.Invoke(null, [value]));
            Assert.IsType<ArgumentOutOfRangeException>(thrown.InnerException);
        }
    }

    [Fact]
    public void A_density_is_greater_than_zero()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Density.FromKilogramsPerCubicMetre(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Density.FromPoundsPerCubicFoot(-80));
        Assert.Equal(80, Density.FromPoundsPerCubicFoot(80).PoundsPerCubicFoot, 1e-12);
    }

    [Fact]
    public void A_temperature_is_not_below_absolute_zero()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromDegreesCelsius(-273.16));
        Assert.Throws<ArgumentOutOfRangeException>(() => Temperature.FromDegreesFahrenheit(-460));
        Assert.Equal(0, Temperature.FromDegreesCelsius(-273.15).Kelvins);
    }

    // NIST SP 811 (2008), B.8: freezing point of water, and the one temperature both scales share.
    [Fact]
    public void The_temperature_scales_meet_where_they_should()
    {
        Assert.Equal(Temperature.FromDegreesCelsius(0), Temperature.FromDegreesFahrenheit(32));
        Assert.Equal(-40, Temperature.FromDegreesCelsius(-40).DegreesFahrenheit, 1e-12);
        Assert.Equal(212, Temperature.FromDegreesCelsius(100).DegreesFahrenheit, 1e-12);
    }
}
