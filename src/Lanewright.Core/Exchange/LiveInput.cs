using Lanewright.Core.Findings;
using Lanewright.Core.Quantities;
using Lanewright.Core.Spreading;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>What a page sends: the fields typed so far and how the person writes numbers.</summary>
internal sealed class LiveInput
{
    // Read once: reading a number is the dear part of an answer in a browser.
    private readonly Dictionary<string, Mass?> masses = new(StringComparer.Ordinal);

    private LiveInput()
    {
    }

    /// <summary>Typed texts by path; the question of the test and the units are among them.</summary>
    internal Dictionary<string, string> Fields { get; } = new(StringComparer.Ordinal);

    /// <summary>How numbers are written, in what was typed and in the answer.</summary>
    internal TextCulture Culture { get; private set; } = TextCulture.Invariant;

    /// <summary>Units of bare numbers.</summary>
    internal BareUnits Bare { get; private set; } = BareUnits.Of(null);

    /// <summary>Units to answer in.</summary>
    internal UnitPreferences Units { get; private set; } = UnitPreferences.Metric;

    /// <summary>How the catch is to be weighed, for a plan; empty when nobody said.</summary>
    internal string Method { get; private set; } = "";

    /// <summary>The delivery to expect, for a plan, as typed; empty when nobody said.</summary>
    internal string Delivery { get; private set; } = "";

    /// <summary>What was wrong with the text itself.</summary>
    internal IReadOnlyList<Finding> Findings { get; private set; } = [];

    internal bool IsVerification => string.Equals(Text("kind"), "verification", StringComparison.OrdinalIgnoreCase);

    /// <summary>Reads the text; whatever is wrong with it is a finding.</summary>
    internal static LiveInput Read(string json)
    {
        var tree = JsonTree.Read(json);
        var input = new LiveInput { Findings = tree.Findings };
        if (tree.Root is not { Kind: NodeKind.Map } root) return input;
        foreach (var node in root.Find("fields")?.Children ?? [])
        {
            if (node is { Name: { } name, Kind: NodeKind.Text }) input.Fields[name] = node.Literal;
        }

        // The test's own culture, units and question stand before the page's: two devices read one text alike.
        input.Settle(root, "culture");
        input.Settle(root, "units");
        input.Settle(root, "kind");
        input.Culture = TextCulture.TryFind(input.Text("culture"), out var culture) ? culture : TextCulture.Invariant;
        // The words are the page's own: two people may read one test in two languages.
        if (root.Find("language") is { Kind: NodeKind.Text } speech && Language.TryFind(speech.Literal, out var language))
            input.Culture = input.Culture.In(language);
        UnitSystem? system = input.Text("units").ToUpperInvariant() switch
        {
            "US" => UnitSystem.UnitedStates,
            "SI" => UnitSystem.Si,
            _ => null,
        };
        input.Bare = BareUnits.Of(system);
        input.Units = system is UnitSystem.UnitedStates ? UnitPreferences.UnitedStates : UnitPreferences.Metric;
        input.Method = root.Find("method") is { Kind: NodeKind.Text } method ? method.Literal : "";
        input.Delivery = root.Find("delivery") is { Kind: NodeKind.Text } delivery ? delivery.Literal.Trim() : "";
        return input;
    }

    /// <summary>The text at a path without blanks around it; empty when there is none.</summary>
    internal string Text(string path) => Fields.TryGetValue(path, out var text) ? text.Trim() : "";

    /// <summary>The mass at a path; null when there is none that can be read.</summary>
    internal Mass? MassAt(string path)
    {
        if (Text(path) is not { Length: > 0 } text) return null;
        if (!masses.TryGetValue(path, out var known))
            masses[path] = known = QuantityText.Read<Mass>(text, Culture, Bare.Mass).TryGet(out var mass) ? mass : null;
        return known;
    }

    private void Settle(SheetNode root, string name)
    {
        if (Text(name).Length == 0 && root.Find(name) is { Kind: NodeKind.Text } node && node.Literal.Length > 0)
            Fields[name] = node.Literal;
    }
}
