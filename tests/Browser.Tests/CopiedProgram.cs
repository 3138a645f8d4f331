using System.Security.Cryptography;
using System.Text.Json.Nodes;
using Lanewright.Core.Tests;

namespace Lanewright.Browser.Tests;

/// <summary>A copy of the program whose pages may be changed, as by an update.</summary>
public sealed class CopiedProgram : YardServer
{
    private readonly string copy = Directory.CreateTempSubdirectory("lanewright-program-").FullName;

    protected override async Task FillAsync()
    {
        var source = Repository.File("out", "bin");
        foreach (var file in Directory.EnumerateFiles(source, "*", SearchOption.AllDirectories))
        {
            var target = Path.Combine(copy, Path.GetRelativePath(source, file));
            Directory.CreateDirectory(Path.GetDirectoryName(target)!);
            File.Copy(file, target);
        }

        Program = Path.Combine(copy, "lanewright");
        await base.FillAsync();
    }

    /// <summary>Changes a page; the list of pages says so only when asked to.</summary>
    internal async Task ChangeAsync(string page, string addition, bool isListed)
    {
        var file = Path.Combine(copy, "wwwroot", page);
        await File.AppendAllTextAsync(file, addition);
        if (isListed) await ListAsync(page);
    }

    /// <summary>Writes what a page now is into the list of pages.</summary>
    internal async Task ListAsync(string page)
    {
        var list = Path.Combine(copy, "wwwroot", "pages.json");
        var json = JsonNode.Parse(await File.ReadAllTextAsync(list))!;
        json["files"]![page] = Convert.ToHexString(SHA256.HashData(await File.ReadAllBytesAsync(Path.Combine(copy, "wwwroot", page))));
        await File.WriteAllTextAsync(list, json.ToJsonString());
    }
}
