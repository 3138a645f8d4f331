using Lanewright.Core.Statistics;
using Lanewright.Core.Uncertainty;

namespace Lanewright.Core.Season;

/// <summary>The shape a pile is taken for.</summary>
public enum PileShape
{
    /// <summary>A circular cone.</summary>
    Cone,

    /// <summary>A ridge of triangular section with half a cone at each end.</summary>
    Windrow,
}

/// <summary>
/// A pile as surveyed: lengths in metres, each with its error. Volume by geometry: cone pi w^2 h / 12; windrow
/// (L - w) w h / 2 + pi w^2 h / 12; with an angle instead of a height h = (w / 2) tan(angle).
/// </summary>
/// <param name="Shape">The shape.</param>
/// <param name="Width">Diameter of the cone, or width of the windrow's foot, m.</param>
/// <param name="Length">Whole length of the windrow's foot, m; not used for a cone.</param>
/// <param name="Height">Height, m.</param>
public sealed record PileSurvey(PileShape Shape, Measured Width, Measured Length, Measured Height)
{
    /// <summary>Height from the slope's angle to the ground.</summary>
    /// <param name="width">Width of the foot, m.</param>
    /// <param name="angle">In radians, between 0 and a right angle.</param>
    public static Measured HeightOf(Measured width, Measured angle)
    {
        if (!(angle.Value > 0 && angle.Value < Math.PI / 2))
            throw new ArgumentOutOfRangeException(nameof(angle), angle.Value, "Must lie between 0 and a right angle.");
        var tangent = Elementary.Sin(angle.Value) / Elementary.Cos(angle.Value);
        return width * angle.Map(tangent, 1 + (tangent * tangent)) * 0.5;
    }

    /// <summary>The volume, m3.</summary>
    public Measured Volume
    {
        get
        {
            var cone = Width * Width * Height * (Math.PI / 12);
            return Shape is PileShape.Cone ? cone : ((Length - Width) * Width * Height * 0.5) + cone;
        }
    }

    /// <summary>The mass, kg.</summary>
    /// <param name="density">Bulk density of the pile as it lies, kg/m3; surveys that took it from one place share its error.</param>
    public Measured Mass(Measured density) => Volume * density;
}
