using Lanewright.Core.Exchange;
using Lanewright.Core.Findings;
using Lanewright.Core.Register;
using Lanewright.Core.Text;

namespace Lanewright.Office;

/// <summary>A kind of record that the office keeps.</summary>
/// <param name="Word">Its word in the register, e.g. <c>spreader</c>.</param>
/// <param name="List">Its place under /office, and its word on the command line.</param>
/// <param name="One">What one is called.</param>
/// <param name="Many">What several are called.</param>
/// <param name="Add">Adding one, as on a button.</param>
/// <param name="FieldsOf">Heading of its fields.</param>
/// <param name="Key">The field by which people know it.</param>
/// <param name="Read">Asks for its fields.</param>
internal sealed record RegisterKind(
    string Word, string List, Phrase One, Phrase Many, Phrase Add, Phrase FieldsOf, string Key, Func<Fields, object?> Read)
{
    internal static readonly RegisterKind Spreader = new("spreader", "spreaders", "spreader", "spreaders", "Add a spreader", "Fields of spreaders", "id", RegisterReader.Spreader);
    internal static readonly RegisterKind Scale = new("scale", "scales", "scale", "scales", "Add a scale", "Fields of scales", "id", RegisterReader.Scale);
    internal static readonly RegisterKind Material = new("material", "materials", "material", "materials", "Add a material", "Fields of materials", "name", RegisterReader.Material);
    internal static readonly RegisterKind Person = new("person", "people", "person", "people", "Add a person", "Fields of people", "name", RegisterReader.Person);
    internal static readonly RegisterKind Depot = new("depot", "depots", "depot", "depots", "Add a depot", "Fields of depots", "name", RegisterReader.Depot);
    internal static readonly RegisterKind Rules = new("rules", "rules", "yard's rules", "rules", "Change the rules", "Fields of rules", "", RegisterReader.Rules);

    /// <summary>Every kind, in the order in which they are shown.</summary>
    internal static IReadOnlyList<RegisterKind> All { get; } = [Spreader, Scale, Material, Person, Depot, Rules];

    /// <summary>The kinds that come and go as lists in files.</summary>
    internal static IReadOnlyList<RegisterKind> InFiles { get; } = [Spreader, Scale, Material, Person];

    /// <summary>The kind of entry that changes it.</summary>
    internal string Entry => "register." + Word;

    /// <summary>Its fields.</summary>
    internal IReadOnlyList<AskedField> Fields { get; } = AskedFields.Of(Read);

    internal static RegisterKind? Find(string list) => All.FirstOrDefault(kind => kind.List == list);

    /// <summary>Reads typed texts.</summary>
    internal RegisterTexts Take(IReadOnlyDictionary<string, string> texts, TextCulture culture)
    {
        var (reading, fields) = AskedFields.Read(texts, culture, Read);
        return new(reading.Value, reading.Findings, fields);
    }
}

/// <summary>What came of reading a record's texts.</summary>
/// <param name="Value">The record; null when it cannot be used.</param>
/// <param name="Findings">What was found.</param>
/// <param name="Fields">Its fields, each with its text for every reader.</param>
internal sealed record RegisterTexts(object? Value, IReadOnlyList<Finding> Findings, IReadOnlyList<AskedField> Fields)
{
    internal bool IsUsable => Value is not null && Findings.All(finding => finding.Severity != Severity.Stop);
}
