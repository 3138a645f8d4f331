using System.Text;
using System.Text.Json;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;

namespace Lanewright.Core.Exchange;

/// <summary>
/// Compares the value to key in with what a person says was keyed in and with what the controller shows after it, however
/// each of them is written.
/// </summary>
internal static class LiveKeyed
{
    // Two writings of one number in another unit differ in the last bits.
    private const double Same = 1e-9;

    internal static string Write(string json)
    {
        var input = LiveInput.Read(json);
        var root = JsonTree.Read(json).Root;
        var unit = Units.Find(Text(root, "unit"));
        var say = new List<string>();
        var advised = Read(Text(root, "advised"), unit, input, say, "");
        var keyed = Read(Text(root, "keyed"), unit, input, say, input.Culture.Say("Value keyed in"));
        var back = Read(Text(root, "readBack"), unit, input, say, input.Culture.Say("Value read back"));
        if (keyed is { } k && advised is { } a && Differ(k, a))
            say.Add(input.Culture.Say($"The answer says {Words(root, "advised")}; {Words(root, "keyed")} was keyed in."));
        if (keyed is { } typed && back is { } shown && Differ(typed, shown))
        {
            say.Add(input.Culture.Say(
                $"{Words(root, "keyed")} was keyed in, but the controller shows {Words(root, "readBack")}. Key it in again and read it again."));
        }

        using var stream = new MemoryStream();
        using (var writer = new Utf8JsonWriter(stream))
        {
            writer.WriteStartObject();
            writer.WriteStartArray("say");
            foreach (var text in say) writer.WriteStringValue(text);
            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    private static string Text(SheetNode? root, string name) =>
        root is { Kind: NodeKind.Map } && root.Find(name) is { Kind: NodeKind.Text } node ? node.Literal.Trim() : "";

    private static double? Read(string text, Unit? unit, LiveInput input, List<string> say, string label)
    {
        if (text.Length == 0 || unit is null) return null;
        var number = QuantityText.ReadNumber(text, input.Culture);
        if (number.Outcome is TextOutcome.Value) return unit.ToSi(number.Value);
        if (QuantityText.ReadAny(text, input.Culture).TryGet(out var amount) && amount.Unit.Dimension == unit.Dimension)
            return amount.Unit.ToSi(amount.Value);
        if (label.Length > 0)
        {
            var symbol = QuantityText.Symbol(unit, input.Culture);
            say.Add(input.Culture.Say($"{label}: '{Excerpt.Of(text)}' was read; a number in {symbol} was expected. It is kept as typed."));
        }

        return null;
    }

    private static bool Differ(double a, double b) => Math.Abs(a - b) > Same * Math.Max(Math.Abs(a), Math.Abs(b));

    // As they were written: a number in another form would have to be compared by eye.
    private static string Words(SheetNode? root, string name) => Excerpt.Of(Text(root, name));
}
