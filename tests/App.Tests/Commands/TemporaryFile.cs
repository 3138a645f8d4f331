namespace Lanewright.App.Tests.Commands;

/// <summary>A file for one test.</summary>
internal sealed class TemporaryFile : IDisposable
{
    public TemporaryFile(string text, string ending = ".json")
    {
        Path = System.IO.Path.Combine(System.IO.Path.GetTempPath(), System.IO.Path.GetRandomFileName() + ending);
        File.WriteAllText(Path, text);
    }

    public string Path { get; }

    public void Dispose() => File.Delete(Path);
}
