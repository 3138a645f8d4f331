namespace Lanewright.Documents;

/// <summary>The paper of a document that stands upright.</summary>
public enum Paper
{
    /// <summary>A4, 210 mm by 297 mm.</summary>
    A4,

    /// <summary>US letter, 8.5 in by 11 in.</summary>
    Letter,
}
