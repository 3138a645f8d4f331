using Lanewright.Core.Text;
using Lanewright.Storage;
using Lanewright.Storage.Entries;
using static Lanewright.Office.OfficeText;

namespace Lanewright.Host;

/// <summary>
/// Which of the entries sent are not taken in, because of who sends them. They are not kept here in any form; the device
/// that made them keeps them. Where nobody has an account, all are taken.
/// </summary>
internal static class TurnedAway
{
    private const string Wait = "wait";
    private const string Refused = "refused";

    /// <summary>For each entry the answer that turns it away; null for one to take in.</summary>
    internal static async Task<IReadOnlyList<PostResult?>> OfAsync(
        HttpContext context, EntryStore store, IReadOnlyList<EntryReading> sent, CancellationToken stop)
    {
        if (Actors.Mode(context) is not AccountsMode.Accounts) return new PostResult?[sent.Count];
        // Without a session nothing gets here; it would be the mistake of another file to let it.
        var actor = Actors.Of(context) ?? throw new InvalidOperationException("Nobody is signed in.");
        var answers = new List<PostResult?>(sent.Count);
        foreach (var one in sent)
        {
            var answer = Of(actor, one);
            // An entry that is here already needs no right to be sent again: the answer to its first sending was lost.
            var there = answer is null || one.Draft is null ? null : await store.FindAsync(one.Draft.Id, stop);
            answers.Add(there is null || !there.SameContent(one.Draft!) ? answer : null);
        }

        return answers;
    }

    private static PostResult? Of(Actor actor, EntryReading one)
    {
        Phrase signedIn = $"{actor.Person} is signed in as {Role(Rights.Word(actor.Role))}";
        if (one.Draft is not { } draft)
        {
            // What is not understood is kept aside, from those who may send anything at all.
            return Rights.Allows(actor.Role, EntryKinds.TestNote) ? null : new(one.Id, Refused, null, Say($"{signedIn}, who sends nothing."));
        }

        if (draft.Person != actor.Person)
            return new(draft.Id, Wait, null, Say($"Made by {draft.Person}: sign in as {draft.Person} to send it."));
        return Rights.Allows(actor.Role, draft.Kind)
            ? null
            : new(draft.Id, Refused, null, Say($"{What(draft.Kind)} needs the role {Role(Rights.Word(Rights.Least(draft.Kind)))}; {signedIn}."));
    }

    // What somebody did, in words for a person.
    private static string What(string kind) => kind switch
    {
        EntryKinds.TestDecision => Say("Deciding a test"),
        EntryKinds.SpreaderEvent => Say("Writing down what was done to a spreader"),
        _ when kind.StartsWith(EntryKinds.TestPrefix, StringComparison.Ordinal) => Say("Writing in a test"),
        _ when kind.StartsWith(EntryKinds.RegisterPrefix, StringComparison.Ordinal) => Say("Changing this list of the register"),
        _ => kind,
    };
}
