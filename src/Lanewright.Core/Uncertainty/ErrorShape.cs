namespace Lanewright.Core.Uncertainty;

/// <summary>The distribution assigned to an error source, always of mean 0 and standard deviation 1.</summary>
public enum ErrorShape
{
    /// <summary>Normal; with finite degrees of freedom the spread itself was estimated and the shape is a scaled t.</summary>
    Normal,

    /// <summary>Rectangular between limits: half-width a gives standard deviation a/sqrt(3) (GUM 4.3.7).</summary>
    Rectangular,

    /// <summary>Symmetric triangular between limits: half-width a gives a/sqrt(6) (GUM 4.3.9).</summary>
    Triangular,

    /// <summary>Arcsine (U-shaped) between limits: half-width a gives a/sqrt(2) (JCGM 101, 6.4.6).</summary>
    Arcsine,
}
