namespace Lanewright.Documents;

/// <summary>The paper of a card.</summary>
public enum CardPaper
{
    /// <summary>A5 lying, 210 mm by 148 mm.</summary>
    A5,

    /// <summary>US letter lying, 11 in by 8.5 in.</summary>
    Letter,
}
