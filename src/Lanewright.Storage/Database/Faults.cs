using System.Data.Common;
using System.Net.Sockets;
using Lanewright.Core.Text;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;

namespace Lanewright.Storage.Database;

/// <summary>Says in words what a database's error means; an error that is nobody's outside fault stays as it is.</summary>
internal static class Faults
{
    /// <summary>The error as a <see cref="RecordsException"/>; null for a mistake in the program.</summary>
    internal static RecordsException? Of(Exception wrong, string place, string restore)
    {
        for (var inner = wrong; inner is not null; inner = inner.InnerException)
        {
            var found = inner switch
            {
                RecordsException known => known,
                SqliteException sqlite => OfSqlite(sqlite, place, restore),
                PostgresException postgres => OfPostgres(postgres, place),
                NpgsqlException or SocketException => new(
                    RecordsFault.Unreachable,
                    $"The database {place} cannot be reached ({inner.Message}). Check that it runs and that this machine may"
                    + $" connect to it. Nothing was stored; devices keep what they have and send it again.", wrong),
                UnauthorizedAccessException => Denied(place, wrong),
                _ => null,
            };
            if (found is not null) return found;
        }

        return null;
    }

    internal static RecordsException Denied(string place, Exception? wrong) => new(
        RecordsFault.Denied,
        $"The records in {place} cannot be written: the folder or the file is read-only for this user. Give the user"
        + $" write access, or choose another folder with --data. Nothing was changed.", wrong);

    internal static RecordsException Damaged(string place, Phrase what, string restore, Exception? wrong = null) => new(
        RecordsFault.Damaged,
        $"The records in {place} are damaged: {what}. Nothing was changed. To go back to the last backup, run: {restore}"
        + $" (the damaged files are set aside, not deleted).", wrong);

    private static RecordsException? OfSqlite(SqliteException wrong, string place, string restore) =>
        wrong.SqliteErrorCode switch
        {
            5 or 6 => new(
                RecordsFault.Busy,
                $"The records in {place} are in use by another program and did not come free within"
                + $" {SqlitePragmas.BusyMilliseconds / 1000} seconds. Close it (a copying or virus-checking program,"
                + $" perhaps) and try again. Nothing was lost.", wrong),
            8 or 14 or 23 => Denied(place, wrong),
            13 => new(
                RecordsFault.Full,
                $"The disk of {place} is full: nothing of the last sending was stored, and all earlier records are whole."
                + $" Free some space; devices keep what they have and send it again.", wrong),
            10 => new(
                RecordsFault.Damaged,
                $"The disk of {place} answers with errors ({wrong.Message}). Stop using it, and restore the last backup"
                + $" on another disk: {restore}", wrong),
            11 or 26 => Damaged(place, wrong.Message, restore, wrong),
            _ => null,
        };

    private static RecordsException? OfPostgres(PostgresException wrong, string place) => wrong.SqlState switch
    {
        "53100" => new(RecordsFault.Full, $"The disk of the database {place} is full. Nothing was lost.", wrong),
        "57P03" or "57P01" or "53300" => new(
            RecordsFault.Unreachable, $"The database {place} does not take connections now ({wrong.MessageText}).", wrong),
        "42501" => Denied(place, wrong),
        "28P01" or "28000" or "3D000" => new(
            RecordsFault.Unreachable,
            $"The database {place} refuses the connection: {wrong.MessageText}. Check --database.", wrong),
        "XX001" or "XX002" => new(
            RecordsFault.Damaged, $"The database {place} is damaged: {wrong.MessageText}. Restore its last backup.", wrong),
        "55P03" or "40P01" or "57014" => new(
            RecordsFault.Busy, $"The database {place} is busy ({wrong.MessageText}). Try again.", wrong),
        _ => null,
    };
}
