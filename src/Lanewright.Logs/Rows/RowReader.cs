using System.Numerics;
using System.Runtime.Intrinsics;
using System.Text;
using Lanewright.Core.Quantities;
using Lanewright.Core.Text;
using Lanewright.Logs.Profiles;

namespace Lanewright.Logs.Rows;

/// <summary>
/// Turns lines of separated fields into rows. Every line is either one row, one refused row with its reason, or blank: a
/// quote that is not closed spoils its own line only. Belongs to one thread.
/// </summary>
internal sealed partial class RowReader
{
    /// <summary>Longest line, bytes.</summary>
    internal const int LongestLine = 65_536;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private readonly LogProfile profile;
    private readonly LogLayout layout;
    private readonly LogNameBook book;
    private readonly ZoneClock clock;
    private readonly int[] begins;
    private readonly int[] lengths;
    private readonly byte[] unquoted = new byte[LongestLine];
    private readonly byte separator;
    private readonly NameField spreader;
    private readonly NameField depot;
    private readonly NameField route;
    private readonly NameField material;
    private readonly NameField segment;
    private readonly NumberField counts;
    private readonly NumberField distance;
    private readonly NumberField speed;
    private readonly NumberField target;
    private readonly NumberField lanes;
    private readonly NumberField width;
    private readonly NumberField latitude;
    private readonly NumberField longitude;
    private LogRole? wrongRole;
    private string wrongText = "";
    private int unit = -1;
    private int unitDepot = -1;
    private int unitSpreader = -1;

    internal RowReader(LogProfile profile, LogLayout layout, LogNameBook book)
    {
        this.profile = profile;
        this.layout = layout;
        this.book = book;
        clock = new(profile.Zone, profile.Doubtful);
        begins = new int[layout.Fields];
        lengths = new int[layout.Fields];
        separator = (byte)profile.Separator;
        spreader = Name(LogRole.Spreader);
        depot = Name(LogRole.Depot);
        route = Name(LogRole.Route);
        material = Name(LogRole.Material);
        segment = Name(LogRole.Segment);
        counts = Number(LogRole.Counts, 0, 1L << 53);
        distance = Number(LogRole.Distance, 0, 1e10);
        speed = Number(LogRole.Speed, 0, 70);
        target = Number(LogRole.Target, 0, 100);
        lanes = Number(LogRole.Lanes, 0, 20);
        width = Number(LogRole.Width, 0, 100);
        latitude = Number(LogRole.Latitude, -90, 90);
        longitude = Number(LogRole.Longitude, -180, 180);
    }

    /// <summary>Rows that were taken in, counted from the beginning of the part.</summary>
    internal int Rows { get; private set; }

    /// <summary>Lines without anything.</summary>
    internal int Blank { get; private set; }

    internal List<RefusedRow> Refused { get; } = [];

    /// <summary>Moments that belong to the season asked for: from (included) to (not included).</summary>
    internal (long From, long To) Span { get; set; } = (LogSeason.Earliest, LogSeason.Latest);

    /// <summary>Reads every line of a part of a file.</summary>
    /// <param name="text">The bytes of the file that were read.</param>
    /// <param name="from">Where the part begins; at the beginning of a line.</param>
    /// <param name="to">Where it ends; behind a line, or at the end of the file.</param>
    /// <param name="line">Number of its first line.</param>
    /// <param name="rows">Where rows go.</param>
    /// <param name="first">Their first place there.</param>
    internal void Read(ReadOnlySpan<byte> text, int from, int to, int line, LogRows rows, int first)
    {
        Rows = 0;
        Blank = 0;
        Refused.Clear();
        for (var at = from; at < to; line++)
        {
            var end = text[at..to].IndexOf((byte)'\n');
            var length = end < 0 ? to - at : end;
            var next = at + length + 1;
            while (length > 0 && text[at + length - 1] == '\r') length--;
            var row = text.Slice(at, length);
            if (row.IsEmpty || (row[0] is (byte)' ' or (byte)'\t' && row.IndexOfAnyExcept((byte)' ', (byte)'\t') < 0))
            {
                Blank++;
            }
            else
            {
                wrongRole = null;
                wrongText = "";
                var why = length > LongestLine ? Refusal.TooLong : One(row, rows, first + Rows);
                if (why is Refusal.None)
                {
                    rows.Line[first + Rows] = line;
                    rows.Begin[first + Rows] = at;
                    rows.Length[first + Rows] = length;
                    Rows++;
                }
                else
                {
                    Refused.Add(new(line, why, wrongRole, at, length, wrongText));
                }
            }

            at = next;
        }
    }

    private Refusal One(ReadOnlySpan<byte> row, LogRows rows, int at)
    {
        var why = Split(ref row);
        if (why is not Refusal.None) return why;
        if ((why = Moment(row, out var moment)) is not Refusal.None) return why;
        if ((why = depot.Read(this, row, out var depotName)) is not Refusal.None) return why;
        if ((why = spreader.Read(this, row, out var spreaderName)) is not Refusal.None) return why;
        if ((why = counts.Read(this, row, out var reading)) is not Refusal.None) return why;
        if (double.IsNaN(reading)) return Wrong(Refusal.Empty, LogRole.Counts, []);
        if ((why = distance.Read(this, row, out rows.Odometer[at])) is not Refusal.None) return why;
        if ((why = speed.Read(this, row, out rows.Speed[at])) is not Refusal.None) return why;
        if ((why = Rate(row, out rows.Target[at])) is not Refusal.None) return why;
        if ((why = latitude.Read(this, row, out rows.Latitude[at])) is not Refusal.None) return why;
        if ((why = longitude.Read(this, row, out rows.Longitude[at])) is not Refusal.None) return why;
        if ((why = route.Read(this, row, out rows.Route[at])) is not Refusal.None) return why;
        if ((why = material.Read(this, row, out rows.Material[at])) is not Refusal.None) return why;
        if ((why = segment.Read(this, row, out rows.Segment[at])) is not Refusal.None) return why;
        if (depotName != unitDepot || spreaderName != unitSpreader)
        {
            unit = book.UnitOf(depotName, spreaderName);
            unitDepot = depotName;
            unitSpreader = spreaderName;
        }

        rows.Unit[at] = unit;
        rows.At[at] = moment;
        rows.Reading[at] = reading;
        return Refusal.None;
    }

    // Finds the fields. A row with a quote is copied without its quotes first.
    private Refusal Split(ref ReadOnlySpan<byte> row)
    {
        if (row.Contains((byte)'"')) return SplitQuoted(ref row);
        int field = 0, begin = 0, at = 0;
        if (Vector256.IsHardwareAccelerated)
        {
            var wanted = Vector256.Create(separator);
            for (; at + Vector256<byte>.Count <= row.Length; at += Vector256<byte>.Count)
                for (var found = Vector256.Equals(Vector256.Create(row.Slice(at, Vector256<byte>.Count)), wanted).ExtractMostSignificantBits(); found != 0; found &= found - 1)
                    EndField(ref field, ref begin, at + BitOperations.TrailingZeroCount(found));
        }

        for (; at < row.Length; at++)
            if (row[at] == separator) EndField(ref field, ref begin, at);
        EndField(ref field, ref begin, row.Length);
        return field == layout.Fields ? Refusal.None : Wrong(Refusal.Fields, null, row, $"{field} fields; {layout.Fields} expected");
    }

    private void EndField(ref int field, ref int begin, int end)
    {
        if (field < begins.Length)
        {
            begins[field] = begin;
            lengths[field] = end - begin;
        }

        field++;
        begin = end + 1;
    }

    private Refusal SplitQuoted(ref ReadOnlySpan<byte> row)
    {
        int field = 0, written = 0;
        for (var at = 0; ; field++)
        {
            var begin = written;
            if (at < row.Length && row[at] == '"')
            {
                at++;
                while (true)
                {
                    var end = row[at..].IndexOf((byte)'"');
                    if (end < 0) return Wrong(Refusal.Quote, null, row, "a quote that is not closed on its line");
                    row.Slice(at, end).CopyTo(unquoted.AsSpan(written));
                    written += end;
                    at += end + 1;
                    if (at >= row.Length || row[at] != '"') break;
                    unquoted[written++] = (byte)'"';
                    at++;
                }

                if (at < row.Length && row[at] != separator) return Wrong(Refusal.Quote, null, row, "text behind a closed quote");
            }
            else
            {
                var end = row[at..].IndexOf(separator);
                var length = end < 0 ? row.Length - at : end;
                if (row.Slice(at, length).Contains((byte)'"')) return Wrong(Refusal.Quote, null, row, "a quote inside a field");
                row.Slice(at, length).CopyTo(unquoted.AsSpan(written));
                written += length;
                at += length;
            }

            if (field < layout.Fields)
            {
                begins[field] = begin;
                lengths[field] = written - begin;
            }

            if (at >= row.Length) break;
            at++;
        }

        row = unquoted.AsSpan(0, written);
        return field + 1 == layout.Fields ? Refusal.None : Wrong(Refusal.Fields, null, row, $"{field + 1} fields; {layout.Fields} expected");
    }

    private Refusal Moment(ReadOnlySpan<byte> row, out long moment)
    {
        moment = 0;
        var text = Field(row, layout.Place(LogRole.Time));
        if (layout.Place(LogRole.Clock) is var second and >= 0)
        {
            var rest = Field(row, second);
            if (text.Length + rest.Length > 100) return Wrong(Refusal.Time, LogRole.Time, text);
            Span<byte> joined = new byte[text.Length + rest.Length + 1];
            text.CopyTo(joined);
            joined[text.Length] = (byte)' ';
            rest.CopyTo(joined[(text.Length + 1)..]);
            text = joined;
        }

        if (text.IsEmpty) return Wrong(Refusal.Empty, LogRole.Time, text);
        if (!profile.Pattern.TryParse(text, out var written, out var offset)) return Wrong(Refusal.Time, LogRole.Time, text);
        if (written is < LogSeason.Earliest or >= LogSeason.Latest) return Wrong(Refusal.Season, LogRole.Time, text);
        if (offset is { } minutes)
        {
            moment = written - (minutes * 60_000_000L);
        }
        else
        {
            var why = clock.Offset(written, out var ahead);
            if (why is not Refusal.None) return Wrong(why, LogRole.Time, text);
            moment = written - ahead;
        }

        return moment < Span.From || moment >= Span.To ? Wrong(Refusal.Season, LogRole.Time, text) : Refusal.None;
    }

    // The wanted mass for each metre driven.
    private Refusal Rate(ReadOnlySpan<byte> row, out double perMetre)
    {
        var why = target.Read(this, row, out perMetre);
        if (why is not Refusal.None) return why;
        if ((why = lanes.Read(this, row, out var count)) is not Refusal.None) return why;
        if ((why = width.Read(this, row, out var metres)) is not Refusal.None) return why;
        perMetre *= target.IsByArea ? metres : double.IsNaN(count) ? 1 : count;
        return Refusal.None;
    }

    private ReadOnlySpan<byte> Field(ReadOnlySpan<byte> row, int field) => Trim(row.Slice(begins[field], lengths[field]));

    private static ReadOnlySpan<byte> Trim(ReadOnlySpan<byte> text)
    {
        while (text.Length > 0 && text[0] is (byte)' ' or (byte)'\t') text = text[1..];
        while (text.Length > 0 && text[^1] is (byte)' ' or (byte)'\t') text = text[..^1];
        return text;
    }

    private Refusal Wrong(Refusal why, LogRole? role, ReadOnlySpan<byte> text, string? words = null)
    {
        wrongRole = role;
        wrongText = words ?? Excerpt.Of(Encoding.UTF8.GetString(text.Length > 200 ? text[..200] : text));
        return why;
    }

    private NameField Name(LogRole role) => new(role, profile.Find(role), layout.Place(role), book.Names);

    private NumberField Number(LogRole role, double least, double most) =>
        new(role, profile.Find(role), layout.Place(role), profile.Culture, least, most);
}
