using Lanewright.Core.Register;
using Lanewright.Storage.Entries;

namespace Lanewright.Host;

/// <summary>Which role may make which kind of entry; asked by the API and by the office's forms alike.</summary>
internal static class Rights
{
    /// <summary>Whether a role may make an entry of a kind. A kind that is not known counts as a technician's.</summary>
    internal static bool Allows(PersonRole role, string kind) => role >= Least(kind);

    /// <summary>The role's word in the register.</summary>
    internal static string Word(PersonRole role) => RegisterReader.Roles.First(word => word.Value == role).Text;

    /// <summary>The least role for a kind of entry.</summary>
    internal static PersonRole Least(string kind) => kind switch
    {
        EntryKinds.TestBegin or EntryKinds.TestField or EntryKinds.TestPhoto or EntryKinds.TestNote
            or EntryKinds.SpreaderEvent => PersonRole.Operator,
        "register.person" or "register.depot" or "register.rules" => PersonRole.Supervisor,
        _ => PersonRole.Technician,
    };
}
