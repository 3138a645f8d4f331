namespace Lanewright.Storage;

/// <summary>The words of the statuses in answers and files.</summary>
public static class AppendWords
{
    /// <summary>The word of a status.</summary>
    public static string Of(AppendStatus status) => status switch
    {
        AppendStatus.Accepted => "accepted",
        AppendStatus.Have => "have",
        AppendStatus.Conflict => "conflict",
        _ => "rejected",
    };
}
