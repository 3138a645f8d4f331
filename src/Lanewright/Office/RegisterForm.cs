using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Text;
using Lanewright.Storage.Records;

namespace Lanewright.Office;

/// <summary>A form over one record of the register, as it is shown.</summary>
internal sealed record RegisterForm
{
    /// <summary>Name of the field that says why a record is changed.</summary>
    internal const string WhyField = "why";

    internal required RegisterKind Kind { get; init; }

    /// <summary>The record; null for a new one.</summary>
    internal RegisterItem? Item { get; init; }

    /// <summary>What stands in the fields.</summary>
    internal required IReadOnlyDictionary<string, string> Texts { get; init; }

    /// <summary>How the numbers in the fields are written.</summary>
    internal TextCulture Numbers { get; init; } = OfficeText.Culture;

    internal IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>What is said above the form; null for nothing.</summary>
    internal string? Notice { get; init; }

    internal string Why { get; init; } = "";

    /// <summary>Identity of the entry that the form will make.</summary>
    internal string Entry { get; init; } = OfficeChange.NewId();

    /// <summary>Identity of the record; made with the form for a new one.</summary>
    internal string Subject { get; init; } = OfficeChange.NewId();

    /// <summary>Values that others have, offered while typing, by path.</summary>
    internal IReadOnlyDictionary<string, IReadOnlyList<string>> Suggestions { get; init; } =
        new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>The versions in conflict; empty when there is one.</summary>
    internal IReadOnlyList<RegisterVersion> Versions { get; init; } = [];

    internal string Action => Item is null && Kind.Key.Length > 0 ? $"/office/{Kind.List}/new" : $"/office/{Kind.List}/{Subject}/edit";

    internal IReadOnlyList<Finding> FindingsOf(string path) => [.. Findings.Where(finding => finding.Field == path)];

    /// <summary>What is found about no single field.</summary>
    internal IReadOnlyList<Finding> OtherFindings =>
        [.. Findings.Where(finding => finding.Field != WhyField && Kind.Fields.All(one => one.Path != finding.Field))];
}

/// <summary>One of several versions of a record that stand beside one another.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Texts">Its fields.</param>
internal sealed record RegisterVersion(Storage.Entries.Entry Entry, IReadOnlyDictionary<string, string> Texts);
