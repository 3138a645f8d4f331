using System.Text;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Rows;

/// <summary>Columns of names and of numbers.</summary>
internal sealed partial class RowReader
{
    // A column of names. What was read last is remembered, since rows of one spreader follow each other.
    private sealed class NameField
    {
        private readonly LogRole role;
        private readonly LogColumn? column;
        private readonly int place;
        private readonly LogNames names;
        private readonly int always = -1;
        private readonly Dictionary<string, int> known = new(StringComparer.Ordinal);
        private readonly Dictionary<string, int>.AlternateLookup<ReadOnlySpan<char>> lookup;
        private byte[] last = [];
        private int lastNumber = -1;

        internal NameField(LogRole role, LogColumn? column, int place, LogNames names)
        {
            this.role = role;
            this.column = column;
            this.place = place;
            this.names = names;
            lookup = known.GetAlternateLookup<ReadOnlySpan<char>>();
            if (column?.Fixed is not { } text) return;
            if (text.Length == 0 || Problem(text) is not Refusal.None) throw new LogException($"Profile, columns.{role}.fixed: '{Excerpt.Of(text)}' was read; expected a name of 1 to 60 characters.");
            always = names.Of(text);
        }

        internal Refusal Read(RowReader reader, ReadOnlySpan<byte> row, out int name)
        {
            name = always;
            if (place < 0) return Refusal.None;
            var text = reader.Field(row, place);
            if (text.IsEmpty) return role is LogRole.Spreader or LogRole.Depot ? reader.Wrong(Refusal.Empty, role, text) : Refusal.None;
            if (text.SequenceEqual(last))
            {
                name = lastNumber;
                return Refusal.None;
            }

            if (text.Length > 240) return reader.Wrong(Refusal.Name, role, text);
            Span<char> letters = stackalloc char[text.Length];
            if (!Encoding.UTF8.TryGetChars(text, letters, out var length)) return reader.Wrong(Refusal.Characters, role, text);
            letters = letters[..length];
            if (!lookup.TryGetValue(letters, out name))
            {
                try
                {
                    Strict.GetCharCount(text);
                }
                catch (DecoderFallbackException)
                {
                    return reader.Wrong(Refusal.Characters, role, text);
                }

                var written = letters.ToString();
                if (column!.Names.TryGetValue(written, out var other)) written = other;
                if (Problem(written) is var problem and not Refusal.None) return reader.Wrong(problem, role, text);
                name = names.Of(written);
                lookup.Dictionary[letters.ToString()] = name;
            }

            last = text.ToArray();
            lastNumber = name;
            return Refusal.None;
        }

        // Spreader and depot name folders, percent-encoded: names of folders end at 255 bytes.
        private Refusal Problem(string written)
        {
            foreach (var letter in written)
                if (char.IsControl(letter) || letter == '\uFFFD') return Refusal.Characters;
            if (written.Length > 60) return Refusal.Name;
            return role is LogRole.Spreader or LogRole.Depot
                && (Uri.EscapeDataString(written).Length > 200 || written.Trim('.').Length == 0 || written == "__HIVE_DEFAULT_PARTITION__")
                ? Refusal.Name : Refusal.None;
        }
    }

    private sealed class NumberField
    {
        private readonly LogRole role;
        private readonly int place;
        private readonly TextCulture culture;
        private readonly Unit? unit;
        private readonly double least;
        private readonly double most;
        private readonly double always = double.NaN;

        internal NumberField(LogRole role, LogColumn? column, int place, TextCulture culture, double least, double most)
        {
            this.role = role;
            this.place = place;
            this.culture = culture;
            this.least = least;
            this.most = most;
            unit = column?.Unit is { } u && u.ToSi(1) != 1 ? u : null;
            IsByArea = column?.Unit?.Dimension is Dimension.AreaRate;
            if (column?.Fixed is not { } text) return;
            if (!QuantityText.ReadNumber(text, TextCulture.Invariant).TryGet(out var number))
                throw new LogException($"Profile, columns.{role}.fixed: '{Excerpt.Of(text)}' was read; expected one number with a decimal point.");
            always = unit?.ToSi(number) ?? number;
            if (!(always >= least && always <= most))
                throw new LogException($"Profile, columns.{role}.fixed: '{Excerpt.Of(text)}' was read; expected a number from {least} to {most} in SI.");
        }

        internal bool IsByArea { get; }

        internal Refusal Read(RowReader reader, ReadOnlySpan<byte> row, out double value)
        {
            value = always;
            if (place < 0) return Refusal.None;
            var text = reader.Field(row, place);
            if (text.IsEmpty)
            {
                value = double.NaN;
                return Refusal.None;
            }

            if (!LogNumber.TryRead(text, culture, out value)) return reader.Wrong(Refusal.Number, role, text);
            if (unit is not null) value = unit.ToSi(value);
            return value >= least && value <= most ? Refusal.None : reader.Wrong(Refusal.Range, role, text);
        }
    }
}
