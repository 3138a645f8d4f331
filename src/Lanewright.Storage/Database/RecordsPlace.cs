namespace Lanewright.Storage.Database;

/// <summary>Where the records are: a folder with a SQLite file, or a PostgreSQL database.</summary>
public sealed record RecordsPlace
{
    /// <summary>Name of the SQLite file within the folder.</summary>
    public const string FileName = "records.db";

    private RecordsPlace()
    {
    }

    /// <summary>The folder; null for PostgreSQL.</summary>
    public string? DataFolder { get; private init; }

    /// <summary>The connection string; null for a folder.</summary>
    public string? Database { get; private init; }

    /// <summary>Most pages of the SQLite file, for tests of a full disk; null for no limit.</summary>
    internal int? MostPages { get; init; }

    /// <summary>The SQLite file; null for PostgreSQL.</summary>
    public string? File => DataFolder is null ? null : Path.Combine(DataFolder, FileName);

    /// <summary>The place in words; never with a password.</summary>
    public string Name => File ?? ServerName();

    /// <summary>The command that brings a backup back.</summary>
    public string RestoreCommand => DataFolder is null
        ? "lanewright import BACKUP --database \"...\""
        : $"lanewright restore BACKUP --data \"{DataFolder}\" --replace";

    /// <summary>Records in a folder of this machine.</summary>
    public static RecordsPlace InFolder(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        return new() { DataFolder = Path.GetFullPath(folder) };
    }

    /// <summary>Records in a PostgreSQL database.</summary>
    /// <exception cref="ArgumentException">The connection string cannot be understood.</exception>
    public static RecordsPlace InPostgres(string connection)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(connection);
        _ = new Npgsql.NpgsqlConnectionStringBuilder(connection);
        return new() { Database = connection };
    }

    private string ServerName()
    {
        var parts = new Npgsql.NpgsqlConnectionStringBuilder(Database);
        return $"postgresql://{parts.Host}/{parts.Database}";
    }
}
