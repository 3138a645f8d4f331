using System.Text;
using Lanewright.Core.Exchange;
using Lanewright.Files;

namespace Lanewright.App.Tests.Files;

public sealed class SheetFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("lanewright-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("a.json", "{\"spreader\": {\"id\": \"HR-104\"}}")]
    [InlineData("a.yaml", "spreader:\n  id: HR-104\n")]
    [InlineData("a.YML", "spreader: {id: HR-104}\n")]
    [InlineData("a.csv", "spreader.id;HR-104\n")]
    [InlineData("a.tsv", "spreader.id\tHR-104\n")]
    [InlineData("a.txt", "// sheet\n{\"spreader\": {\"id\": \"HR-104\"}}")]
    [InlineData("a", "# sheet\n\nspreader: {id: HR-104}\n")]
    [InlineData("b", "# sheet\r\nspreader.id,HR-104\r\n")]
    [InlineData("c", "\uFEFFsep=;\nspreader.id;HR-104")]
    public void The_syntax_follows_from_the_ending_or_the_text(string name, string text)
    {
        var tree = SheetFile.Read(Write(name, Encoding.UTF8.GetBytes(text)));
        Assert.Empty(tree.Findings);
        Assert.Equal("HR-104", tree.Root!.Find("spreader")!.Find("id")!.Literal);
    }

    [Fact]
    public void A_file_of_fifty_megabytes_is_refused_with_size_and_limit_before_it_is_read()
    {
        var path = Path.Combine(folder, "big.json");
        using (var file = File.Create(path)) file.SetLength(50 * 1024 * 1024);
        var finding = Assert.Single(SheetFile.Read(path).Findings);
        Assert.Equal("read.too-large", finding.Code);
        Assert.Equal(["50.0 MB", "4.0 MB"], finding.Values.Select(value => value.Word));
    }

    [Fact]
    public void An_endless_stream_is_read_no_further_than_the_limit()
    {
        using var endless = new Endless();
        Assert.Equal("read.too-large", Assert.Single(SheetFile.Read(endless).Findings).Code);
        Assert.Equal(SheetLimits.Bytes + 1, endless.Taken);
    }

    [Theory]
    [InlineData("missing.json", "read.no-file")]
    [InlineData("missing/sheet.json", "read.no-file")]
    [InlineData("bad\0name", "read.no-file")]
    [InlineData("", "read.is-folder")]
    public void What_is_no_file_is_said_to_be_none(string name, string code)
    {
        var tree = SheetFile.Read(Path.Combine(folder, name));
        Assert.Null(tree.Root);
        Assert.Equal(code, Assert.Single(tree.Findings).Code);
    }

    [Fact]
    public void An_empty_name_is_no_file() => Assert.Equal("read.no-file", Assert.Single(SheetFile.Read("").Findings).Code);

    [Fact]
    public void A_file_in_another_encoding_is_refused_with_the_place()
    {
        var finding = Assert.Single(SheetFile.Read(Write("a.csv", Encoding.Latin1.GetBytes("a,1\nname,Müller\n"))).Findings);
        Assert.Equal("read.bad-characters", finding.Code);
        Assert.Equal([2.0, 7.0], finding.Values.Select(value => value.Si));
        Assert.Equal("read.bad-characters", Assert.Single(SheetFile.Read(Write("u.csv", Encoding.Unicode.GetBytes("é,1\n"))).Findings).Code);
    }

    private string Write(string name, byte[] bytes)
    {
        var path = Path.Combine(folder, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private sealed class Endless : Stream
    {
        public long Taken { get; private set; }

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position { get => Taken; set => throw new NotSupportedException(); }

        public override int Read(byte[] buffer, int offset, int count)
        {
            Array.Fill(buffer, (byte)' ', offset, count);
            Taken += count;
            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
