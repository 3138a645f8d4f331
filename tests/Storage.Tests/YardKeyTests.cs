using System.CommandLine;
using System.IO.Compression;
using System.Security.Cryptography;
using Lanewright.Commands;
using Lanewright.Proof;

namespace Lanewright.Storage.Tests;

/// <summary>Where the yard's own key lies, and how it is kept and brought back, for records in a folder and in a database.</summary>
public sealed class YardKeyTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-key-").FullName;

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory, InlineData(Provider.Sqlite), InlineData(Provider.Postgres)]
    public async Task An_export_is_sealed_with_the_yards_key_wherever_the_records_are(Provider provider)
    {
        await using var records = await TestRecords.OnAsync(provider);
        await TransferTests.FilledAsync(records);
        // Beside a database the key lies where serve keeps it: in the folder of --data.
        string[] place = records.Place.Database is { } database ? ["--database", database, "--data", Named("data")] : ["--data", records.Place.DataFolder!];
        var keys = records.Place.DataFolder is { } own ? YardKey.FolderOf(own) : YardKey.FolderOf(Named("data"));

        var first = await RunAsync(0, ["export", .. place, "--to", Named("a.zip")]);
        Assert.Contains("A new key of the yard was made", first, StringComparison.Ordinal);
        Assert.DoesNotContain("new key", await RunAsync(0, ["export", .. place, "--to", Named("b.zip")]), StringComparison.Ordinal);
        using var key = YardKey.Find(keys)!;
        Assert.Contains($"Sealed with the key {key.Fingerprint}", first, StringComparison.Ordinal);

        string[] against = records.Place.Database is { } server ? ["--database", server, "--key-folder", keys] : place;
        var looked = await RunAsync(0, ["verify", Named("b.zip"), .. against]);
        Assert.Contains("Sealed with the yard's key", looked, StringComparison.Ordinal);
        Assert.Contains("All 4 entries are those of the records", looked, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_backup_leaves_the_key_out_and_its_copy_makes_restored_records_seal_as_before()
    {
        await using var records = TestRecords.InFolder();
        await TransferTests.FilledAsync(records);
        var data = records.Place.DataFolder!;
        Assert.Contains("no key", await RunAsync(1, ["backup", "--data", data, "--to", Named("none.zip"), "--key-to", Named("none.pem")]), StringComparison.Ordinal);
        Assert.False(File.Exists(Named("none.zip")));
        using var key = YardKey.Open(YardKey.FolderOf(data));
        Assert.Contains("private key is not in it", await RunAsync(0, ["backup", "--data", data, "--to", Named("a.zip")]), StringComparison.Ordinal);
        Assert.Contains(key.Fingerprint, await RunAsync(0, ["backup", "--data", data, "--to", Named("b.zip"), "--key-to", Named("b.pem")]), StringComparison.Ordinal);
        Assert.Contains("not overwritten", await RunAsync(1, ["backup", "--data", data, "--to", Named("c.zip"), "--key-to", Named("b.pem")]), StringComparison.Ordinal);
        Assert.False(File.Exists(Named("c.zip")));
        if (!OperatingSystem.IsWindows()) Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Named("b.pem")));
        foreach (var name in (string[])["a.zip", "b.zip"])
        {
            using var zip = ZipFile.OpenRead(Named(name));
            Assert.All(zip.Entries, entry => Assert.DoesNotContain("pem", entry.Name, StringComparison.Ordinal));
        }

        Assert.Contains("key is not here", await RunAsync(0, ["restore", Named("a.zip"), "--data", Named("new")]), StringComparison.Ordinal);
        Assert.Contains("key is back", await RunAsync(0, ["restore", Named("b.zip"), "--data", Named("new"), "--replace", "--key-from", Named("b.pem")]), StringComparison.Ordinal);
        Assert.Contains($"Sealed with the key {key.Fingerprint}", await RunAsync(0, ["export", "--data", Named("new"), "--to", Named("e.zip")]), StringComparison.Ordinal);
        Assert.Contains("Sealed with the yard's key", await RunAsync(0, ["verify", Named("e.zip"), "--data", data]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_key_is_set_aside_only_when_asked()
    {
        await RunAsync(0, ["yard-key", "--data", Named("one"), "--to", Named("one.pem")]);
        var other = await RunAsync(0, ["yard-key", "--key-folder", Named("other")]);
        Assert.Contains("Another key", await RunAsync(1, ["yard-key", "--key-folder", Named("other"), "--from", Named("one.pem")]), StringComparison.Ordinal);
        Assert.EndsWith(await RunAsync(0, ["yard-key", "--key-folder", Named("other")]), other, StringComparison.Ordinal);
        Assert.Contains("set-aside", await RunAsync(0, ["yard-key", "--key-folder", Named("other"), "--from", Named("one.pem"), "--replace"]), StringComparison.Ordinal);
        Assert.Equal(await RunAsync(0, ["yard-key", "--data", Named("one")]), await RunAsync(0, ["yard-key", "--key-folder", Named("other")]));
        using var aside = YardKey.Read(Assert.Single(Directory.GetFiles(Named("other"), "set-aside-*.pem")));
        Assert.Contains(aside.Fingerprint, other, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_damaged_key_is_replaced_by_its_copy_as_its_message_says()
    {
        string[] key = ["yard-key", "--key-folder", Named("keys")];
        var known = await RunAsync(0, key);
        await RunAsync(0, [.. key, "--to", Named("copy.pem")]);
        await File.WriteAllTextAsync(YardKey.PathIn(Named("keys")), "damaged", Stop);
        Assert.Contains("--from FILE --replace", await RunAsync(1, key), StringComparison.Ordinal);
        await RunAsync(1, [.. key, "--from", Named("copy.pem")]);
        Assert.Contains("set-aside-damaged", await RunAsync(0, [.. key, "--from", Named("copy.pem"), "--replace"]), StringComparison.Ordinal);
        Assert.Equal(known[^72..], (await RunAsync(0, key))[^72..]);
        Assert.Equal("damaged", await File.ReadAllTextAsync(Assert.Single(Directory.GetFiles(Named("keys"), "set-aside-*.pem")), Stop));
    }

    [Fact]
    public async Task What_is_no_key_is_refused_in_words_and_changes_nothing()
    {
        using var wide = ECDsa.Create(ECCurve.NamedCurves.nistP384);
        using var good = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        foreach (var text in (string[])
            ["", "garbage", wide.ExportPkcs8PrivateKeyPem(), good.ExportSubjectPublicKeyInfoPem(), good.ExportPkcs8PrivateKeyPem()[..90], new string('x', 100_000)])
        {
            await File.WriteAllTextAsync(Named("bad.pem"), text, Stop);
            Assert.Contains("holds no key of a yard", await RunAsync(1, ["yard-key", "--data", Named("d"), "--from", Named("bad.pem")]), StringComparison.Ordinal);
        }

        Assert.Contains("was not found", await RunAsync(1, ["yard-key", "--data", Named("d"), "--from", Named("none.pem")]), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Named("d")));
    }

    [Theory]
    [InlineData("fr", "Il n'y a pas d'enregistrements dans", "n'a pas été trouvé. Rien n'a été modifié.")]
    [InlineData("fi", "ei ole tietueita", "ei löytynyt. Mitään ei muutettu.")]
    public async Task What_keeps_a_command_from_its_work_is_said_in_the_language_asked_for(string language, string none, string missing)
    {
        Assert.Contains(none, await RunAsync(1, ["check-records", "--data", Named("nowhere"), "--language", language]), StringComparison.Ordinal);
        Assert.Contains(missing, await RunAsync(1, ["restore", Named("nowhere.zip"), "--data", Named("nowhere"), "--language", language]), StringComparison.Ordinal);
    }

    private string Named(string name) => Path.Combine(folder, name);

    private static async Task<string> RunAsync(int expected, string[] arguments)
    {
        using var output = new StringWriter();
        var result = await CommandTree.Make().Parse(arguments).InvokeAsync(new() { Output = output, Error = output }, Stop);
        Assert.True(expected == result, output.ToString());
        return output.ToString();
    }
}
